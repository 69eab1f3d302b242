package org.docksweep.circuit;

/**
 * A dense complex linear system {@code Y v = u} built from rank-one terms and solved by elimination with partial
 * pivoting. Made once and used again for every frequency: no allocation in the loop.
 */
final class ComplexSystem {
    private final int size;
    private final double[] re;
    private final double[] im;
    private final double[] solutionRe;
    private final double[] solutionIm;

    ComplexSystem(int size) {
        this.size = size;
        this.re = new double[size * size];
        this.im = new double[size * size];
        this.solutionRe = new double[size];
        this.solutionIm = new double[size];
    }

    /** Empties the matrix but for a small conductance on the diagonal, which keeps floating nodes solvable. */
    void clear(double leakS) {
        java.util.Arrays.fill(re, 0);
        java.util.Arrays.fill(im, 0);
        for (int i = 0; i < size; i++) {
            re[i * size + i] = leakS;
        }
    }

    /** Adds {@code y g g^T}, with g given by its non-zero entries. */
    void add(int[] nodes, double[] weights, double yRe, double yIm) {
        for (int i = 0; i < nodes.length; i++) {
            for (int j = 0; j < nodes.length; j++) {
                double weight = weights[i] * weights[j];
                re[nodes[i] * size + nodes[j]] += weight * yRe;
                im[nodes[i] * size + nodes[j]] += weight * yIm;
            }
        }
    }

    /** Solves for a unit current into one node. */
    void solveUnitCurrentInto(int node) {
        java.util.Arrays.fill(solutionRe, 0);
        java.util.Arrays.fill(solutionIm, 0);
        solutionRe[node] = 1;
        for (int k = 0; k < size; k++) {
            swapRows(k, pivotRow(k));
            eliminateBelow(k);
        }
        substituteBack();
    }

    double solutionRe(int node) {
        return solutionRe[node];
    }

    double solutionIm(int node) {
        return solutionIm[node];
    }

    /** Real part of {@code g^T v}. */
    double projectRe(int[] nodes, double[] weights) {
        double sum = 0;
        for (int i = 0; i < nodes.length; i++) {
            sum += weights[i] * solutionRe[nodes[i]];
        }
        return sum;
    }

    /** Imaginary part of {@code g^T v}. */
    double projectIm(int[] nodes, double[] weights) {
        double sum = 0;
        for (int i = 0; i < nodes.length; i++) {
            sum += weights[i] * solutionIm[nodes[i]];
        }
        return sum;
    }

    private int pivotRow(int k) {
        int best = k;
        double largest = -1;
        for (int i = k; i < size; i++) {
            double magnitude = Math.abs(re[i * size + k]) + Math.abs(im[i * size + k]);
            if (magnitude > largest) {
                largest = magnitude;
                best = i;
            }
        }
        return best;
    }

    private void swapRows(int a, int b) {
        if (a == b) {
            return;
        }
        for (int j = 0; j < size; j++) {
            swap(re, a * size + j, b * size + j);
            swap(im, a * size + j, b * size + j);
        }
        swap(solutionRe, a, b);
        swap(solutionIm, a, b);
    }

    private static void swap(double[] array, int a, int b) {
        double kept = array[a];
        array[a] = array[b];
        array[b] = kept;
    }

    private void eliminateBelow(int k) {
        double pivotRe = re[k * size + k];
        double pivotIm = im[k * size + k];
        double norm = pivotRe * pivotRe + pivotIm * pivotIm;
        for (int i = k + 1; i < size; i++) {
            double aRe = re[i * size + k];
            double aIm = im[i * size + k];
            if (aRe == 0 && aIm == 0) {
                continue;
            }
            double factorRe = (aRe * pivotRe + aIm * pivotIm) / norm;
            double factorIm = (aIm * pivotRe - aRe * pivotIm) / norm;
            for (int j = k + 1; j < size; j++) {
                double bRe = re[k * size + j];
                double bIm = im[k * size + j];
                re[i * size + j] -= factorRe * bRe - factorIm * bIm;
                im[i * size + j] -= factorRe * bIm + factorIm * bRe;
            }
            solutionRe[i] -= factorRe * solutionRe[k] - factorIm * solutionIm[k];
            solutionIm[i] -= factorRe * solutionIm[k] + factorIm * solutionRe[k];
        }
    }

    private void substituteBack() {
        for (int i = size - 1; i >= 0; i--) {
            double sumRe = solutionRe[i];
            double sumIm = solutionIm[i];
            for (int j = i + 1; j < size; j++) {
                sumRe -= re[i * size + j] * solutionRe[j] - im[i * size + j] * solutionIm[j];
                sumIm -= re[i * size + j] * solutionIm[j] + im[i * size + j] * solutionRe[j];
            }
            double pivotRe = re[i * size + i];
            double pivotIm = im[i * size + i];
            double norm = pivotRe * pivotRe + pivotIm * pivotIm;
            solutionRe[i] = (sumRe * pivotRe + sumIm * pivotIm) / norm;
            solutionIm[i] = (sumIm * pivotRe - sumRe * pivotIm) / norm;
        }
    }
}
