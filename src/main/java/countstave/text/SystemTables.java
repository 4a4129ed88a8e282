package countstave.text;

import countstave.count.AndWords;
import countstave.count.CountingSystem;
import countstave.count.Feel;
import countstave.count.Row;
import countstave.count.RowKey;
import countstave.plain.SafeText;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Prints counting systems as tables: what is said in a beat of so many parts, who says so, and how sure it is. */
public final class SystemTables {

    /** Rows are shown up to this division even where the system's rule makes them. */
    private static final int SHOWN = 16;

    private static final int NAME_COLUMNS = 17;

    /**
     * One line of a system's table.
     *
     * @param key which beats
     * @param words what is said
     * @param byRule whether the rule beyond the rows made it
     * @param source where it comes from, empty where the system's own source holds
     * @param uncertain why it is not certain, or empty
     */
    public record Line(RowKey key, List<String> words, boolean byRule, String source, String uncertain) {

        /** {@code 6}, {@code 6 in a dotted beat}, {@code 3 in a group of 5/8, 7/8}. */
        public String parts() {
            Feel feel = key.feel();
            return key.parts() + (feel == null ? "" : switch (feel) {
                case SIMPLE -> " in a plain beat";
                case COMPOUND -> " in a dotted beat";
                case ASYMMETRIC -> " in a group of 5/8, 7/8 \u2026";
            });
        }
    }

    private final Appendable out;
    private final TextOptions options;

    public SystemTables(Appendable out, TextOptions options) {
        this.out = out;
        this.options = options;
    }

    /** The rows of a system as they are shown: all that are given, and the rule's up to sixteen parts. */
    public static List<Line> lines(CountingSystem system) {
        List<Line> lines = new ArrayList<>();
        int last = SHOWN;
        for (RowKey key : system.rows().keySet()) {
            last = Math.max(last, key.feel() == Feel.ASYMMETRIC ? 0 : key.parts());
        }
        for (int parts = 1; parts <= last; parts++) {
            RowKey plain = new RowKey(parts, null);
            if (system.rows().containsKey(plain)) {
                lines.add(line(system, plain, system.rows().get(plain)));
            } else {
                Row row = system.row(parts, Feel.SIMPLE);
                boolean given = system.rows().containsKey(new RowKey(parts, Feel.SIMPLE));
                CountingSystem.Note note = system.note(parts, Feel.SIMPLE);
                lines.add(new Line(plain, row.words(), !given, note.source(), note.uncertain()));
            }
            RowKey compound = new RowKey(parts, Feel.COMPOUND);
            if (system.rows().containsKey(compound)) {
                lines.add(line(system, compound, system.rows().get(compound)));
            } else if (!system.row(parts, Feel.COMPOUND).words().equals(system.row(parts, Feel.SIMPLE).words())) {
                CountingSystem.Note note = system.note(parts, Feel.COMPOUND);
                lines.add(new Line(compound, system.row(parts, Feel.COMPOUND).words(), true, note.source(), note.uncertain()));
            }
        }
        system.rows().forEach((key, row) -> {
            if (key.feel() == Feel.ASYMMETRIC) {
                lines.add(line(system, key, row));
            }
        });
        return lines;
    }

    private static Line line(CountingSystem system, RowKey key, Row row) {
        return new Line(key, row.words(), false, system.note(key).source(), system.note(key).uncertain());
    }

    /** Every system that comes with countstave on a line, and the languages of "and". */
    public void list() throws IOException {
        line("Counting systems, for --system:");
        for (String name : CountingSystem.names()) {
            CountingSystem system = CountingSystem.named(name);
            line("  " + padded(name, NAME_COLUMNS) + SafeText.of(system.title()));
        }
        line("");
        line("Languages, for --and (or any single word of your own):");
        for (AndWords.Language language : AndWords.languages()) {
            line("  " + padded(language.code(), 4) + padded(language.name(), NAME_COLUMNS - 4)
                    + padded("1 " + String.join(" ", language.fourths()), 12)
                    + "1 " + String.join(" ", language.thirds()) + (language.uncertain().isEmpty() ? "" : "  (?)"));
        }
        line("");
        wrapped("", "'countstave systems NAME' shows what a system says, with its sources; (?) marks what is not certain.");
    }

