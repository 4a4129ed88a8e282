package countstave.listen;

/** What early and late are measured against. */
public enum Reference {
    /** A line through all strokes: on the average nobody is early or late to himself. */
    OWN_BEAT("own-beat"),
    /** The clicks of the guide track that was played to. */
    CLICK("click"),
    /** The quarters that a MIDI file counts. */
    FILE_BEAT("file-beat");

    private final String id;

    Reference(String id) {
        this.id = id;
    }

    /** Its name for programs. */
    public String id() {
        return id;
    }
}
