package countstave.practice;

import countstave.plain.Phrases;
import java.util.List;
import java.util.stream.Stream;

/** What stands wherever somebody is asked to breathe, listen or repeat. General care, no medical advice. */
public final class Cautions {

    private Cautions() {
    }

    /** Of breath, of sound, of repeating. */
    public static List<String> in(Phrases phrases) {
        return Stream.of("caution.breath", "caution.sound", "caution.repeating").map(phrases::text).toList();
    }

    public static String ofSound(Phrases phrases) {
        return phrases.text("caution.sound");
    }
}
