package org.docksweep.gate;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.docksweep.sweep.SoundPrint;

/**
 * What healthy units of a cabinet model look like at a test point: mean and unit-to-unit spread of the logarithm of
 * the impedance magnitude, mean phase, and of the acoustic level. Curves are referred to 20 C. Arrays are never
 * changed after construction and must not be changed by readers.
 *
 * @param cabinetModelCode cabinet model
 * @param testPointCode test point
 * @param unitCount number of good units it was learned from, at least 1
 * @param frequencyHz grid of the impedance part; empty for a line input
 * @param meanLogOhm mean of ln(|Z| / 1 ohm)
 * @param meanPhaseRad mean phase in radian
 * @param spreadLog standard deviation of ln |Z| between healthy units, shrunk towards the tolerance model
 * @param acousticFrequencyHz grid of the acoustic part; empty without a microphone
 * @param meanLevelDb mean level in dB re 1 Pa/V
 * @param spreadLevelDb standard deviation of the level between healthy units and placements, in dB
 * @param taught what the good units taught about the circuit model, or null for a reference without one (line input)
 * @param sound what good units sound like beyond the level, or null when it was not heard
 */
public record PointReference(
        String cabinetModelCode,
        String testPointCode,
        int unitCount,
        double[] frequencyHz,
        double[] meanLogOhm,
        double[] meanPhaseRad,
        double[] spreadLog,
        double[] acousticFrequencyHz,
        double[] meanLevelDb,
        double[] spreadLevelDb,
        Taught taught,
        SoundPrint sound) {

    /**
     * A reference that knows nothing of the sound beyond its level; parameters as above.
     *
     * @param cabinetModelCode cabinet model
     * @param testPointCode test point
     * @param unitCount number of good units
     * @param frequencyHz grid of the impedance part
     * @param meanLogOhm mean of ln(|Z| / 1 ohm)
     * @param meanPhaseRad mean phase
     * @param spreadLog spread
     * @param acousticFrequencyHz grid of the acoustic part
     * @param meanLevelDb mean level
     * @param spreadLevelDb its spread
     * @param taught what the good units taught
     */
    public PointReference(
            String cabinetModelCode,
            String testPointCode,
            int unitCount,
            double[] frequencyHz,
            double[] meanLogOhm,
            double[] meanPhaseRad,
            double[] spreadLog,
            double[] acousticFrequencyHz,
            double[] meanLevelDb,
            double[] spreadLevelDb,
            Taught taught) {
        this(
                cabinetModelCode,
                testPointCode,
                unitCount,
                frequencyHz,
                meanLogOhm,
                meanPhaseRad,
                spreadLog,
                acousticFrequencyHz,
                meanLevelDb,
                spreadLevelDb,
                taught,
                null);
    }

    public PointReference {
        if (unitCount < 1) {
            throw new IllegalArgumentException("reference of " + cabinetModelCode + " " + testPointCode
                    + " must come from at least 1 good unit, but unitCount is " + unitCount);
        }
        if (meanLogOhm.length != frequencyHz.length
                || meanPhaseRad.length != frequencyHz.length
                || spreadLog.length != frequencyHz.length
                || meanLevelDb.length != acousticFrequencyHz.length
                || spreadLevelDb.length != acousticFrequencyHz.length) {
            throw new IllegalArgumentException(
                    "reference of " + cabinetModelCode + " " + testPointCode + ": arrays differ in length");
        }
    }

    /**
     * What known-good units taught about the circuit model of the point.
     *
     * @param parameterIds circuit parameters, in the circuit's order
     * @param mean mean of each carried parameter
     * @param spread standard deviation of each between units, shrunk towards the tolerance model
     * @param offsetLog mean of ln|Z| measured minus fitted, on the reference's frequency grid
     * @param offsetPhaseRad mean of the phase difference
     * @param offsetSigma standard deviation around both
     * @param scatter what the units varied by, from which the spread follows; null if taught before that was kept
     */
    public record Taught(
            List<String> parameterIds,
            double[] mean,
            double[] spread,
            double[] offsetLog,
            double[] offsetPhaseRad,
            double[] offsetSigma,
            UnitScatter scatter) {
        public Taught {
            parameterIds = List.copyOf(parameterIds);
            if (mean.length != parameterIds.size()
                    || spread.length != parameterIds.size()
                    || offsetPhaseRad.length != offsetLog.length
                    || offsetSigma.length != offsetLog.length
                    || scatter != null && scatter.tolerance().length != mean.length) {
                throw new IllegalArgumentException("taught model: arrays differ in length");
            }
        }

        /** The same with other spreads. */
        Taught withSpread(double[] other) {
            return new Taught(parameterIds, mean, other, offsetLog, offsetPhaseRad, offsetSigma, scatter);
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Taught that
                    && parameterIds.equals(that.parameterIds)
                    && Arrays.equals(mean, that.mean)
                    && Arrays.equals(spread, that.spread)
                    && Arrays.equals(offsetLog, that.offsetLog)
                    && Arrays.equals(offsetPhaseRad, that.offsetPhaseRad)
                    && Arrays.equals(offsetSigma, that.offsetSigma)
                    && Objects.equals(scatter, that.scatter);
        }

        @Override
        public int hashCode() {
            return parameterIds.hashCode() * 31 + Arrays.hashCode(mean);
        }

        @Override
        public String toString() {
            return "Taught" + parameterIds;
        }
    }

    /** The same with other spreads of the circuit's parameters. */
    PointReference withSpread(double[] spread) {
        return new PointReference(
                cabinetModelCode,
                testPointCode,
                unitCount,
                frequencyHz,
                meanLogOhm,
                meanPhaseRad,
                spreadLog,
                acousticFrequencyHz,
                meanLevelDb,
                spreadLevelDb,
                taught.withSpread(spread),
                sound);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PointReference that
                && cabinetModelCode.equals(that.cabinetModelCode)
                && testPointCode.equals(that.testPointCode)
                && unitCount == that.unitCount
                && Arrays.equals(frequencyHz, that.frequencyHz)
                && Arrays.equals(meanLogOhm, that.meanLogOhm)
                && Arrays.equals(meanPhaseRad, that.meanPhaseRad)
                && Arrays.equals(spreadLog, that.spreadLog)
                && Arrays.equals(acousticFrequencyHz, that.acousticFrequencyHz)
                && Arrays.equals(meanLevelDb, that.meanLevelDb)
                && Arrays.equals(spreadLevelDb, that.spreadLevelDb)
                && Objects.equals(taught, that.taught)
                && Objects.equals(sound, that.sound);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(meanLogOhm) * 31 + testPointCode.hashCode();
    }

    @Override
    public String toString() {
        return "PointReference[" + cabinetModelCode + " " + testPointCode + ", " + unitCount + " units]";
    }
}
