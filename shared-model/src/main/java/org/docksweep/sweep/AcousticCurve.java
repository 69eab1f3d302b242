package org.docksweep.sweep;

import java.util.Arrays;

/**
 * Sound pressure per volt of drive against frequency, with the noise beside it. Arrays are copied in and out.
 *
 * @param frequencyHz rising frequencies in hertz
 * @param levelDb level of pressure over drive voltage, in dB re 1 Pa/V
 * @param noiseDb level of the noise on the same scale, in dB re 1 Pa/V
 */
public record AcousticCurve(double[] frequencyHz, double[] levelDb, double[] noiseDb) {

    public AcousticCurve {
        int n = frequencyHz.length;
        if (n < 2 || levelDb.length != n || noiseDb.length != n) {
            throw new IllegalArgumentException("acoustic curve needs at least 2 points and equally many of each: " + n
                    + " frequencies, " + levelDb.length + " levels, " + noiseDb.length + " noise levels");
        }
        frequencyHz = frequencyHz.clone();
        levelDb = levelDb.clone();
        noiseDb = noiseDb.clone();
    }

    @Override
    public double[] frequencyHz() {
        return frequencyHz.clone();
    }

    @Override
    public double[] levelDb() {
        return levelDb.clone();
    }

    @Override
    public double[] noiseDb() {
        return noiseDb.clone();
    }

    /**
     * Number of points.
     *
     * @return points, at least 2
     */
    public int size() {
        return frequencyHz.length;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof AcousticCurve that
                && Arrays.equals(frequencyHz, that.frequencyHz)
                && Arrays.equals(levelDb, that.levelDb)
                && Arrays.equals(noiseDb, that.noiseDb);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(frequencyHz) * 31 + Arrays.hashCode(levelDb);
    }

    @Override
    public String toString() {
        return "AcousticCurve[" + size() + " points, " + frequencyHz[0] + " to " + frequencyHz[size() - 1] + " Hz]";
    }
}
