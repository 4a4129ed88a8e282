package countstave.grid;

/** What the cost of a plan is made of, for whoever asks why. */
public enum Term {
    /** Words that no note uses. */
    UNPLAYED,
    /** Changes, for how far they go and where they stand. */
    CHANGES,
    /** A faster count taken up again that was just left. */
    FLICKER,
    /** Words that come too fast, or so slowly that time is lost between them. */
    SPEED,
    /** Divisions that few people drill. */
    RARE,
    /** Beats that are not said. */
    HIDDEN,
    /** Notes that are felt between the words. */
    FELT
}
