package countstave.time;

/** An exact time that no longer fits in 64-bit fractions: the score's durations are absurd. */
public final class TimeOverflowException extends ArithmeticException {

    private static final long serialVersionUID = 1L;

    public TimeOverflowException() {
        super("a time is too large or too finely divided to be kept exactly");
    }
}
