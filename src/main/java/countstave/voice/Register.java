package countstave.voice;

/** The voices of the bank. */
public enum Register {
    LOW, HIGH;

    /** Its name in options and files. */
    public String id() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
