package countstave.score;

import countstave.time.Duration;
import java.util.List;

/**
 * A time signature.
 *
 * @param components one for most meters; several for signatures such as 2/4+3/8; empty for senza misura
 * @param symbol how it is drawn
 */
public record Meter(List<Component> components, Symbol symbol) {

    /** {@code numbers}: the terms of the upper number ({@code [3, 2, 2]} for 3+2+2/8); {@code unit}: the lower one. */
    public record Component(List<Integer> numbers, int unit) {

        public int sum() {
            int sum = 0;
            for (int number : numbers) {
                sum += number;
            }
            return sum;
        }

        public boolean isAdditive() {
            return numbers.size() > 1;
        }

        public Duration length() {
            return Duration.of(sum(), unit);
        }

        @Override
        public String toString() {
            return joined(numbers) + "/" + unit;
        }

        // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
        @Override
        public boolean equals(Object other) {
            return other instanceof Component that && numbers.equals(that.numbers) && unit == that.unit;
        }

        @Override
        public int hashCode() {
            return 31 * numbers.hashCode() + unit;
        }
    }

    /**
     * COMMON and CUT are C and ¢; SINGLE_NUMBER shows the upper number only; NOTE and DOTTED_NOTE show a note below; OPEN
     * is the X that may stand for senza misura.
     */
    public enum Symbol { NORMAL, COMMON, CUT, SINGLE_NUMBER, NOTE, DOTTED_NOTE, HIDDEN, OPEN }

    public static final Meter SENZA_MISURA = new Meter(List.of(), Symbol.NORMAL);

    public static Meter of(int beats, int unit) {
        return new Meter(List.of(new Component(List.of(beats), unit)), Symbol.NORMAL);
    }

    public boolean isSenzaMisura() {
        return components.isEmpty();
    }

    /** Length of a full bar; zero for senza misura. */
    public Duration length() {
        Duration sum = Duration.ZERO;
        for (Component component : components) {
            sum = sum.plus(component.length());
        }
        return sum;
    }

    /** {@code 4/4}, {@code 3+2+2/8}, {@code 2/4+3/8}, {@code senza misura}. */
    @Override
    public String toString() {
        return isSenzaMisura() ? "senza misura" : joined(components);
    }

    private static String joined(List<?> terms) {
        StringBuilder text = new StringBuilder();
        for (Object term : terms) {
            text.append(text.isEmpty() ? "" : "+").append(term);
        }
        return text.toString();
    }
}
