package org.docksweep.fleet;

import static org.docksweep.fleet.Require.positive;

import java.util.List;

/**
 * The voltage a test point may see, against frequency. Between points the limit runs straight on logarithmic scales;
 * below the first and above the last point nothing may be played.
 *
 * @param points corner points in ascending frequency, at least two
 */
public record LevelMask(List<Point> points) {

    /**
     * A corner of the mask.
     *
     * @param frequencyHz frequency, greater than 0
     * @param voltageVrms highest sine voltage allowed there, in volts rms, greater than 0
     */
    public record Point(double frequencyHz, double voltageVrms) {
        public Point {
            positive("level mask frequencyHz", frequencyHz);
            positive("level mask voltageVrms", voltageVrms);
        }
    }

    public LevelMask {
        points = Require.notEmpty("level mask", points);
        if (points.size() < 2) {
            throw new IllegalArgumentException("level mask must have at least two points, but has 1");
        }
        for (int i = 1; i < points.size(); i++) {
            if (!(points.get(i).frequencyHz() > points.get(i - 1).frequencyHz())) {
                throw new IllegalArgumentException("level mask frequencies must rise: "
                        + points.get(i - 1).frequencyHz() + " Hz is followed by "
                        + points.get(i).frequencyHz() + " Hz");
            }
        }
    }

    /**
     * Lowest frequency that may be played.
     *
     * @return frequency in hertz
     */
    public double lowestHz() {
        return points.get(0).frequencyHz();
    }

    /**
     * Highest frequency that may be played.
     *
     * @return frequency in hertz
     */
    public double highestHz() {
        return points.get(points.size() - 1).frequencyHz();
    }

    /**
     * Highest sine voltage allowed at a frequency.
     *
     * @param frequencyHz frequency in hertz
     * @return volts rms; 0 outside the mask
     */
    public double voltageVrmsAt(double frequencyHz) {
        if (!(frequencyHz >= lowestHz() && frequencyHz <= highestHz())) {
            return 0;
        }
        for (int i = 1; i < points.size(); i++) {
            Point low = points.get(i - 1);
            Point high = points.get(i);
            if (frequencyHz <= high.frequencyHz()) {
                double share = StrictMath.log(frequencyHz / low.frequencyHz())
                        / StrictMath.log(high.frequencyHz() / low.frequencyHz());
                return low.voltageVrms() * StrictMath.pow(high.voltageVrms() / low.voltageVrms(), share);
            }
        }
        return 0;
    }
}