    /** One system with its table, its sources and its doubts. */
    public void show(CountingSystem system) throws IOException {
        line(SafeText.of(system.name()) + options.dot() + SafeText.of(system.title()));
        paragraph("", system.about());
        line("");
        line("  a beat of   is said" + (usesNumber(system) ? "   (N: the number of the beat)" : ""));
        List<Line> lines = lines(system);
        for (Line line : lines) {
            String flag = line.uncertain().isEmpty() ? "" : " (?)";
            String words = SafeText.of(String.join(" ", line.words()));
            String where = line.key().feel() == null ? "" : "   " + line.parts().substring(line.parts().indexOf(' ') + 1);
            line("  " + padded(line.key().parts() + flag, 9) + "   " + words + (line.byRule() ? "   by rule" : "") + where);
        }
        line("");
        if (!system.fillers().isEmpty()) {
            line("  between the words of coarser counts: " + SafeText.of(String.join(", then ", system.fillers())));
        }
        line("  in 5/8, 7/8 " + (options.symbols() ? "\u2026" : "...") + ": " + asymmetric(system));
        line("  a tuplet counted through, of five: " + SafeText.of(String.join(" ", system.spanRow(5, true).words())));
        paragraph("", system.key().isEmpty() ? "" : system.key() + ".");
        line("");
        paragraph("Source: ", system.source());
        paragraph("Left out: ", system.limits());
        paragraph("(?) ", system.uncertain());
        notes(system, lines);
    }

    private void notes(CountingSystem system, List<Line> lines) throws IOException {
        // a rule makes many lines; what is to be said of it is said once
        Map<CountingSystem.Note, Set<String>> rules = new LinkedHashMap<>();
        for (Line line : lines) {
            if (line.byRule()) {
                rules.computeIfAbsent(new CountingSystem.Note(line.source(), line.uncertain()), n -> new LinkedHashSet<>())
                        .add(Integer.toString(line.key().parts()));
            } else {
                note(line.parts(), line.source(), line.uncertain());
            }
        }
        for (Map.Entry<CountingSystem.Note, Set<String>> rule : rules.entrySet()) {
            note(String.join(", ", rule.getValue()) + " by rule", rule.getKey().source(), rule.getKey().uncertain());
        }
    }

    private void note(String what, String source, String uncertain) throws IOException {
        paragraph(what + ": ", source);
        paragraph("(?) " + what + ": ", uncertain);
    }

    /** What becomes of the units of an asymmetric meter, shown on 3 + 2. */
    private static String asymmetric(CountingSystem system) {
        return switch (system.asymmetric()) {
            case UNITS -> "every eighth is a numbered beat, 1 2 3 4 5";
            case RESTART -> "every eighth is numbered, from 1 in each group: 1 2 3 1 2";
            case GROUPS -> "each group is a beat, 3+2: " + said(system.groupRow(3, 1), 1) + " " + said(system.groupRow(2, 1), 2);
        };
    }

    private static String said(Row row, int number) {
        StringBuilder text = new StringBuilder();
        for (int k = 0; k < row.parts(); k++) {
            text.append(k == 0 ? "" : " ").append(SafeText.of(row.say(k, number)));
        }
        return text.toString();
    }

    private static boolean usesNumber(CountingSystem system) {
        return system.rows().values().stream().anyMatch(r -> r.words().contains(CountingSystem.NUMBER));
    }

    private static String padded(String text, int columns) {
        return text + " ".repeat(Math.max(1, columns - CellWidth.of(text)));
    }

    private void paragraph(String label, String text) throws IOException {
        if (!text.isEmpty()) {
            wrapped("", SafeText.of(label + text));
        }
    }

    private void wrapped(String indent, String text) throws IOException {
        StringBuilder line = new StringBuilder(indent);
        for (String word : text.split(" ")) {
            boolean first = line.length() == indent.length() || line.toString().isBlank();
            if (!first && CellWidth.of(line.toString()) + 1 + CellWidth.of(word) > options.width()) {
                line(line.toString());
                line.setLength(0);
                line.append(indent).append("  ").append(word);
            } else {
                line.append(first ? "" : " ").append(word);
            }
        }
        line(line.toString());
    }

    private void line(String text) throws IOException {
        out.append(text).append('\n');
    }
}
