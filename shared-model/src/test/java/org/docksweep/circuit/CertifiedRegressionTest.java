package org.docksweep.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The fitter against certified values: NIST Statistical Reference Datasets, nonlinear regression, of lower (Misra1a) and higher
 * (BoxBOD, MGH09, Thurber, Eckerle4) difficulty, from both starting points NIST gives.
 */
class CertifiedRegressionTest {
    /** Six digits of eleven certified: normal equations lose some to the condition of Thurber. */
    private static final double PERCENT = 1e-4;
    /** Standard deviations are certified as well; the covariance is taken from slopes at the minimum. */
    private static final double DEVIATION_PERCENT = 1e-2;

    private static final LevenbergMarquardt.Settings TO_THE_END =
            new LevenbergMarquardt.Settings(1_000, 0, 1e-3, 1e-15);

    @ParameterizedTest
    @CsvSource({
        "Misra1a,1",
        "Misra1a,2",
        "BoxBOD,1",
        "BoxBOD,2",
        "MGH09,1",
        "MGH09,2",
        "Thurber,1",
        "Thurber,2",
        "Eckerle4,1",
        "Eckerle4,2"
    })
    void agreesWithTheCertifiedValues(String name, int start) throws IOException {
        List<String[]> lines = lines(name);
        double[][] parameters = numbers(lines, "parameter");
        double[][] data = numbers(lines, "data");
        double rss = numbers(lines, "rss")[0][0];
        double[] from = Arrays.stream(parameters).mapToDouble(p -> p[start - 1]).toArray();

        LevenbergMarquardt.Found found = LevenbergMarquardt.minimise(new Regression(name, data), from, TO_THE_END);

        assertThat(found.normal().cost()).isCloseTo(rss, withinPercentage(PERCENT));
        double variance = found.normal().cost() / (data.length - parameters.length);
        double[][] covariance = found.normal().covariance();
        for (int i = 0; i < parameters.length; i++) {
            assertThat(found.x()[i]).as("b" + (i + 1)).isCloseTo(parameters[i][2], withinPercentage(PERCENT));
            assertThat(Math.sqrt(variance * covariance[i][i]))
                    .as("standard deviation of b" + (i + 1))
                    .isCloseTo(parameters[i][3], withinPercentage(DEVIATION_PERCENT));
        }
    }

    /** A dataset as a problem; no step changes a parameter by more than itself, as fits of curves limit theirs. */
    private static final class Regression implements LevenbergMarquardt.Problem {
        private final String name;
        private final double[][] data;

        Regression(String name, double[][] data) {
            this.name = name;
            this.data = data;
        }

        @Override
        public WeightedNormal at(double[] b) {
            WeightedNormal normal = new WeightedNormal(b.length);
            for (double[] row : data) {
                double[] slopes = new double[b.length];
                double miss = row[0] - model(name, b, row[1], slopes);
                normal.add(slopes, miss, 1);
            }
            return normal;
        }

        @Override
        public double shortening(double[] from, double[] step) {
            double longest = 1;
            for (int i = 0; i < step.length; i++) {
                longest = Math.max(longest, Math.abs(step[i]) / Math.abs(from[i]));
            }
            return longest;
        }
    }

    /** The models as NIST writes them, with their slopes by hand. */
    private static double model(String name, double[] b, double x, double[] slopes) {
        switch (name) {
            case "Misra1a", "BoxBOD" -> {
                double e = Math.exp(-b[1] * x);
                slopes[0] = 1 - e;
                slopes[1] = b[0] * x * e;
                return b[0] * (1 - e);
            }
            case "MGH09" -> {
                double top = x * x + x * b[1];
                double under = x * x + x * b[2] + b[3];
                slopes[0] = top / under;
                slopes[1] = b[0] * x / under;
                slopes[2] = -b[0] * top * x / (under * under);
                slopes[3] = -b[0] * top / (under * under);
                return b[0] * top / under;
            }
            case "Thurber" -> {
                double top = b[0] + x * (b[1] + x * (b[2] + x * b[3]));
                double under = 1 + x * (b[4] + x * (b[5] + x * b[6]));
                for (int i = 0; i < 4; i++) {
                    slopes[i] = Math.pow(x, i) / under;
                }
                for (int i = 0; i < 3; i++) {
                    slopes[4 + i] = -top * Math.pow(x, i + 1) / (under * under);
                }
                return top / under;
            }
            case "Eckerle4" -> {
                double z = (x - b[2]) / b[1];
                double bell = Math.exp(-0.5 * z * z);
                slopes[0] = bell / b[1];
                slopes[1] = b[0] * bell * (z * z - 1) / (b[1] * b[1]);
                slopes[2] = b[0] * bell * z / (b[1] * b[1]);
                return b[0] / b[1] * bell;
            }
            default -> throw new IllegalArgumentException("no model " + name);
        }
    }

    private static double[][] numbers(List<String[]> lines, String kind) {
        return lines.stream()
                .filter(l -> l[1].equals(kind))
                .map(l -> Arrays.stream(l)
                        .skip(2)
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toArray(double[][]::new);
    }

    private static List<String[]> lines(String name) throws IOException {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                CertifiedRegressionTest.class.getResourceAsStream("/org/docksweep/check/nist_strd_nonlinear.csv"),
                StandardCharsets.UTF_8))) {
            return reader.lines()
                    .map(l -> l.split(","))
                    .filter(l -> l[0].equals(name))
                    .toList();
        }
    }
}
