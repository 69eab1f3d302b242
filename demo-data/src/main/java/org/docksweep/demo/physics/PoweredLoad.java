package org.docksweep.demo.physics;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Way;
import org.hipparchus.complex.Complex;

/**
 * A powered cabinet seen from its line input: a high input resistance, and behind it one amplifier per way with a
 * fourth-order Linkwitz-Riley division. Only the microphone sees what the drivers do.
 */
final class PoweredLoad implements Load {
    private static final double INPUT_OHM = 20_000;
    private static final double CROSSOVER_HZ = 1700;
    private static final double SUBSONIC_HZ = 38;
    private static final double GAIN = 30;
    private static final double HF_TRIM = 0.32;
    private static final Complex AMPLIFIER_OHM = new Complex(0.05);

    private record AmplifiedWay(Way way, Load driver) {}

    private final List<AmplifiedWay> ways;

    private PoweredLoad(List<AmplifiedWay> ways) {
        this.ways = ways;
    }

    static PoweredLoad of(CabinetModel model, TestPoint point, Function<String, Load> driverCircuit) {
        List<AmplifiedWay> ways = new ArrayList<>();
        for (String position : point.positionCodes()) {
            ways.add(new AmplifiedWay(model.position(position).way(), driverCircuit.apply(position)));
        }
        return new PoweredLoad(List.copyOf(ways));
    }

    @Override
    public double rubDb() {
        return ways.stream().mapToDouble(w -> w.driver().rubDb()).max().orElse(Double.NEGATIVE_INFINITY);
    }

    @Override
    public Rattle rattle() {
        return ways.stream()
                .map(w -> w.driver().rattle())
                .filter(java.util.Objects::nonNull)
                .findFirst()
                .orElse(null);
    }

    @Override
    public Response at(double frequencyHz, Complex sourceOhm) {
        double omega = 2 * Math.PI * frequencyHz;
        Complex current = sourceOhm.add(INPUT_OHM).reciprocal();
        Complex line = current.multiply(INPUT_OHM);
        Complex pressure = Complex.ZERO;
        Complex excursion = Complex.ZERO;
        Way watched = watchedWay();
        for (AmplifiedWay way : ways) {
            Complex drive = line.multiply(GAIN).multiply(division(way.way(), omega));
            Response response = way.driver().at(frequencyHz, AMPLIFIER_OHM);
            pressure = pressure.add(response.pressurePaPerV().multiply(drive));
            Complex moved = response.excursion().multiply(drive);
            if (way.way() == watched) {
                excursion = moved;
            }
        }
        return new Response(line, current, pressure, excursion);
    }

    private Way watchedWay() {
        return ways.stream()
                .filter(w -> w.driver().rubDb() > Double.NEGATIVE_INFINITY)
                .findFirst()
                .orElse(ways.get(0))
                .way();
    }

    private static Complex division(Way way, double omega) {
        return way == Way.HF
                ? Shapes.highPass(omega, CROSSOVER_HZ, 4).multiply(HF_TRIM)
                : Shapes.lowPass(omega, CROSSOVER_HZ, 4).multiply(Shapes.highPass(omega, SUBSONIC_HZ, 2));
    }
}
