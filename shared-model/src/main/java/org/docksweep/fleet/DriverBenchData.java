package org.docksweep.fleet;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the bench needs to know of one driver model: the numbers that a generic procedure cannot have. Texts are in the
 * language of the house. The polarity mark and the rated impedance are data of the {@link DriverModel}.
 *
 * @param driverModelCode driver model
 * @param fasteners what holds it together, or null when not known
 * @param locatingFeatures what locates the new part, or null when not known
 * @param gap what the gap holds, or null when not known
 * @param tools tools needed, may be empty
 * @param benchLevelMask voltage allowed when the bare driver is swept on the bench rig, or null when not known
 * @param effortMinutes usual effort of a procedure on this driver in minutes, where it differs from the generic card
 * @param notes remarks of the house, by step code
 */
public record DriverBenchData(
        String driverModelCode,
        Fasteners fasteners,
        String locatingFeatures,
        Gap gap,
        List<String> tools,
        LevelMask benchLevelMask,
        Map<ProcedurePurpose, Integer> effortMinutes,
        Map<String, String> notes) {

    /**
     * Fasteners of the part that is replaced.
     *
     * @param count how many, at least 1
     * @param thread thread and length, for example {@code M4 x 16}
     * @param drive drive of the heads, for example {@code hex socket 3 mm}
     * @param tighteningNm tightening torque in newton metre, greater than 0
     * @param order order of tightening in words
     */
    public record Fasteners(int count, String thread, String drive, double tighteningNm, String order) {
        public Fasteners {
            Require.inRange("fasteners count", count, 1, 64);
            Require.text("fasteners thread", thread);
            Require.text("fasteners drive", drive);
            Require.positive("fasteners tighteningNm", tighteningNm);
            Require.text("fasteners order", order);
        }
    }

    /**
     * The magnetic gap.
     *
     * @param fluidPartNumber part number of its magnetic fluid, or null for a dry gap
     * @param fluidMicrolitre volume of fluid to fill in microlitre, or null for a dry gap
     */
    public record Gap(String fluidPartNumber, Double fluidMicrolitre) {
        public Gap {
            if ((fluidPartNumber == null) != (fluidMicrolitre == null)) {
                throw new IllegalArgumentException(
                        "gap: a gap with magnetic fluid needs fluidPartNumber and fluidMicrolitre, a dry one neither");
            }
            if (fluidMicrolitre != null) {
                Require.positive("gap fluidMicrolitre", fluidMicrolitre);
            }
        }
    }

    public DriverBenchData {
        Require.text("bench data driverModelCode", driverModelCode);
        tools = Require.copy("bench data tools", tools);
        effortMinutes =
                effortMinutes == null ? Map.of() : java.util.Collections.unmodifiableMap(new TreeMap<>(effortMinutes));
        effortMinutes.forEach((purpose, minutes) -> Require.inRange(
                "bench data effortMinutes of " + purpose, minutes == null ? Double.NaN : minutes, 1, 6000));
        notes = notes == null ? Map.of() : java.util.Collections.unmodifiableMap(new TreeMap<>(notes));
        notes.forEach((step, note) -> Require.text("bench data note of step " + step, note));
    }
}
