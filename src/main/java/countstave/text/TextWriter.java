package countstave.text;

import countstave.count.BarCounts;
import countstave.count.ChangeMark;
import countstave.count.ChangeWords;
import countstave.count.NoteAmount;
import countstave.count.PartCounts;
import countstave.count.UnitName;
import countstave.grid.BarPlan;
import countstave.grid.Segment;
import countstave.score.Bar;
import countstave.score.BarStyle;
import countstave.score.BarTimeline;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Prints counts for reading on a terminal: what is played, and under it what is said, bar by bar.
 *
 * <p>It writes as it goes and keeps nothing of a part but the bar before. Texts from the score are made safe first.
 */
public final class TextWriter {

    /** More names than these in one bar's heading are not read any more. */
    private static final int MOST_NAMES = 3;

    private final Appendable out;
    private final TextOptions options;

    /** @param out where the text goes, lines ended by {@code \n}; not closed here */
    public TextWriter(Appendable out, TextOptions options) {
        this.out = out;
        this.options = options;
    }

    /** Prints one part with its heading. */
    public void part(PartCounts counts) throws IOException {
        heading(counts);
        ChangeWords words = new ChangeWords();
        Tempo tempo = null;
        for (BarCounts bar : counts.bars()) {
            BarTimeline timeline = bar.plan().timeline();
            List<ChangeMark> marks = words.next(bar.plan());
            boolean tempoNew = tempo != null && !tempo.equals(timeline.tempo());
            line("");
            wrapped(barHeading(bar.plan()));
            List<Cell> cells = new BarCells(bar, counts.system(), marks, tempoNew, options).cells();
            for (String line : new BarLines(cells, options).lines()) {
                line(line);
            }
            List<TempoChange> tempi = timeline.tempi();
            tempo = tempi.get(tempi.size() - 1).tempo();
        }
    }

    private void heading(PartCounts counts) throws IOException {
        wrapped(SafeText.of(counts.plan().timeline().part().name()));
        StringBuilder second = new StringBuilder("counted in ").append(SafeText.of(counts.system().title()));
        if (!counts.bars().isEmpty()) {
            second.append(options.dot()).append(options.names().tempo(counts.bars().get(0).plan().timeline().tempo()));
            if (counts.plan().timeline().tempoAssumed()) {
                second.append(" (assumed: the score gives no tempo)");
            }
        }
        wrapped(second.toString());
        String key = SafeText.of(counts.key());
        if (!options.symbols()) {
            key = key.replace('\u201c', '"').replace('\u201d', '"');
        }
        wrapped(options.played() + " played   " + options.silent() + " not played   ( ) said but not played"
                + (key.isEmpty() ? "" : options.dot() + key));
    }

    private String barHeading(BarPlan plan) {
        Bar bar = plan.timeline().bar();
        StringBuilder text = new StringBuilder("bar ").append(SafeText.of(bar.number())).append("   ").append(bar.meter());
        if (bar.phase().isPositive()) {
            text.append(bar.index() == 0 ? " (pickup)" : " (second part of a bar)");
        }
        BarStyle style = bar.style();
        if (style.runNumber() > 0) {
            text.append("   ").append(switch (style.kind()) {
                case MULTI_REST -> "rest, bar " + style.runNumber() + " of " + Math.max(style.span(), style.runNumber());
                case NONE -> "rest, bar " + style.runNumber();
                case SLASH -> "slashes, bar " + style.runNumber();
                default -> "repeat, bar " + style.runNumber();
            });
        }
        String names = String.join(", ", unitNames(plan));
        if (!names.isEmpty()) {
            double fastest = plan.segments().stream().mapToDouble(Segment::rate).max().orElse(0);
            long tenths = Math.round(fastest * 10);
            text.append("   ").append(names).append(options.dot())
                    .append(plan.segments().size() > 1 ? "up to " : "").append(tenths / 10).append('.').append(tenths % 10)
                    .append(" a second");
        }
        return text.toString();
    }

    private List<String> unitNames(BarPlan plan) {
        List<String> names = new ArrayList<>();
        for (Segment segment : plan.segments()) {
            String name = name(plan.timeline(), segment);
            if (!names.isEmpty() && names.get(names.size() - 1).equals(name)) {
                continue;
            }
            if (names.size() == MOST_NAMES) {
                names.add(options.symbols() ? "\u2026" : "...");
                break;
            }
            names.add(name);
        }
        return names;
    }

    private String name(BarTimeline bar, Segment segment) {
        if (!segment.isSpan()) {
            return UnitName.of(segment.unit(), bar.beatAt(segment.start()).length(), options.names());
        }
        NoteAmount over = NoteAmount.of(segment.end().minus(segment.start()), bar.beatAt(segment.start()).length());
        return new ChangeMark(ChangeMark.Kind.FIRST, segment.start(), true, segment.positions(), over, null, 1)
                .what(options.names());
    }

    /** Breaks a heading before the word that would run over the edge; what goes on is indented. */
    private void wrapped(String text) throws IOException {
        if (CellWidth.of(text) <= options.width()) {
            line(text);
            return;
        }
        StringBuilder line = new StringBuilder();
        int width = 0;
        for (String word : text.split("(?<=[^ ])(?= )")) {
            int more = CellWidth.of(word);
            if (width > 0 && width + more > options.width()) {
                line(line.toString());
                line.setLength(0);
                width = 2;
                word = "  " + word.strip();
                more = CellWidth.of(word) - 2;
            }
            line.append(word);
            width += more;
        }
        line(line.toString());
    }

    private void line(String text) throws IOException {
        out.append(text).append('\n');
    }
}
