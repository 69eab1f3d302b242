package org.docksweep.kiosk.rig;

import java.util.List;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.rigcal.CheckStandard;

/**
 * The known parts of a rig: three to calibrate with, and others to check with.
 *
 * @param open label of the open end
 * @param shorted label of the short
 * @param load label of the calibration load
 * @param loadOhm certified resistance of the load, in ohm
 * @param loadRelativeUncertainty relative standard uncertainty of that value
 * @param checks check standards, none of them a calibration part
 */
public record StandardSet(
        AssetTag open,
        AssetTag shorted,
        AssetTag load,
        double loadOhm,
        double loadRelativeUncertainty,
        List<Check> checks) {

    private static final String TEST_POINT = "IN";

    /** The known cabinet that stands before the microphone of a practice rig. */
    public static final StudyCabinet PRACTICE_CABINET = new StudyCabinet(new AssetTag("STD-000006"), testPoint(8));

    /**
     * A check standard with its label.
     *
     * @param label label
     * @param standard its certified values
     */
    public record Check(AssetTag label, CheckStandard standard) {}

    public StandardSet {
        checks = List.copyOf(checks);
        if (checks.isEmpty()) {
            throw new IllegalArgumentException(
                    "a set of standards needs at least one check standard besides the" + " parts of the calibration");
        }
    }

    /**
     * Whether a label belongs to one of these standards.
     *
     * @param label label
     * @return true if so
     */
    public boolean has(AssetTag label) {
        return label.equals(open)
                || label.equals(shorted)
                || label.equals(load)
                || checks.stream().anyMatch(check -> check.label().equals(label));
    }

    /**
     * How a standard is swept: full band at 1 V, which every standard bears.
     *
     * @param ohm rated impedance of the point, in ohm
     * @return the test point
     */
    public static TestPoint testPoint(double ohm) {
        return new TestPoint(
                TEST_POINT,
                TestPointKind.TERMINALS,
                "1+ / 1-",
                List.of("STANDARD"),
                ohm,
                new LevelMask(List.of(new LevelMask.Point(10, 1), new LevelMask.Point(20000, 1))),
                List.of(new NetworkElement.Resistor("R1", "in", "0", ohm, 0.01)));
    }

    /**
     * The standards of a rig whose plugs a person moves; they carry the labels of the practice rig's.
     *
     * @param loadOhm resistance of the load, in ohm
     * @param loadRelativeUncertainty its relative standard uncertainty
     * @param resistor second resistor
     * @param network resistor and capacitor
     * @return the set
     */
    public static StandardSet of(
            double loadOhm, double loadRelativeUncertainty, CheckStandard resistor, CheckStandard network) {
        return new StandardSet(
                new AssetTag("STD-000001"),
                new AssetTag("STD-000002"),
                new AssetTag("STD-000003"),
                loadOhm,
                loadRelativeUncertainty,
                List.of(
                        new Check(new AssetTag("STD-000004"), resistor),
                        new Check(new AssetTag("STD-000005"), network)));
    }

    /**
     * The standards that lie beside a practice rig.
     *
     * @return open, short and 10 ohm (0.02 %) to calibrate; 4.7 ohm, and 22 ohm parallel to 4.7 uF, to check
     */
    public static StandardSet practice() {
        return of(
                10,
                0.0002,
                CheckStandard.resistor("4.7 \u03a9", 4.7),
                new CheckStandard(
                        "22 \u03a9 \u2016 4.7 \u00b5F", CheckStandard.Kind.RESISTOR_PARALLEL_CAPACITOR, 22, 4.7e-6));
    }
}
