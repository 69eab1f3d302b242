package org.docksweep.gate;

import java.util.List;
import org.docksweep.circuit.CircuitParameter;

/**
 * References taught up to judge version 9, in today's terms: losses of capacitors were carried as logarithms then, and of a horn driver's
 * resonances the height R = Z Q instead of Z. A house that taught its models need not teach them again.
 */
final class OlderTerms {
    /** What a height scattered by before it was taught. */
    private static final double HEIGHT_SPREAD = 0.12;

    private OlderTerms() {}

    /**
     * Translates.
     *
     * @param taught what good units taught, in the terms of its day
     * @param parameters today's parameters of the same circuit
     * @return the same in today's terms, as far as it can be told
     */
    static PointReference.Taught translated(PointReference.Taught taught, List<CircuitParameter> parameters) {
        List<String> then = taught.parameterIds();
        if (then.size() != parameters.size()) {
            return taught;
        }
        String[] ids = then.toArray(String[]::new);
        double[] mean = taught.mean().clone();
        double[] spread = taught.spread().clone();
        for (int i = 0; i < ids.length; i++) {
            CircuitParameter parameter = parameters.get(i);
            String id = ids[i];
            if (id.endsWith(".esr") && parameter.id().equals(id + "Ohm")) {
                mean[i] = StrictMath.exp(mean[i]);
                spread[i] = parameter.spread();
            } else if (isHeight(id, parameter.id())) {
                mean[i] -= mean[then.indexOf(id.replaceFirst("\\.R(\\d+)$", ".Q$1"))];
                spread[i] *= parameter.spread() / HEIGHT_SPREAD;
            } else {
                continue;
            }
            ids[i] = parameter.id();
        }
        return new PointReference.Taught(
                List.of(ids),
                mean,
                spread,
                taught.offsetLog(),
                taught.offsetPhaseRad(),
                taught.offsetSigma(),
                taught.scatter());
    }

    private static boolean isHeight(String then, String now) {
        return then.matches(".*\\.R\\d+") && now.equals(then.replaceFirst("\\.R(\\d+)$", ".Z$1"));
    }
}
