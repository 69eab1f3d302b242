package org.docksweep.circuit;

/**
 * Resistance of copper against temperature: {@code R(T) = R20 (1 + alpha (T - 20))}, alpha = 0.00393 per kelvin (IEC
 * 60028, referred to 20 C).
 */
public final class Copper {
    /** Temperature coefficient at 20 C, per kelvin. */
    public static final double PER_KELVIN = 0.00393;

    private static final double REFERENCE_CELSIUS = 20;

    private Copper() {}

    /**
     * Resistance at a temperature.
     *
     * @param at20COhm resistance at 20 C, in ohm
     * @param celsius temperature
     * @return resistance in ohm
     */
    public static double at(double at20COhm, double celsius) {
        return at20COhm * factor(celsius);
    }

    /**
     * Resistance referred to 20 C.
     *
     * @param measuredOhm resistance measured, in ohm
     * @param celsius temperature at which it was measured
     * @return resistance at 20 C, in ohm
     */
    public static double referredTo20C(double measuredOhm, double celsius) {
        return measuredOhm / factor(celsius);
    }

    private static double factor(double celsius) {
        return 1 + PER_KELVIN * (celsius - REFERENCE_CELSIUS);
    }
}
