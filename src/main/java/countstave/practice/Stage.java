package countstave.practice;

/** How much of the count is still said aloud; the rest is felt. In the order in which they are practised. */
public enum Stage {
    ALL("all", "all", "everything is said"),
    BEATS_AND_PLAYED("beats-and-played", "played", "the beats and what is played are said"),
    HALF("half", "half", "half the grid is said"),
    BEATS("beats", "beats", "only the beats are said"),
    STRONG_BEATS("strong-beats", "strong", "only the first beat is said, and the middle one of a bar of four or more"),
    NONE("none", "click", "nothing is said: click only");

    private final String id;
    private final String label;
    private final String title;

    Stage(String id, String label, String title) {
        this.id = id;
        this.label = label;
        this.title = title;
    }

    /** Its name in files and options. */
    public String id() {
        return id;
    }

    /** One word for the player. */
    public String label() {
        return label;
    }

    /** One line for the player. */
    public String title() {
        return title;
    }
}
