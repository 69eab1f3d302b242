package org.docksweep.demo.rig;

import org.hipparchus.complex.Complex;

/** A plain discrete Fourier transform at single frequencies: the tests' own, slow and simple. */
final class Dft {
    private Dft() {}

    static Complex at(float[] samples, double sampleRateHz, double frequencyHz) {
        double re = 0;
        double im = 0;
        double step = 2 * Math.PI * frequencyHz / sampleRateHz;
        for (int i = 0; i < samples.length; i++) {
            re += samples[i] * Math.cos(step * i);
            im -= samples[i] * Math.sin(step * i);
        }
        return new Complex(re, im);
    }
}
