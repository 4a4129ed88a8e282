package countstave.score;

/** A score that cannot be read or counted: its message is the one line the user sees, without the file's name. */
public sealed class ScoreException extends RuntimeException permits NoPartException {

    private static final long serialVersionUID = 1L;

    /** @param message what is wrong (with part and bar where known) and what to do */
    public ScoreException(String message) {
        super(message);
    }

    public ScoreException(String message, Throwable cause) {
        super(message, cause);
    }
}
