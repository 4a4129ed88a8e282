package countstave.spelling;

import java.util.Locale;

/** What a rule looks at: two different people can mend it. */
public enum About {
    /** What a reader of the page sees, or fails to see: whoever writes the music can mend it. */
    NOTATION,
    /** What the page does not show: the program that wrote the file contradicts itself; nobody needs to write anything else. */
    FILE;

    /** {@code notation}, {@code file}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
