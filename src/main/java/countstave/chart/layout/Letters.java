package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Letters that the text font does not have, as those of Chinese, Japanese and Korean: titles and names are set without them;
 * elsewhere a sign stands in their place, since what is sung or said would read wrong without. Both are told.
 */
final class Letters {

    private static final Set<Role> SET_WITHOUT = EnumSet.of(Role.TITLE, Role.COMPOSER, Role.PART_NAME);

    private final Measures measures;
    private final Set<Integer> leftOut = new TreeSet<>();
    private final Set<Integer> replaced = new TreeSet<>();

    Letters(Measures measures) {
        this.measures = measures;
    }

    /** The shape as it can be printed; nothing where no letter of it can. */
    Optional<Shape> printable(Shape shape) {
        if (!(shape instanceof Text text)) {
            return Optional.of(shape);
        }
        boolean without = SET_WITHOUT.contains(text.role());
        boolean lacks = false;
        StringBuilder kept = new StringBuilder();
        for (int c : text.string().codePoints().toArray()) {
            if (measures.text().has(c, text.style())) {
                kept.appendCodePoint(c);
            } else {
                lacks = true;
                (without ? leftOut : replaced).add(c);
            }
        }
        if (!lacks) {
            return Optional.of(text);
        }
        String words = without ? kept.toString().replaceAll("\\s+", " ").strip() : measures.text().printable(text.string(), text.style());
        return words.isEmpty() ? Optional.empty() : Optional.of(text.withString(words));
    }

    /** What is to be told. */
    List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (!leftOut.isEmpty()) {
            notes.add("the text font has no letter for " + shown(leftOut) + ": the title and the names are set without");
        }
        if (!replaced.isEmpty()) {
            notes.add("no sign in the text font, replaced by \uFFFD: " + shown(replaced));
        }
        return notes;
    }

    private static String shown(Set<Integer> letters) {
        return letters.stream().map(c -> new String(Character.toChars(c)) + String.format(Locale.ROOT, " (U+%04X)", c))
                .collect(Collectors.joining(", "));
    }
}
