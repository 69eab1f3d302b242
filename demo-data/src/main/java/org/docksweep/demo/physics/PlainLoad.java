package org.docksweep.demo.physics;

import java.util.function.DoubleFunction;
import org.hipparchus.complex.Complex;

/**
 * A silent two-terminal load of known impedance: resistor, check standard, short, open.
 *
 * @param impedanceOhm impedance in ohm at a frequency in hertz
 */
public record PlainLoad(DoubleFunction<Complex> impedanceOhm) implements Load {

    @Override
    public Response at(double frequencyHz, Complex sourceOhm) {
        Complex load = impedanceOhm.apply(frequencyHz);
        Complex current = load.add(sourceOhm).reciprocal();
        return new Response(current.multiply(load), current, Complex.ZERO, Complex.ZERO);
    }
}
