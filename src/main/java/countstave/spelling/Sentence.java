package countstave.spelling;

import countstave.plain.Phrases;

/** What is wrong, in a musician's words of any language. */
@FunctionalInterface
public interface Sentence {

    String in(Phrases phrases);
}
