package org.docksweep.fleet.template;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.MotionalResonance;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.Require;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Way;

/**
 * A passive two-way cabinet with a horn driver, from what its plate and a ruler say. Values of the drivers are ordinary ones
 * for their size (common practice, no source), parts of the crossover are those of the handbook; known-good units teach the
 * rest. Parts carry a tolerance of 25 % because the real values are not known.
 *
 * @param code code of the cabinet model
 * @param name name of the cabinet model
 * @param ratedImpedanceOhm rated impedance of the cabinet, 2 to 32
 * @param crossoverHz crossover frequency, 300 to 6000
 * @param slopeDbPerOctave slope of both ways, 6, 12, 18 or 24
 * @param box closed or vented
 * @param wooferCount cones, 1, or 2 in parallel in one box
 * @param wooferInches size of a cone in inches, 5 to 21
 * @param padDb loss of the pad before the horn driver, 0 for none, up to 20
 */
public record TwoWayTemplate(
        String code,
        String name,
        double ratedImpedanceOhm,
        double crossoverHz,
        int slopeDbPerOctave,
        EnclosureKind box,
        int wooferCount,
        double wooferInches,
        double padDb) {

    private static final double PART_TOLERANCE = 0.25;
    private static final double COIL_OHM_PER_ROOT_HENRY = 9;
    private static final double CAPACITOR_OHM = 0.05;
    /** Coil resistance over rated impedance (common practice). */
    private static final double RESISTANCE_SHARE = 0.73;

    private static final double LEVEL_VRMS = 1;
    private static final double MM_PER_INCH = 25.4;

    public TwoWayTemplate {
        Require.text("template code", code);
        Require.text("template name", name);
        Require.inRange("template rated impedance in ohm", ratedImpedanceOhm, 2, 32);
        Require.inRange("template crossover frequency in hertz (1.8 kHz is 1800)", crossoverHz, 300, 6000);
        if (slopeDbPerOctave % 6 != 0 || slopeDbPerOctave < 6 || slopeDbPerOctave > 24) {
            throw new IllegalArgumentException(
                    "template slope must be 6, 12, 18 or 24 dB per octave, but is " + slopeDbPerOctave);
        }
        if (box != EnclosureKind.CLOSED && box != EnclosureKind.VENTED) {
            throw new IllegalArgumentException("template box must be CLOSED or VENTED, but is " + box);
        }
        Require.inRange("template number of woofers", wooferCount, 1, 2);
        Require.inRange("template woofer size in inches", wooferInches, 5, 21);
        Require.inRange("template pad in dB", padDb, 0, 20);
    }

    /**
     * The model, with the two driver models it needs.
     *
     * @return a book of one cabinet model
     */
    public ModelBook book() {
        DriverModel woofer = woofer();
        DriverModel horn = horn();
        List<String> cones = new ArrayList<>();
        List<DriverPosition> positions = new ArrayList<>();
        double sizeMm = wooferInches * MM_PER_INCH;
        double widthMm = Math.rint(1.15 * sizeMm * wooferCount + 40);
        double hornMm = Math.rint(0.8 * sizeMm);
        positions.add(new DriverPosition(
                "HF", Way.HF, horn.code(), widthMm / 2, hornMm / 2 + 30, Math.min(widthMm - 40, 1.6 * hornMm), hornMm));
        for (int n = 1; n <= wooferCount; n++) {
            String position = wooferCount == 1 ? "LF" : "LF" + n;
            cones.add(position);
            double centreXMm = widthMm * (2 * n - 1) / (2.0 * wooferCount);
            positions.add(new DriverPosition(
                    position, Way.LF, woofer.code(), centreXMm, hornMm + 60 + sizeMm / 2, sizeMm, sizeMm));
        }
        List<String> behind = new ArrayList<>(cones);
        behind.add("HF");
        boolean vented = box == EnclosureKind.VENTED;
        double freeHz = woofer.resonances().get(0).frequencyHz();
        CabinetModel cabinet = new CabinetModel(
                code,
                name,
                Feed.PASSIVE,
                widthMm,
                hornMm + sizeMm + 100,
                Math.rint(0.9 * wooferInches * (1 + wooferCount)),
                positions,
                List.of(
                        new Enclosure("horn", EnclosureKind.HORN, List.of("HF"), 0, 0, 0),
                        new Enclosure("box", box, cones, 1.4, vented ? Math.rint(1.1 * freeHz) : 0, 7)),
                List.of(new TestPoint(
                        "IN",
                        TestPointKind.TERMINALS,
                        "1+ / 1-",
                        behind,
                        ratedImpedanceOhm,
                        new LevelMask(
                                List.of(new LevelMask.Point(20, LEVEL_VRMS), new LevelMask.Point(20_000, LEVEL_VRMS))),
                        network(cones))));
        return new ModelBook(List.of(cabinet), List.of(woofer, horn));
    }

    private DriverModel woofer() {
        double rated = ratedImpedanceOhm * wooferCount;
        double resistance = rounded(RESISTANCE_SHARE * rated);
        double qms = 6;
        double qes = 0.38;
        return new DriverModel(
                code + "-LF",
                name + " cone driver",
                DriverKind.CONE,
                rated,
                resistance,
                rounded(0.0008 * wooferInches * rated / 8),
                0.69,
                List.of(new MotionalResonance(Math.rint(560 / wooferInches), qms, rounded(resistance * qms / qes))),
                null,
                List.of());
    }

    private DriverModel horn() {
        double rated = hornOhm();
        double resistance = rounded(RESISTANCE_SHARE * rated);
        double mainHz = Math.rint(Math.max(450, Math.min(1000, 0.45 * crossoverHz)));
        return new DriverModel(
                code + "-HF",
                name + " horn driver",
                DriverKind.COMPRESSION,
                rated,
                resistance,
                rounded(0.004 * rated / 8),
                0.63,
                List.of(
                        new MotionalResonance(mainHz, 2.1, rounded(3.2 * resistance)),
                        new MotionalResonance(2 * mainHz, 4.3, rounded(0.7 * resistance)),
                        new MotionalResonance(3.5 * mainHz, 5.5, rounded(0.42 * resistance))),
                null,
                List.of());
    }

    /** Horn drivers are made for 8 ohm and more. */
    private double hornOhm() {
        return Math.max(8, ratedImpedanceOhm);
    }

    private List<NetworkElement> network(List<String> cones) {
        int order = slopeDbPerOctave / 6;
        Crossover.Alignment alignment =
                order == 4 ? Crossover.Alignment.LINKWITZ_RILEY : Crossover.Alignment.BUTTERWORTH;
        List<NetworkElement> elements = new ArrayList<>();
        int[] count = new int[2];
        String low = ladder(elements, count, Crossover.lowPass(order, alignment, ratedImpedanceOhm, crossoverHz), "l");
        for (String cone : cones) {
            elements.add(new NetworkElement.Driver("D" + cone, low, "0", cone));
        }
        String high = ladder(elements, count, Crossover.highPass(order, alignment, hornOhm(), crossoverHz), "h");
        if (padDb > 0) {
            double[] pad = Crossover.pad(hornOhm(), padDb);
            elements.add(new NetworkElement.Resistor("R1", high, "hf", rounded(pad[0]), PART_TOLERANCE));
            elements.add(new NetworkElement.Resistor("R2", "hf", "0", rounded(pad[1]), PART_TOLERANCE));
            high = "hf";
        }
        // second order turns the phase by half a turn between the ways: the horn driver is wired the other way round
        boolean turned = order == 2;
        elements.add(new NetworkElement.Driver("DHF", turned ? "0" : high, turned ? high : "0", "HF"));
        return List.copyOf(elements);
    }

    /** Adds a ladder of parts from the contacts on; says at which node it ends. */
    private static String ladder(
            List<NetworkElement> elements, int[] count, List<Crossover.Part> parts, String nodeName) {
        String node = "in";
        int nodes = 0;
        for (Crossover.Part part : parts) {
            String next = part.series() ? nodeName + ++nodes : "0";
            String id = (part.coil() ? "L" : "C") + ++count[part.coil() ? 0 : 1];
            double value = rounded(part.value());
            elements.add(
                    part.coil()
                            ? new NetworkElement.Inductor(
                                    id,
                                    node,
                                    next,
                                    value,
                                    rounded(COIL_OHM_PER_ROOT_HENRY * Math.sqrt(value)),
                                    PART_TOLERANCE)
                            : new NetworkElement.Capacitor(id, node, next, value, CAPACITOR_OHM, PART_TOLERANCE));
            node = part.series() ? next : node;
        }
        return node;
    }

    /** Three significant digits: more would pretend to be known. */
    private static double rounded(double value) {
        return Double.parseDouble(String.format(Locale.ROOT, "%.2e", value));
    }
}
