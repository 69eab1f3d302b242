package org.docksweep.kiosk.dock;

import java.util.Optional;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Gs1Key;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TagReading;
import org.docksweep.kiosk.fleet.LocalFleet;

/** What a scan at the dock turned out to be. */
sealed interface ScannedText {
    /**
     * A cabinet's tag.
     *
     * @param tag the tag
     * @param cleaned whether it had to be made out of the text
     */
    record Cabinet(AssetTag tag, boolean cleaned) implements ScannedText {}

    /**
     * Nothing a dock can take in.
     *
     * @param why what it was
     */
    record Refused(Reason why) implements ScannedText {}

    /**
     * Reads a scan.
     *
     * @param text what the scanner typed
     * @param fleet knows whose label a GS1 key is
     * @return a tag, or why there is none
     */
    static ScannedText read(String text, LocalFleet fleet) {
        if (Gs1Key.looksLike(text)) {
            return readKey(text, fleet);
        }
        TagReading reading = TagReading.read(text);
        if (reading instanceof TagReading.One one) {
            return new Cabinet(one.tag(), one.cleaned());
        }
        if (reading instanceof TagReading.Several several) {
            String tags = String.join(
                    ", ", several.tags().stream().map(AssetTag::value).toList());
            return new Refused(Reason.of("dock-two-tags", tags));
        }
        if (JobCode.looksLike(text.strip())) {
            return new Refused(Reason.of("dock-job-code", text.strip()));
        }
        return new Refused(Reason.of("dock-unreadable", ((TagReading.None) reading).text()));
    }

    /** A label of the GS1 system: as good as the asset tag when its cabinet is known. */
    private static ScannedText readKey(String text, LocalFleet fleet) {
        Optional<Gs1Key> key = Gs1Key.read(text);
        Optional<AssetTag> carrier = key.flatMap(fleet::carrierOf);
        if (carrier.isPresent()) {
            return new Cabinet(carrier.get(), true);
        }
        return new Refused(
                key.isPresent()
                        ? Reason.of("dock-key-unknown", key.get().value())
                        : Reason.of("dock-key-wrong", text.strip()));
    }
}
