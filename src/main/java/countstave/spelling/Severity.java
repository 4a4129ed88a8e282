package countstave.spelling;

/** How bad a finding is. */
public enum Severity {
    /** What is written contradicts itself: whoever plays it cannot know what is meant. */
    ERROR,
    /** The rhythm is right but hard to read. */
    WARNING,
    /** The rhythm could be written more simply. */
    HINT;

    /** {@code error}, {@code warning}, {@code hint}. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }

    /** Whether this is as bad as {@code least}, or worse. */
    public boolean isAtLeast(Severity least) {
        return ordinal() <= least.ordinal();
    }

    /** The severity with this word, or null. */
    public static Severity ofWord(String word) {
        for (Severity severity : values()) {
            if (severity.word().equals(word)) {
                return severity;
            }
        }
        return null;
    }
}
