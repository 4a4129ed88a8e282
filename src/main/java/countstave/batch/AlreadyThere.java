package countstave.batch;

/** Thrown by the work on a score that turns out to need none, as all its outputs are there and are to be let be. */
public final class AlreadyThere extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** What is said of it where it is the only score. */
    static final String SAID = "what would be written is there already, so it is let be; --force replaces it";
}
