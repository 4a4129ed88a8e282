package countstave.score;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A choice of parts, each by its id, its name, its number from 1 or a pattern of names; an empty choice means every part
 * with notes.
 *
 * <p>In a pattern {@code *} stands for any letters, {@code ?} for one; small and capital letters are the same. Commas stand
 * between alternatives: {@code Violin*,Viola}. A part that is called so with its comma or star goes before.
 *
 * @param wanted what was asked for
 * @param required whether each of them must be there; else those that fit are taken, and a score without any is told apart
 *     by a {@link NoPartException}
 */
public record PartChoice(List<String> wanted, boolean required) {

    public static final PartChoice ALL = new PartChoice(List.of(), true);

    /** More parts than these in an error line are not read any more. */
    private static final int MOST_TOLD = 12;

    /**
     * The chosen parts, in the order in which they were asked for; those of one pattern in the order of the score.
     *
     * @throws NoPartException if none fits and none is required
     * @throws ScoreException if a required part does not exist, or the score has no part with notes
     */
    public List<Part> of(Score score) {
        if (wanted.isEmpty()) {
            List<Part> playing = score.parts().stream().filter(Part::hasNotes).toList();
            if (playing.isEmpty()) {
                throw new ScoreException("no part has a note in it: there is nothing to count");
            }
            return playing;
        }
        List<Part> chosen = new ArrayList<>();
        for (String words : wanted) {
            List<Part> fitting = fitting(score, words.strip());
            if (fitting.isEmpty() && required) {
                throw new ScoreException("there is no part '" + words.strip() + "'; the parts are " + known(score));
            }
            add(fitting, chosen);
        }
        if (chosen.isEmpty()) {
            throw new NoPartException("there is no part '" + String.join("' or '", wanted) + "', so it is left out; its parts"
                    + " are " + known(score));
        }
        return List.copyOf(chosen);
    }

    private static List<Part> fitting(Score score, String words) {
        List<Part> whole = called(score, words);
        if (!whole.isEmpty()) {
            return whole;
        }
        List<Part> fitting = new ArrayList<>();
        for (String alternative : words.split(",")) {
            String word = alternative.strip();
            List<Part> called = called(score, word);
            add(called.isEmpty() && isPattern(word) ? like(score, pattern(word)) : called, fitting);
        }
        return fitting;
    }

    /** By identity: a part is as long as the score, and comparing two would read all of it. */
    private static void add(List<Part> parts, List<Part> into) {
        for (Part part : parts) {
            if (into.stream().noneMatch(other -> other == part)) {
                into.add(part);
            }
        }
    }

    /** By id, name or number, in this order; two parts may have one name. */
    private static List<Part> called(Score score, String word) {
        List<Part> parts = score.parts().stream().filter(part -> part.id().equals(word)).toList();
        if (parts.isEmpty()) {
            parts = score.parts().stream().filter(part -> part.name().strip().equalsIgnoreCase(word)).toList();
        }
        if (parts.isEmpty() && word.matches("\\d{1,6}")) {
            int number = Integer.parseInt(word);
            parts = number >= 1 && number <= score.parts().size() ? List.of(score.parts().get(number - 1)) : parts;
        }
        return parts;
    }

    private static boolean isPattern(String word) {
        return word.indexOf('*') >= 0 || word.indexOf('?') >= 0;
    }

    private static List<Part> like(Score score, Pattern pattern) {
        return score.parts().stream().filter(part -> pattern.matcher(part.name().strip()).matches()
                || pattern.matcher(part.id()).matches()).toList();
    }

    private static Pattern pattern(String word) {
        // stars in a row are one star, but would be tried in all their ways
        String regex = word.replaceAll("\\*+", "*").codePoints().mapToObj(c -> c == '*' ? ".*" : c == '?' ? "."
                : Pattern.quote(Character.toString(c))).collect(Collectors.joining());
        return Pattern.compile(regex, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE | Pattern.DOTALL);
    }

    private static String known(Score score) {
        StringBuilder known = new StringBuilder();
        for (int i = 0; i < score.parts().size() && i < MOST_TOLD; i++) {
            known.append(i == 0 ? "" : ", ").append(i + 1).append(" = ").append(score.parts().get(i).name());
        }
        return known + (score.parts().size() > MOST_TOLD ? " ..." : "");
    }

    @Override
    public String toString() {
        return String.join(", ", wanted);
    }
}
