package org.docksweep.circuit;

/**
 * Impedance of a circuit at one frequency with its slopes by every parameter.
 *
 * @param resistanceOhm real part in ohm
 * @param reactanceOhm imaginary part in ohm
 * @param resistanceSlopes d(real part)/d(parameter), in the order of {@link PointCircuit#parameters()}
 * @param reactanceSlopes d(imaginary part)/d(parameter)
 */
record CircuitSlopes(double resistanceOhm, double reactanceOhm, double[] resistanceSlopes, double[] reactanceSlopes) {

    static CircuitSlopes at(PointCircuit circuit, double frequencyHz, double[] x) {
        int n = circuit.parameters().size();
        double[] logarithm = new double[2];
        double[] bySizes = new double[n];
        double[] byPhases = new double[n];
        circuit.prepare(x);
        circuit.evaluate(frequencyHz, logarithm, bySizes, byPhases);
        double magnitude = StrictMath.exp(logarithm[0]);
        double re = magnitude * StrictMath.cos(logarithm[1]);
        double im = magnitude * StrictMath.sin(logarithm[1]);
        // dZ = Z d ln Z
        for (int i = 0; i < n; i++) {
            double logRe = bySizes[i];
            double logIm = byPhases[i];
            bySizes[i] = re * logRe - im * logIm;
            byPhases[i] = re * logIm + im * logRe;
        }
        return new CircuitSlopes(re, im, bySizes, byPhases);
    }
}
