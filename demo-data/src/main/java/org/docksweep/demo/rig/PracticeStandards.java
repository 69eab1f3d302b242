package org.docksweep.demo.rig;

import java.util.LinkedHashMap;
import java.util.Map;
import org.docksweep.demo.physics.Climate;
import org.docksweep.demo.physics.PlainLoad;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.ModelBook;
import org.hipparchus.complex.Complex;

/**
 * Standards that can be plugged into the virtual rig like cabinets. Nominal values, which are also their certified
 * values (within 0.02 %):
 *
 * <ul>
 *   <li>{@code STD-000001} open end of the lead
 *   <li>{@code STD-000002} short, below 1 milliohm
 *   <li>{@code STD-000003} calibration load, 10 ohm
 *   <li>{@code STD-000004} check standard, 4.7 ohm
 *   <li>{@code STD-000005} check standard, 22 ohm parallel to 4.7 uF
 *   <li>{@code STD-000006} known cabinet before the microphone, a PEBL8 that is never hired out
 * </ul>
 */
public final class PracticeStandards {
    /** Open end of the lead. */
    public static final AssetTag OPEN = new AssetTag("STD-000001");
    /** Short. */
    public static final AssetTag SHORT = new AssetTag("STD-000002");
    /** Calibration load of 10 ohm. */
    public static final AssetTag LOAD = new AssetTag("STD-000003");
    /** Check standard, 4.7 ohm. */
    public static final AssetTag CHECK_RESISTOR = new AssetTag("STD-000004");
    /** Check standard, 22 ohm parallel to 4.7 uF. */
    public static final AssetTag CHECK_NETWORK = new AssetTag("STD-000005");
    /** Known cabinet before the microphone. */
    public static final AssetTag KNOWN_CABINET = new AssetTag("STD-000006");
    /** Test point code that all standards answer to. */
    public static final String TEST_POINT = "IN";

    /** Contact resistance of the standards' screwed terminals, in ohm. */
    static final double CONTACT_OHM = 0.001;

    private static final double OPEN_OHM = 1e9;
    private static final double SHORT_OHM = 0.0002;

    private static final String KNOWN_MODEL = "PEBL8";
    private static final long KNOWN_UNIT = 8_600_417;
    private static final double KNOWN_AGE_YEARS = 3;

    private PracticeStandards() {}

    /** The known cabinet at the temperature of the hall. */
    static VirtualCabinet knownCabinet(ModelBook book, double celsius) {
        return VirtualCabinet.produced(book, KNOWN_MODEL, KNOWN_UNIT, KNOWN_AGE_YEARS)
                .at(Climate.even(celsius));
    }

    static Map<AssetTag, PlainLoad> all() {
        Map<AssetTag, PlainLoad> standards = new LinkedHashMap<>();
        standards.put(OPEN, new PlainLoad(f -> new Complex(OPEN_OHM)));
        standards.put(SHORT, new PlainLoad(f -> new Complex(SHORT_OHM)));
        standards.put(LOAD, new PlainLoad(f -> new Complex(10.001 - CONTACT_OHM)));
        standards.put(CHECK_RESISTOR, new PlainLoad(f -> new Complex(4.7005 - CONTACT_OHM)));
        standards.put(
                CHECK_NETWORK, new PlainLoad(f -> new Complex(1 / 22.003, 2 * Math.PI * f * 4.7008e-6).reciprocal()));
        return standards;
    }
}
