package org.docksweep.kiosk.dock;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.docksweep.gate.PointReference;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * Tells from the quiet probe, before any level is raised, whether the lead sits in another test point of the same
 * cabinet: {@code d = rms over the probe band of ln |Z| - mean ln |Z| of the reference}. The other test point must fit
 * well, and its own must not.
 */
public final class SocketCheck {
    /** A probe further than this from its own reference (a factor of 1.5) may be another point's; judgement of ours. */
    static final double FAR_LOG = Math.log(1.5);
    /** A probe this near to another point's reference (a factor of 1.2) fits it; judgement of ours. */
    static final double NEAR_LOG = Math.log(1.2);

    private SocketCheck() {}

    /**
     * The test point the lead seems to sit in.
     *
     * @param probe impedance seen by the probe
     * @param testPointCode test point it should sit in
     * @param references references of the test points of this cabinet model
     * @return the other test point; empty when nothing speaks for one
     */
    public static Optional<String> otherSocket(
            ImpedanceCurve probe, String testPointCode, List<PointReference> references) {
        double own = references.stream()
                .filter(r -> r.testPointCode().equals(testPointCode))
                .mapToDouble(r -> distanceLog(probe, r))
                .findFirst()
                .orElse(0);
        if (!(own > FAR_LOG)) {
            return Optional.empty();
        }
        return references.stream()
                .filter(r -> !r.testPointCode().equals(testPointCode))
                .filter(r -> distanceLog(probe, r) < NEAR_LOG)
                .min(Comparator.comparingDouble(r -> distanceLog(probe, r)))
                .map(PointReference::testPointCode);
    }

    /** Infinite when the two share no frequency. */
    private static double distanceLog(ImpedanceCurve probe, PointReference reference) {
        double[] gridHz = reference.frequencyHz();
        double[] probeHz = probe.frequencyHz();
        double sum = 0;
        int shared = 0;
        int k = 0;
        for (int i = 0; i < probeHz.length; i++) {
            while (k < gridHz.length - 1 && gridHz[k + 1] <= probeHz[i]) {
                k++;
            }
            int nearest = k < gridHz.length - 1 && gridHz[k + 1] - probeHz[i] < probeHz[i] - gridHz[k] ? k + 1 : k;
            boolean apart = gridHz.length == 0 || Math.abs(Math.log(gridHz[nearest] / probeHz[i])) > 0.05;
            if (!apart) {
                double difference = Math.log(probe.magnitudeOhm(i)) - reference.meanLogOhm()[nearest];
                sum += difference * difference;
                shared++;
            }
        }
        return shared == 0 ? Double.POSITIVE_INFINITY : Math.sqrt(sum / shared);
    }
}
