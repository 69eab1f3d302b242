package org.docksweep.demo.physics;

import org.hipparchus.complex.Complex;

/** Plain filter shapes, as complex factors. */
final class Shapes {
    private Shapes() {}

    /** Butterworth low-pass of order 1 to 4 (4: Linkwitz-Riley, the square of order 2). */
    static Complex lowPass(double omega, double cornerHz, int order) {
        Complex s = new Complex(0, omega / (2 * Math.PI * cornerHz));
        return denominator(s, order).reciprocal();
    }

    /** Butterworth high-pass of order 1 to 4 (4: Linkwitz-Riley). */
    static Complex highPass(double omega, double cornerHz, int order) {
        Complex s = new Complex(0, omega / (2 * Math.PI * cornerHz)).reciprocal();
        return denominator(s, order).reciprocal();
    }

    private static Complex denominator(Complex s, int order) {
        Complex second = s.multiply(s).add(s.multiply(Math.sqrt(2))).add(1);
        return switch (order) {
            case 1 -> s.add(1);
            case 2 -> second;
            case 3 -> s.add(1).multiply(s.multiply(s).add(s).add(1));
            case 4 -> second.multiply(second);
            default -> throw new IllegalArgumentException("filter order must be 1 to 4, but is " + order);
        };
    }
}
