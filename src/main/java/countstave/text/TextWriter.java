package countstave.text;

import countstave.count.BarCounts;
import countstave.count.ChangeMark;
import countstave.count.ChangeWords;
import countstave.count.PartCounts;
import countstave.grid.Segment;
import countstave.plain.SafeText;
import countstave.score.BarTimeline;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import java.io.IOException;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Prints counts for reading on a terminal: what is played, and under it what is said, bar by bar.
 *
 * <p>It writes as it goes and keeps nothing of a part but the bar before. Texts from the score are made safe first.
 */
public final class TextWriter {

    private final Appendable out;
    private final TextOptions options;

    /** @param out where the text goes, lines ended by {@code \n}; not closed here */
    public TextWriter(Appendable out, TextOptions options) {
        this.out = out;
        this.options = options;
    }

    /** Prints one part with its heading. */
    public void part(PartCounts counts) throws IOException {
        List<NoteRow> rows = NoteRow.of(counts.timeline().bars());
        heading(counts, rows);
        ChangeWords words = new ChangeWords(counts.plan().options());
        Tempo tempo = null;
        for (BarCounts bar : counts.bars()) {
            BarTimeline timeline = bar.timeline();
            List<ChangeMark> marks = words.next(bar.plan());
            boolean tempoNew = tempo != null && !tempo.equals(timeline.tempo());
            line("");
            wrapped(BarHeading.of(bar.plan(), options), options.dot(), BarHeading.rates(bar.plan(), options));
            BarCells cells = new BarCells(bar, counts.system(), rows, marks, tempoNew, options);
            for (String line : new BarLines(cells.cells(), cells.labels(), options).lines()) {
                line(line);
            }
            List<TempoChange> tempi = timeline.tempi();
            tempo = tempi.get(tempi.size() - 1).tempo();
        }
    }

    private void heading(PartCounts counts, List<NoteRow> rows) throws IOException {
        wrapped(SafeText.of(counts.part().name()));
        StringBuilder second = new StringBuilder(options.phrase("counted-in", SafeText.of(counts.system().title(options.names().phrases()))));
        if (!counts.bars().isEmpty()) {
            second.append(options.dot()).append(options.names().tempo(counts.bars().get(0).timeline().tempo()));
            if (counts.timeline().tempoAssumed()) {
                second.append(" (").append(options.phrase("tempo.assumed")).append(')');
            }
        }
        if (rows.size() > 1) {
            second.append(options.dot()).append(named(rows));
        }
        wrapped(second.toString());
        String key = SafeText.of(counts.key(options.names().phrases()));
        if (!options.symbols()) {
            key = key.replace('\u201c', '"').replace('\u201d', '"').replace('\u201e', '"');
        }
        String signs = options.phrase("text.signs", options.played(), options.silent())
                + (hasFelt(counts) ? "   " + options.phrase("text.signs.felt", options.felt(), options.played()) : "");
        wrapped(signs, options.dot(), key);
    }

    private static boolean hasFelt(PartCounts counts) {
        for (BarCounts bar : counts.bars()) {
            for (Segment segment : bar.plan().segments()) {
                if (segment.hasFelt()) {
                    return true;
                }
            }
        }
        return false;
    }

    /** {@code rows: voices 1, 2}. */
    private String named(List<NoteRow> rows) {
        return options.phrase(rows.get(0).staff() > 0 ? "rows.staves" : "rows.voices",
                rows.stream().map(NoteRow::label).collect(Collectors.joining(", ")));
    }

    /** On one line where that fits, else the second part on a line of its own. */
    private void wrapped(String first, String between, String second) throws IOException {
        String whole = first + between + second;
        if (second.isEmpty() || CellWidth.of(whole) <= options.width()) {
            wrapped(second.isEmpty() ? first : whole);
            return;
        }
        wrapped(first);
        wrapped("  " + second);
    }

    /** Breaks a heading before the word that would run over the edge; what goes on is indented. */
    private void wrapped(String text) throws IOException {
        for (String line : Wrapping.of(text, options.width(), "  ")) {
            line(line);
        }
    }

    private void line(String text) throws IOException {
        out.append(text).append('\n');
    }
}
