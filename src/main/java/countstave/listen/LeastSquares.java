package countstave.listen;

/** A weighted fit of a line or a parabola. */
final class LeastSquares {

    private final int degree;
    /** Sums of weight · x^k. */
    private final double[] powers;
    /** Sums of weight · y · x^k. */
    private final double[] values;

    LeastSquares(int degree) {
        this.degree = degree;
        this.powers = new double[2 * degree + 1];
        this.values = new double[degree + 1];
    }

    void add(double x, double y, double weight) {
        double power = weight;
        for (int k = 0; k < powers.length; k++) {
            powers[k] += power;
            if (k < values.length) {
                values[k] += power * y;
            }
            power *= x;
        }
    }

    /** The coefficients, the constant first; those that the points do not say are 0. */
    double[] solve() {
        int n = degree + 1;
        double[][] a = new double[n][n + 1];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                a[i][j] = powers[i + j];
            }
            a[i][n] = values[i];
        }
        double[] c = new double[n];
        for (int i = 0; i < n; i++) {
            int pivot = i;
            for (int r = i + 1; r < n; r++) {
                pivot = Math.abs(a[r][i]) > Math.abs(a[pivot][i]) ? r : pivot;
            }
            double[] row = a[pivot];
            a[pivot] = a[i];
            a[i] = row;
            if (Math.abs(row[i]) < 1e-9 * (1 + powers[0])) {
                return i == 0 ? c : lower();
            }
            for (int r = i + 1; r < n; r++) {
                double factor = a[r][i] / row[i];
                for (int k = i; k <= n; k++) {
                    a[r][k] -= factor * row[k];
                }
            }
        }
        for (int i = n - 1; i >= 0; i--) {
            double sum = a[i][n];
            for (int k = i + 1; k < n; k++) {
                sum -= a[i][k] * c[k];
            }
            c[i] = sum / a[i][i];
        }
        return c;
    }

    /** The same with one coefficient less. */
    private double[] lower() {
        LeastSquares simpler = new LeastSquares(degree - 1);
        System.arraycopy(powers, 0, simpler.powers, 0, simpler.powers.length);
        System.arraycopy(values, 0, simpler.values, 0, simpler.values.length);
        return java.util.Arrays.copyOf(simpler.solve(), degree + 1);
    }

    static double at(double[] c, double x) {
        double value = 0;
        for (int k = c.length - 1; k >= 0; k--) {
            value = value * x + c[k];
        }
        return value;
    }
}
