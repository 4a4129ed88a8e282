package countstave.practice;

/** How much of the count is still said aloud; the rest is felt. In the order in which they are practised. */
public enum Stage {
    ALL("all", "everything is said"),
    BEATS_AND_PLAYED("beats-and-played", "the beats and what is played are said"),
    HALF("half", "half the grid is said"),
    BEATS("beats", "only the beats are said"),
    STRONG_BEATS("strong-beats", "only the first beat is said, and the middle one of a bar of four or more"),
    NONE("none", "nothing is said: click only");

    private final String id;
    private final String title;

    Stage(String id, String title) {
        this.id = id;
        this.title = title;
    }

    /** Its name in files and options. */
    public String id() {
        return id;
    }

    /** One line for the player. */
    public String title() {
        return title;
    }
}
