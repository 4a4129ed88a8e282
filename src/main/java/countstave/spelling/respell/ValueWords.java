package countstave.spelling.respell;

import countstave.score.NoteValue;
import java.util.List;
import java.util.stream.Collectors;

/** Note values in words: {@code dotted quarter tied to 16th}, {@code 3:2 (eighth, eighth, eighth)}. */
public final class ValueWords {

    private ValueWords() {
    }

    /** A row of items as one would read it out. */
    public static String of(List<Item> items) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < items.size(); i++) {
            text.append(of(items.get(i)));
            if (i + 1 < items.size()) {
                text.append(endsTied(items.get(i)) ? " tied to " : ", ");
            }
        }
        if (!items.isEmpty() && endsTied(items.get(items.size() - 1))) {
            text.append(" (tied on)");
        }
        return text.toString();
    }

    private static String of(Item item) {
        if (item instanceof Group group) {
            return group.ratio() + " (" + of(withoutLastTie(group.items())) + ")";
        }
        Symbol symbol = (Symbol) item;
        return value(symbol.value(), symbol.dots()) + (symbol.rest() ? " rest" : "");
    }

    /** {@code quarter}, {@code dotted 16th}, {@code double-dotted half}. */
    public static String value(NoteValue value, int dots) {
        String prefix = switch (dots) {
            case 0 -> "";
            case 1 -> "dotted ";
            case 2 -> "double-dotted ";
            default -> dots + "-dotted ";
        };
        return prefix + value.xmlName();
    }

    /** Several of a value: {@code quarters}, {@code 16ths}, {@code halves}. */
    public static String plural(NoteValue value) {
        return value == NoteValue.HALF ? "halves" : value.xmlName() + "s";
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
