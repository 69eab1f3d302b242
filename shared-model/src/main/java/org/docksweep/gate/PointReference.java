package org.docksweep.gate;

import java.util.Arrays;

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
        double[] spreadLevelDb) {

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
                && Arrays.equals(spreadLevelDb, that.spreadLevelDb);
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
