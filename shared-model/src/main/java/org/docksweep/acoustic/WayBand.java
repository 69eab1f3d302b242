package org.docksweep.acoustic;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Way;

/**
 * A band in which a way of a cabinet speaks alone; limits are common practice, no source.
 *
 * @param way way
 * @param positionCodes its driver positions behind the test point
 * @param fromHz lower end in hertz
 * @param toHz upper end in hertz
 */
public record WayBand(Way way, List<String> positionCodes, double fromHz, double toHz) {
    private static final Map<Way, double[]> TWO_WAYS =
            Map.of(Way.LF, new double[] {80, 800}, Way.HF, new double[] {3000, 12000});

    private static final Map<Way, double[]> THREE_WAYS = Map.of(
            Way.LF, new double[] {60, 250},
            Way.MF, new double[] {600, 1800},
            Way.HF, new double[] {5000, 12000});

    /** A band keeps this factor from the ends of the sweep. */
    private static final double MARGIN = 1.4;

    /**
     * The bands of a test point.
     *
     * @param model cabinet model
     * @param point one of its test points
     * @return one band per way, in the order of the ways
     */
    public static List<WayBand> of(CabinetModel model, TestPoint point) {
        TreeMap<Way, List<String>> ways = new TreeMap<>();
        point.positionCodes()
                .forEach(code -> ways.computeIfAbsent(model.position(code).way(), w -> new ArrayList<>())
                        .add(code));
        Map<Way, double[]> limits = ways.containsKey(Way.MF) ? THREE_WAYS : TWO_WAYS;
        double lowestHz = point.levelMask().lowestHz() * MARGIN;
        double highestHz = point.levelMask().highestHz() / MARGIN;
        List<WayBand> bands = new ArrayList<>();
        ways.forEach((way, codes) -> {
            double[] band = limits.get(way);
            bands.add(new WayBand(way, List.copyOf(codes), Math.max(band[0], lowestHz), Math.min(band[1], highestHz)));
        });
        return List.copyOf(bands);
    }
}
