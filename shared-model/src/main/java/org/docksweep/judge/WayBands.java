package org.docksweep.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.docksweep.acoustic.WayBand;
import org.docksweep.circuit.CircuitCompiler;
import org.docksweep.circuit.CircuitFault;
import org.docksweep.circuit.PointCircuit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;

/**
 * The bands in which the ways of a test point speak alone, as far as its network says. {@link WayBand} knows where crossovers usually lie; one that
 * lies elsewhere cuts the bands beside it. The crossover is where the sound of two ways, each over its own largest, is the same by the
 * model's circuit; a band keeps half an octave from it, less where else two thirds of an octave would not be left.
 *
 * @param levels bands in which levels are read: never wider than usual, but where nothing would be left
 * @param phases bands in which the phase is read: all between the crossovers, since the wider a band, the less does a way turned over look like
 *     one that comes later
 */
record WayBands(List<WayBand> levels, List<WayBand> phases) {
    private static final double HALF_OCTAVE = StrictMath.sqrt(2);
    /** Two thirds of an octave. */
    private static final double LEAST_RATIO = StrictMath.pow(2, 2.0 / 3);

    private static final double LOOK_FROM_HZ = 150;
    private static final double LOOK_TO_HZ = 16_000;
    private static final int POINTS_PER_OCTAVE = 12;

    /**
     * The bands of a test point.
     *
     * @param book models
     * @param model cabinet model
     * @param point one of its test points
     * @return one band of each kind per way, in the order of the ways
     */
    static WayBands of(ModelBook book, CabinetModel model, TestPoint point) {
        List<WayBand> usual = WayBand.of(model, point);
        if (usual.size() < 2 || point.elements().isEmpty()) {
            return new WayBands(usual, usual);
        }
        double[] hz = grid();
        PointCircuit circuit = CircuitCompiler.compile(book, model, point, CircuitFault.NONE);
        Map<String, double[]> drivers = circuit.soundPerVolt(hz, circuit.nominal());
        List<double[]> ways =
                usual.stream().map(band -> overItsLargest(band, drivers)).toList();
        double[] crossoversHz = new double[usual.size() + 1];
        crossoversHz[0] = 0;
        crossoversHz[usual.size()] = Double.POSITIVE_INFINITY;
        for (int w = 1; w < usual.size(); w++) {
            crossoversHz[w] = crossoverHz(hz, ways.get(w - 1), ways.get(w));
        }
        List<WayBand> levels = new ArrayList<>();
        List<WayBand> phases = new ArrayList<>();
        for (int w = 0; w < usual.size(); w++) {
            WayBand band = usual.get(w);
            levels.add(between(band, band.fromHz(), band.toHz(), crossoversHz[w], crossoversHz[w + 1]));
            // towards a crossover only the network bounds it
            double from = w == 0 || Double.isNaN(crossoversHz[w]) ? band.fromHz() : 0;
            double to = w == usual.size() - 1 || Double.isNaN(crossoversHz[w + 1]) ? band.toHz() : Double.MAX_VALUE;
            phases.add(between(band, from, to, crossoversHz[w], crossoversHz[w + 1]));
        }
        return new WayBands(List.copyOf(levels), List.copyOf(phases));
    }

    private static double[] grid() {
        int count = (int) Math.ceil(POINTS_PER_OCTAVE * StrictMath.log(LOOK_TO_HZ / LOOK_FROM_HZ) / StrictMath.log(2));
        double[] hz = new double[count + 1];
        Arrays.setAll(hz, i -> LOOK_FROM_HZ * StrictMath.pow(LOOK_TO_HZ / LOOK_FROM_HZ, i / (double) count));
        return hz;
    }

    /** Drivers of a way are alike; the first stands for them. */
    private static double[] overItsLargest(WayBand band, Map<String, double[]> drivers) {
        double[] sound = drivers.get(band.positionCodes().get(0)).clone();
        double largest = Arrays.stream(sound).max().orElseThrow();
        Arrays.setAll(sound, i -> sound[i] / largest);
        return sound;
    }

    /** Where the upper way takes over for good; NaN where it does so nowhere in the range looked at. */
    private static double crossoverHz(double[] hz, double[] lower, double[] upper) {
        int last = hz.length - 1;
        while (last >= 0 && upper[last] > lower[last]) {
            last--;
        }
        return last < 0 || last == hz.length - 1 ? Double.NaN : Math.sqrt(hz[last] * hz[last + 1]);
    }

    private static WayBand between(WayBand usual, double leastHz, double mostHz, double lowerHz, double upperHz) {
        double from = Math.max(leastHz, Double.isNaN(lowerHz) ? 0 : lowerHz * HALF_OCTAVE);
        double to = Math.min(mostHz, Double.isNaN(upperHz) ? Double.MAX_VALUE : upperHz / HALF_OCTAVE);
        if (to >= LEAST_RATIO * from) {
            return new WayBand(usual.way(), usual.positionCodes(), from, to);
        }
        boolean within = lowerHz > 0 && upperHz < Double.POSITIVE_INFINITY && upperHz > LEAST_RATIO * lowerHz;
        if (!within) {
            return usual;
        }
        double middleHz = Math.sqrt(lowerHz * upperHz);
        return new WayBand(
                usual.way(),
                usual.positionCodes(),
                middleHz / Math.sqrt(LEAST_RATIO),
                middleHz * Math.sqrt(LEAST_RATIO));
    }
}
