package org.docksweep.sweep;

import java.util.Arrays;

/**
 * Sound pressure per volt of drive against frequency, with the noise beside it. Arrays are copied in and out.
 *
 * @param frequencyHz rising frequencies in hertz
 * @param levelDb level of pressure over drive voltage, in dB re 1 Pa/V
 * @param noiseDb level of the noise on the same scale, in dB re 1 Pa/V
 * @param print what was heard beyond the level, or null when it was not looked at
 */
public record AcousticCurve(double[] frequencyHz, double[] levelDb, double[] noiseDb, SoundPrint print) {

    public AcousticCurve {
        int n = frequencyHz.length;
        if (n < 2 || levelDb.length != n || noiseDb.length != n) {
            throw new IllegalArgumentException("acoustic curve needs at least 2 points and equally many of each: " + n
                    + " frequencies, " + levelDb.length + " levels, " + noiseDb.length + " noise levels");
        }
        frequencyHz = frequencyHz.clone();
        levelDb = levelDb.clone();
        noiseDb = noiseDb.clone();
        if (print != null && print.phaseRad().length != n) {
            throw new IllegalArgumentException("acoustic curve of " + n
                    + " points needs as many phases, but its print has " + print.phaseRad().length);
        }
    }

    /**
     * A curve of level alone.
     *
     * @param frequencyHz rising frequencies in hertz
     * @param levelDb level in dB re 1 Pa/V
     * @param noiseDb noise in dB re 1 Pa/V
     */
    public AcousticCurve(double[] frequencyHz, double[] levelDb, double[] noiseDb) {
        this(frequencyHz, levelDb, noiseDb, null);
    }

    /**
     * The same with what was heard beyond the level.
     *
     * @param heard the print
     * @return another curve
     */
    public AcousticCurve with(SoundPrint heard) {
        return new AcousticCurve(frequencyHz, levelDb, noiseDb, heard);
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
                && Arrays.equals(noiseDb, that.noiseDb)
                && java.util.Objects.equals(print, that.print);
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
