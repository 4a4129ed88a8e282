package countstave.practice;

import countstave.plain.Phrases;

/** How much of the count is still said aloud; the rest is felt. In the order in which they are practised. */
public enum Stage {
    ALL("all"), BEATS_AND_PLAYED("beats-and-played"), HALF("half"), BEATS("beats"), STRONG_BEATS("strong-beats"), NONE("none");

    private final String id;

    Stage(String id) {
        this.id = id;
    }

    /** Its name in files and options. */
    public String id() {
        return id;
    }

    /** One word for the player. */
    public String label(Phrases phrases) {
        return phrases.text("stage." + id);
    }

    /** One line for the player. */
    public String title(Phrases phrases) {
        return phrases.text("stage." + id + ".title");
    }
}
