package countstave.spelling;

import countstave.plain.Phrases;
import countstave.spelling.respell.Item;
import countstave.spelling.respell.ValueWords;
import countstave.time.Offset;
import java.util.List;

/**
 * What to write instead. Every attack stays exactly where it is.
 *
 * @param from start of the stretch to be written anew, from the bar's start
 * @param to its end
 * @param items what to write there
 */
public record Suggestion(Offset from, Offset to, List<Item> items) {

    /** As one would read it out: {@code quarter tied to eighth}. */
    public String words(Phrases phrases) {
        return ValueWords.of(items, phrases);
    }
}
