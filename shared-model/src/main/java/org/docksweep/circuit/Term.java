package org.docksweep.circuit;

/**
 * A rank-one contribution {@code y(f) g g^T} to the nodal admittance matrix. A two-terminal part has g = (+1, -1) at its
 * ends; air shared by several cones has one entry per cone.
 *
 * <p>For a unit current into the input, {@code dZ/dy = -(g^T v)^2}: every sensitivity comes from the one solution.
 */
abstract class Term {
    private final int[] nodes;
    private final double[] weights;
    private final int[] parameters;

    /** Admittance after {@link #evaluate}, in siemens. */
    double yRe;
    /** Imaginary part of the admittance. */
    double yIm;
    /** Derivatives of the admittance by the term's parameters, real parts. */
    final double[] slopeRe;
    /** Derivatives, imaginary parts. */
    final double[] slopeIm;

    Term(int[] nodes, double[] weights, int... parameters) {
        this.nodes = nodes;
        this.weights = weights;
        this.parameters = parameters;
        this.slopeRe = new double[parameters.length];
        this.slopeIm = new double[parameters.length];
    }

    final int[] nodes() {
        return nodes;
    }

    final double[] weights() {
        return weights;
    }

    /** Indices of the circuit's parameters this term depends on, in the order of the slopes. */
    final int[] parameters() {
        return parameters;
    }

    /** Index of a parameter that changes the weights, or -1. */
    int weightParameter() {
        return -1;
    }

    /** Slopes of the weights by that parameter. */
    double[] weightSlopes() {
        throw new IllegalStateException("no parameter changes the weights of this term");
    }

    /** Takes a parameter vector in, once for all frequencies that follow. */
    abstract void prepare(double[] x);

    /** Sets admittance and slopes for a frequency (angular frequency and its logarithm given) and the prepared vector. */
    abstract void evaluate(double omega, double logOmega);

    /** Sets the admittance to 1 / z and turns slopes of z into slopes of y: {@code dy = -y^2 dz}. */
    final void invert(double zRe, double zIm) {
        double norm = zRe * zRe + zIm * zIm;
        yRe = zRe / norm;
        yIm = -zIm / norm;
        double squareRe = yRe * yRe - yIm * yIm;
        double squareIm = 2 * yRe * yIm;
        for (int i = 0; i < slopeRe.length; i++) {
            double dRe = slopeRe[i];
            double dIm = slopeIm[i];
            slopeRe[i] = -(squareRe * dRe - squareIm * dIm);
            slopeIm[i] = -(squareRe * dIm + squareIm * dRe);
        }
    }
}
