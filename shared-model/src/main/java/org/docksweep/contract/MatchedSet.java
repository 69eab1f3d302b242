package org.docksweep.contract;

import java.time.Instant;
import java.util.List;
import org.docksweep.fleet.AssetTag;

/**
 * Cabinets of one model on the shelf that agree best, for a stereo pair or an array.
 *
 * @param modelCode cabinet model
 * @param considered how many cabinets were compared
 * @param members the set, by tag
 * @param differences how every two of them differ
 * @param widestMismatch mismatch of the two that agree least; 1 is what two healthy units taken at random have on average
 * @param exact whether it is proved that no other set agrees better
 * @param leftOut cabinets on the shelf without own good curves, which could not be compared
 */
public record MatchedSet(
        String modelCode,
        int considered,
        List<Member> members,
        List<Pair> differences,
        double widestMismatch,
        boolean exact,
        List<AssetTag> leftOut) {

    /**
     * A cabinet of the set.
     *
     * @param tag cabinet
     * @param shelfPlace where it stands
     * @param measuredAt when its curves were measured
     * @param ambientCelsius air temperature then, or null; curves taken in the cold and in the warmth differ by that alone
     */
    public record Member(AssetTag tag, String shelfPlace, Instant measuredAt, Double ambientCelsius) {}

    /**
     * Two of them.
     *
     * @param one first cabinet
     * @param other second cabinet
     * @param mismatch see {@link org.docksweep.gate.Likeness}
     * @param levelDb mean level of the first over that of the second in dB, or null without a microphone
     * @param worstDb largest difference of level at one frequency in dB, or null without a microphone
     * @param worstHz where it is in hertz, or null without a microphone
     */
    public record Pair(AssetTag one, AssetTag other, double mismatch, Double levelDb, Double worstDb, Double worstHz) {}

    public MatchedSet {
        members = List.copyOf(members);
        differences = List.copyOf(differences);
        leftOut = List.copyOf(leftOut);
    }
}
