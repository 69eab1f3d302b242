package org.docksweep.circuit;

import java.util.Arrays;
import java.util.List;

/**
 * What is believed of a circuit's parameters before the measurement: independent normal distributions. Arrays are copied
 * in and out.
 *
 * @param mean means of the carried quantities
 * @param spread standard deviations, greater than 0
 */
public record CircuitPrior(double[] mean, double[] spread) {
    public CircuitPrior {
        if (mean.length != spread.length) {
            throw new IllegalArgumentException("prior has " + mean.length + " means but " + spread.length + " spreads");
        }
        mean = mean.clone();
        spread = spread.clone();
    }

    /**
     * Prior from nominal values and healthy spreads.
     *
     * @param parameters parameters
     * @return the prior
     */
    public static CircuitPrior nominal(List<CircuitParameter> parameters) {
        return new CircuitPrior(
                parameters.stream().mapToDouble(CircuitParameter::nominal).toArray(),
                parameters.stream().mapToDouble(CircuitParameter::spread).toArray());
    }

    /**
     * The same prior for a circuit with additional parameters at the end.
     *
     * @param circuit circuit whose first parameters are those of this prior
     * @return prior of the circuit
     */
    public CircuitPrior extendedTo(PointCircuit circuit) {
        List<CircuitParameter> all = circuit.parameters();
        double[] means = Arrays.copyOf(mean, all.size());
        double[] spreads = Arrays.copyOf(spread, all.size());
        for (int i = mean.length; i < all.size(); i++) {
            means[i] = all.get(i).nominal();
            spreads[i] = all.get(i).spread();
        }
        return new CircuitPrior(means, spreads);
    }

    /**
     * The same prior with one parameter moved and widened.
     *
     * @param index parameter
     * @param newMean its mean
     * @param newSpread its standard deviation
     * @return changed prior
     */
    public CircuitPrior with(int index, double newMean, double newSpread) {
        double[] means = mean.clone();
        double[] spreads = spread.clone();
        means[index] = newMean;
        spreads[index] = newSpread;
        return new CircuitPrior(means, spreads);
    }

    @Override
    public double[] mean() {
        return mean.clone();
    }

    @Override
    public double[] spread() {
        return spread.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CircuitPrior that
                && Arrays.equals(mean, that.mean)
                && Arrays.equals(spread, that.spread);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(mean) * 31 + Arrays.hashCode(spread);
    }

    @Override
    public String toString() {
        return "CircuitPrior" + Arrays.toString(mean);
    }
}
