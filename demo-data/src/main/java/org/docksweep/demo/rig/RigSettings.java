package org.docksweep.demo.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.docksweep.fleet.Require;

/**
 * Settings of the virtual rig. Keys of the settings map, all optional:
 *
 * <ul>
 *   <li>{@code seed}: whole number, chooses the demo house and the rig's own faults; 1
 *   <li>{@code moment}: {@code before-hire} or {@code at-return}; at-return
 *   <li>{@code sampleRateHz}: 44100, 48000, 88200 or 96000; 48000
 *   <li>{@code ambientCelsius}: air at the dock, -20 to 50; 20 before the hire, the house's night at the return
 *   <li>{@code hallNoiseDb}: noise of the hall at the microphone, dB re 20 uPa, unweighted, 0 to 110; 50
 *   <li>{@code knocksPerS}: knocks of 75 to 100 dB in the hall, on average per second, 0 to 10; 0
 *   <li>{@code realTime}: {@code true} when a playback takes its real time; false
 *   <li>{@code wornOhm}: what a worn dock plug has in series besides, in ohm, 0 to 2; 0
 *   <li>{@code wornFromPlug}: whole number, the plug-in from which it is worn, counted over all labels; 1
 *   <li>{@code disturbances}: comma list of {@link Disturbance} names, one per playback, then none; empty
 * </ul>
 *
 * @param seed seed of house and rig
 * @param moment before the hire or at the return
 * @param sampleRateHz samples per second
 * @param ambientCelsius air temperature, or null for the moment's own
 * @param hallNoiseDb hall noise in dB re 20 uPa
 * @param knocksPerS knocks per second on average
 * @param realTime whether a playback takes its real time
 * @param wornOhm what a worn plug has besides, in ohm
 * @param wornFromPlug plug-in from which it is worn
 * @param disturbances what goes wrong with the first playbacks
 */
public record RigSettings(
        long seed,
        Moment moment,
        int sampleRateHz,
        Double ambientCelsius,
        double hallNoiseDb,
        double knocksPerS,
        boolean realTime,
        double wornOhm,
        long wornFromPlug,
        List<Disturbance> disturbances) {

    private static final Set<String> KEYS = Set.of(
            "seed",
            "moment",
            "sampleRateHz",
            "ambientCelsius",
            "hallNoiseDb",
            "knocksPerS",
            "realTime",
            "wornOhm",
            "wornFromPlug",
            "disturbances");
    private static final Set<Integer> SAMPLE_RATES_HZ = Set.of(44_100, 48_000, 88_200, 96_000);

    public RigSettings {
        if (!SAMPLE_RATES_HZ.contains(sampleRateHz)) {
            throw new IllegalArgumentException(
                    "sampleRateHz must be one of " + new TreeSet<>(SAMPLE_RATES_HZ) + ", but is " + sampleRateHz);
        }
        if (ambientCelsius != null) {
            Require.inRange("ambientCelsius", ambientCelsius, -20, 50);
        }
        Require.inRange("hallNoiseDb", hallNoiseDb, 0, 110);
        Require.inRange("knocksPerS", knocksPerS, 0, 10);
        Require.inRange("wornOhm", wornOhm, 0, 2);
        Require.inRange("wornFromPlug", wornFromPlug, 1, Long.MAX_VALUE);
        disturbances = Require.copy("disturbances", disturbances);
    }

    /**
     * Reads a settings map.
     *
     * @param settings keys and values as above
     * @return the settings
     * @throws IllegalArgumentException on an unknown key or a value that cannot be read; names it
     */
    public static RigSettings of(Map<String, String> settings) {
        for (String key : settings.keySet()) {
            if (!KEYS.contains(key)) {
                throw new IllegalArgumentException(
                        "setting " + key + " of the virtual rig is not known; expected one of " + new TreeSet<>(KEYS));
            }
        }
        List<Disturbance> disturbances = new ArrayList<>();
        for (String name : settings.getOrDefault("disturbances", "").split(",")) {
            if (!name.isBlank()) {
                disturbances.add(Disturbance.named(name));
            }
        }
        String ambient = settings.get("ambientCelsius");
        return new RigSettings(
                Math.round(number(settings, "seed", 1)),
                moment(settings.getOrDefault("moment", "at-return")),
                (int) number(settings, "sampleRateHz", 48_000),
                ambient == null ? null : Double.valueOf(number(settings, "ambientCelsius", 20)),
                number(settings, "hallNoiseDb", 50),
                number(settings, "knocksPerS", 0),
                yes(settings.getOrDefault("realTime", "false")),
                number(settings, "wornOhm", 0),
                Math.round(number(settings, "wornFromPlug", 1)),
                disturbances);
    }

    private static double number(Map<String, String> settings, String key, double otherwise) {
        String text = settings.get(key);
        if (text == null) {
            return otherwise;
        }
        try {
            return Double.parseDouble(text.strip());
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    "setting " + key + " of the virtual rig must be a number, but is \"" + text + "\"", e);
        }
    }

    private static Moment moment(String text) {
        return switch (text.strip()) {
            case "before-hire" -> Moment.BEFORE_HIRE;
            case "at-return" -> Moment.AT_RETURN;
            default ->
                throw new IllegalArgumentException(
                        "setting moment of the virtual rig must be before-hire or at-return, but is \"" + text + "\"");
        };
    }

    private static boolean yes(String text) {
        return switch (text.strip()) {
            case "true" -> true;
            case "false" -> false;
            default ->
                throw new IllegalArgumentException(
                        "setting realTime of the virtual rig must be true or false, but is \"" + text + "\"");
        };
    }
}
