package countstave.listen;

/** What early and late are measured against. */
public enum Reference {
    /** A line through all strokes: on the average nobody is early or late to himself. */
    OWN_BEAT("own-beat", "the player's own steady beat"),
    /** The clicks of the guide track that was played to. */
    CLICK("click", "the click"),
    /** The quarters that a MIDI file counts. */
    FILE_BEAT("file-beat", "the beat of the MIDI file");

    private final String id;
    private final String title;

    Reference(String id, String title) {
        this.id = id;
        this.title = title;
    }

    /** Its name for programs. */
    public String id() {
        return id;
    }

    /** Its name for the player. */
    public String title() {
        return title;
    }
}
