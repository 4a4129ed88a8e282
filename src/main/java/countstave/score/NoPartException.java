package countstave.score;

/** A score that has none of the parts that are asked for, where only those that fit are asked for. */
public final class NoPartException extends ScoreException {

    private static final long serialVersionUID = 1L;

    public NoPartException(String message) {
        super(message);
    }
}
