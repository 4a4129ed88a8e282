package countstave.text;

import countstave.plain.Phrases;
import countstave.spelling.Finding;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.function.BiPredicate;
import java.util.stream.Collectors;

/**
 * In which bars findings are, by their printed numbers: {@code bar 7}, {@code bars 3–5 and 9}. Where the bars lie too
 * scattered to be listed, from which to which: {@code bars 1–432}; of movements that begin anew at 1, in each.
 */
final class BarList {

    private static final int MOST = 3;

    private record Numbered(int index, String number) {

        /** Whether bars are numbered on from this one to a later one; what is no number is taken to be. */
        boolean leadsTo(Numbered later) {
            return !isNumber() || !later.isNumber() || Long.parseLong(number) <= Long.parseLong(later.number);
        }

        private boolean isNumber() {
            return number.matches("[0-9]{1,18}");
        }
    }

    private BarList() {
    }

    static String of(List<Finding> findings, Phrases phrases) {
        TreeMap<Integer, Numbered> bars = new TreeMap<>();
        findings.forEach(f -> bars.putIfAbsent(f.where().barIndex(),
                new Numbered(f.where().barIndex(), f.where().barNumber())));
        if (bars.size() == 1) {
            return phrases.text("in-bars", 1, bars.firstEntry().getValue().number());
        }
        List<String> runs = stretches(bars, (one, next) -> next.index() == one.index() + 1 && one.leadsTo(next));
        List<String> shown = runs.size() <= MOST ? runs : stretches(bars, Numbered::leadsTo);
        return shown.size() <= MOST ? phrases.text("in-bars", 2, joined(shown, phrases))
                : phrases.text("in-many-bars", String.valueOf(bars.size()));
    }

    /** {@code 3–5}, {@code 9}: neighbours that go together are one stretch. */
    private static List<String> stretches(TreeMap<Integer, Numbered> bars, BiPredicate<Numbered, Numbered> together) {
        List<List<Numbered>> stretches = new ArrayList<>();
        for (Numbered bar : bars.values()) {
            List<Numbered> last = stretches.isEmpty() ? List.of() : stretches.get(stretches.size() - 1);
            if (last.isEmpty() || !together.test(last.get(last.size() - 1), bar)) {
                stretches.add(last = new ArrayList<>());
            }
            last.add(bar);
        }
        return stretches.stream().map(s -> s.size() == 1 ? s.get(0).number()
                : s.get(0).number() + "–" + s.get(s.size() - 1).number()).collect(Collectors.toList());
    }

    private static String joined(List<String> parts, Phrases phrases) {
        int last = parts.size() - 1;
        return last == 0 ? parts.get(0)
                : phrases.text("and", String.join(", ", parts.subList(0, last)), parts.get(last));
    }
}
