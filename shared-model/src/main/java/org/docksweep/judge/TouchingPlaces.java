package org.docksweep.judge;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.acoustic.WayBand;
import org.docksweep.circuit.CircuitCompiler;
import org.docksweep.circuit.CircuitFault;
import org.docksweep.circuit.PointCircuit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;

/**
 * At which frequencies of the sweep each driver behind a test point would touch, and a loose part would: densities over the logarithm of
 * the frequency.
 *
 * <p>A coil touches where it travels far. Its travel follows from the model's circuit and the voltage played, as a share of its own
 * largest; how large a share it takes is not known, anything from {@link #LEAST_SHARE} to all of it is taken as equally likely. Behind
 * a line input no circuit is known: there a driver is taken to touch from {@link #BELOW_ITS_BAND} below the band in which its way speaks
 * alone. A loose part sounds at its own resonance, which may lie anywhere where panels, grilles, handles and leads have theirs. Common
 * practice, no source.
 */
final class TouchingPlaces {
    /** A coil that does not touch at this share of its largest travel or more does not touch at all. */
    private static final double LEAST_SHARE = 0.3;

    /** So much of each density is spread over the whole sweep: models are not exact. */
    private static final double ANYWHERE = 0.03;

    private static final double LOOSE_FROM_HZ = 25;
    private static final double LOOSE_TO_HZ = 1600;
    private static final double BELOW_ITS_BAND = 6;
    private static final int POINTS_PER_OCTAVE = 24;

    private final double[] gridHz;
    private final Map<String, double[]> drivers = new LinkedHashMap<>();
    private final double[] loose;

    TouchingPlaces(ModelBook book, CabinetModel model, TestPoint point) {
        LevelMask mask = point.levelMask();
        double octaves = StrictMath.log(mask.highestHz() / mask.lowestHz()) / StrictMath.log(2);
        int count = (int) Math.ceil(POINTS_PER_OCTAVE * octaves) + 1;
        this.gridHz = new double[count];
        Arrays.setAll(
                gridHz, i -> mask.lowestHz() * StrictMath.pow(mask.highestHz() / mask.lowestHz(), i / (count - 1.0)));
        gridHz[count - 1] = mask.highestHz();
        if (point.elements().isEmpty()) {
            byBands(WayBand.of(model, point));
        } else {
            byTravel(CircuitCompiler.compile(book, model, point, CircuitFault.NONE), mask);
        }
        drivers.values().forEach(this::normalise);
        this.loose = new double[count];
        double nepers = StrictMath.log(LOOSE_TO_HZ / LOOSE_FROM_HZ);
        // one that this sweep does not reach is not heard: nothing is made up for it
        Arrays.setAll(loose, i -> gridHz[i] >= LOOSE_FROM_HZ && gridHz[i] <= LOOSE_TO_HZ ? 1 / nepers : 0);
        blend(loose);
    }

    private void byTravel(PointCircuit circuit, LevelMask mask) {
        circuit.travelPerVolt(gridHz, circuit.nominal()).forEach((position, perVolt) -> {
            double[] travel = new double[gridHz.length];
            Arrays.setAll(travel, i -> perVolt[i] * mask.voltageVrmsAt(gridHz[i]));
            double largest = Arrays.stream(travel).max().orElseThrow();
            Arrays.setAll(travel, i -> Math.max(0, travel[i] / largest - LEAST_SHARE));
            drivers.put(position, travel);
        });
    }

    private void byBands(List<WayBand> bands) {
        for (int w = 0; w < bands.size(); w++) {
            double from = w == 0 ? gridHz[0] : bands.get(w).fromHz() / BELOW_ITS_BAND;
            double to = w + 1 < bands.size() ? bands.get(w + 1).fromHz() / BELOW_ITS_BAND : Double.MAX_VALUE;
            double least = w == 0 ? to : Math.min(to, bands.get(w).fromHz());
            for (String position : bands.get(w).positionCodes()) {
                double[] there = new double[gridHz.length];
                Arrays.setAll(there, i -> gridHz[i] >= from && gridHz[i] <= least ? 1 : 0);
                drivers.put(position, there);
            }
        }
    }

    private double nepersPerPoint() {
        return StrictMath.log(gridHz[gridHz.length - 1] / gridHz[0]) / (gridHz.length - 1);
    }

    private void normalise(double[] density) {
        double sum = Arrays.stream(density).sum() * nepersPerPoint();
        for (int i = 0; i < density.length; i++) {
            density[i] = sum > 0 ? density[i] / sum : 0;
        }
        blend(density);
    }

    private void blend(double[] density) {
        double anywhere = ANYWHERE / StrictMath.log(gridHz[gridHz.length - 1] / gridHz[0]);
        for (int i = 0; i < density.length; i++) {
            density[i] = (1 - ANYWHERE) * density[i] + anywhere;
        }
    }

    /**
     * Drivers behind the point.
     *
     * @return position codes in the order of the network
     */
    Iterable<String> positions() {
        return drivers.keySet();
    }

    int size() {
        return drivers.size();
    }

    /**
     * Density with which a driver touches between two frequencies, mean over them.
     *
     * @param position driver
     * @param fromHz lower frequency
     * @param toHz upper frequency
     * @return per neper, greater than 0
     */
    double ofDriver(String position, double fromHz, double toHz) {
        return mean(drivers.get(position), fromHz, toHz);
    }

    /**
     * The same of a loose part.
     *
     * @param fromHz lower frequency
     * @param toHz upper frequency
     * @return per neper, greater than 0
     */
    double ofLoosePart(double fromHz, double toHz) {
        return mean(loose, fromHz, toHz);
    }

    private double mean(double[] density, double fromHz, double toHz) {
        double sum = 0;
        int count = 0;
        int nearest = 0;
        double middleHz = Math.sqrt(fromHz * toHz);
        for (int i = 0; i < gridHz.length; i++) {
            if (gridHz[i] >= fromHz && gridHz[i] <= toHz) {
                sum += density[i];
                count++;
            }
            nearest = Math.abs(StrictMath.log(gridHz[i] / middleHz))
                            < Math.abs(StrictMath.log(gridHz[nearest] / middleHz))
                    ? i
                    : nearest;
        }
        return count == 0 ? density[nearest] : sum / count;
    }
}
