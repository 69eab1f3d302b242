package org.docksweep.demo.physics;

import org.hipparchus.complex.Complex;

/** Small dense complex linear algebra. */
final class Dense {
    private Dense() {}

    /**
     * Solves {@code a x = b} by elimination with partial pivoting; a and b are overwritten, b holds x afterwards.
     *
     * @param a square matrix
     * @param b right sides, one column each: b[row][column]
     * @throws IllegalStateException if the matrix is singular
     */
    static void solveInPlace(Complex[][] a, Complex[][] b) {
        int n = a.length;
        for (int column = 0; column < n; column++) {
            int pivot = column;
            for (int row = column + 1; row < n; row++) {
                if (size(a[row][column]) > size(a[pivot][column])) {
                    pivot = row;
                }
            }
            if (!(size(a[pivot][column]) > 0)) {
                throw new IllegalStateException(
                        "network equation " + column + " of " + n + " is singular: a node hangs free");
            }
            swap(a, pivot, column);
            swap(b, pivot, column);
            Complex inverse = a[column][column].reciprocal();
            for (int row = column + 1; row < n; row++) {
                if (size(a[row][column]) == 0) {
                    continue;
                }
                Complex factor = a[row][column].multiply(inverse);
                subtract(a[row], a[column], factor, column);
                subtract(b[row], b[column], factor, 0);
            }
        }
        for (int row = n - 1; row >= 0; row--) {
            for (int k = row + 1; k < n; k++) {
                subtract(b[row], b[k], a[row][k], 0);
            }
            Complex inverse = a[row][row].reciprocal();
            for (int c = 0; c < b[row].length; c++) {
                b[row][c] = b[row][c].multiply(inverse);
            }
        }
    }

    static Complex[][] inverse(Complex[][] a) {
        if (a.length == 1) {
            return new Complex[][] {{a[0][0].reciprocal()}};
        }
        Complex[][] result = zeros(a.length, a.length);
        for (int i = 0; i < a.length; i++) {
            result[i][i] = Complex.ONE;
        }
        solveInPlace(a, result);
        return result;
    }

    static Complex[][] zeros(int rows, int columns) {
        Complex[][] matrix = new Complex[rows][columns];
        for (Complex[] row : matrix) {
            java.util.Arrays.fill(row, Complex.ZERO);
        }
        return matrix;
    }

    private static void subtract(Complex[] target, Complex[] source, Complex factor, int from) {
        for (int c = from; c < target.length; c++) {
            target[c] = target[c].subtract(source[c].multiply(factor));
        }
    }

    private static void swap(Complex[][] rows, int i, int k) {
        Complex[] kept = rows[i];
        rows[i] = rows[k];
        rows[k] = kept;
    }

    private static double size(Complex value) {
        return Math.abs(value.getRealPart()) + Math.abs(value.getImaginaryPart());
    }
}
