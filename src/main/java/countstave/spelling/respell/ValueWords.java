package countstave.spelling.respell;

import countstave.plain.Phrases;
import countstave.score.NoteValue;
import java.util.List;
import java.util.stream.Collectors;

/** Note values in words: {@code dotted quarter tied to 16th}, {@code 3:2 (eighth, eighth, eighth)}. */
public final class ValueWords {

    private ValueWords() {
    }

    /** A row of items as one would read it out. */
    public static String of(List<Item> items, Phrases phrases) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < items.size(); i++) {
            text.append(of(items.get(i), phrases));
            if (i + 1 < items.size()) {
                text.append(endsTied(items.get(i)) ? " " + phrases.text("value.tied-to") + " " : ", ");
            }
        }
        if (!items.isEmpty() && endsTied(items.get(items.size() - 1))) {
            text.append(" (").append(phrases.text("value.tied-on")).append(')');
        }
        return text.toString();
    }

    private static String of(Item item, Phrases phrases) {
        if (item instanceof Group group) {
            return group.ratio() + " (" + of(withoutLastTie(group.items()), phrases) + ")";
        }
        Symbol symbol = (Symbol) item;
        return symbol.rest() ? rest(symbol.value(), symbol.dots(), phrases) : value(symbol.value(), symbol.dots(), phrases);
    }

    /** {@code quarter}, {@code dotted 16th}, {@code double-dotted half}. */
    public static String value(NoteValue value, int dots, Phrases phrases) {
        return dotted(phrases.text("length." + value.xmlName()), dots, phrases);
    }

    /** {@code quarter rest}, {@code dotted eighth rest}. */
    public static String rest(NoteValue value, int dots, Phrases phrases) {
        return dotted(phrases.text("length." + value.xmlName() + ".rest"), dots, phrases);
    }

    private static String dotted(String name, int dots, Phrases phrases) {
        return switch (dots) {
            case 0 -> name;
            case 1 -> phrases.text("value.dotted", name);
            case 2 -> phrases.text("value.dotted.twice", name);
            default -> phrases.text("value.dotted.more", String.valueOf(dots), name);
        };
    }

    /** Several of a value: {@code quarters}, {@code 16ths}, {@code halves}. */
    public static String plural(NoteValue value, Phrases phrases) {
        return phrases.text("length." + value.xmlName() + ".many");
    }

    private static boolean endsTied(Item item) {
        if (item instanceof Group group) {
            return endsTied(group.items().get(group.items().size() - 1));
        }
        return ((Symbol) item).tied();
    }

    private static List<Item> withoutLastTie(List<Item> items) {
        Item last = items.get(items.size() - 1);
        if (!(last instanceof Symbol s) || !s.tied()) {
            return items;
        }
        Symbol untied = new Symbol(s.start(), s.length(), s.value(), s.dots(), s.rest(), false);
        return java.util.stream.Stream.concat(items.stream().limit(items.size() - 1), java.util.stream.Stream.of(untied))
                .collect(Collectors.toList());
    }
}
