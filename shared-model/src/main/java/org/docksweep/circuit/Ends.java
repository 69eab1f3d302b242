package org.docksweep.circuit;

/**
 * The non-zero entries of a term's vector g. The return terminal (node -1) has no row in the matrix.
 *
 * @param nodes node numbers
 * @param weights entries
 */
record Ends(int[] nodes, double[] weights) {

    static int[] nodes(int a, int b) {
        return of(new int[] {a}, new int[] {b}, new double[] {1}).nodes();
    }

    static double[] weights(int a, int b) {
        return of(new int[] {a}, new int[] {b}, new double[] {1}).weights();
    }

    static Ends of(int[] from, int[] to, double[] weight) {
        int[] nodes = new int[2 * from.length];
        double[] weights = new double[2 * from.length];
        int count = 0;
        for (int i = 0; i < from.length; i++) {
            if (from[i] >= 0) {
                nodes[count] = from[i];
                weights[count++] = weight[i];
            }
            if (to[i] >= 0) {
                nodes[count] = to[i];
                weights[count++] = -weight[i];
            }
        }
        return new Ends(java.util.Arrays.copyOf(nodes, count), java.util.Arrays.copyOf(weights, count));
    }
}
