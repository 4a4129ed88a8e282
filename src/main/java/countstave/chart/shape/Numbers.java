package countstave.chart.shape;

/** Writes numbers into drawings: at most three decimals, no exponent, the same on every machine. */
public final class Numbers {

    private Numbers() {
    }

    public static StringBuilder append(StringBuilder out, double value) {
        long thousandths = Math.round(value * 1000);
        if (thousandths < 0) {
            out.append('-');
            thousandths = -thousandths;
        }
        out.append(thousandths / 1000);
        int rest = (int) (thousandths % 1000);
        if (rest != 0) {
            out.append('.').append((char) ('0' + rest / 100));
            if (rest % 100 != 0) {
                out.append((char) ('0' + rest / 10 % 10));
                if (rest % 10 != 0) {
                    out.append((char) ('0' + rest % 10));
                }
            }
        }
        return out;
    }
}
