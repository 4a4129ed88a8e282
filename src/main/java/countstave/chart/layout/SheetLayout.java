package countstave.chart.layout;

import countstave.chart.ChartOptions;
import countstave.chart.engrave.BarEngraver;
import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.NoteNames;
import countstave.practice.Breath;
import countstave.practice.Cautions;
import countstave.practice.Figures;
import countstave.practice.Passage;
import countstave.practice.PassageNotes;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.practice.StageWords;
import countstave.practice.StepCount;
import countstave.score.Score;
import countstave.score.Tempo;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Lays a practice plan out on pages: for each passage, the hardest first, its tempo steps with boxes to tick and its
 * notation with the counts of every stage.
 */
public final class SheetLayout {

    private static final double HEADING = 2.6;
    private static final double WORDS = 1.8;
    private static final double PASSAGE_GAP = 3;
    private static final double LINE_GAP = 1.2;

    private final BarEngraver engraver;
    private final Measures measures = Measures.standard();
    private final ChartOptions options;
    private final List<String> notes = new ArrayList<>();
    private final List<Chart.Page> pages = new ArrayList<>();
    private final List<PageFrame> frames = new ArrayList<>();
    private final List<Boolean> firsts = new ArrayList<>();

    public SheetLayout(BarEngraver engraver, ChartOptions options) {
        this.engraver = engraver;
        this.options = options;
    }

    /**
     * @param plans one for each part, each from a new page
     * @param top how many passages a part are written out
     */
    public Chart layout(List<PracticePlan> plans, Score score, int top) {
        List<Chart.Bookmark> bookmarks = new ArrayList<>();
        for (PracticePlan plan : plans) {
            bookmarks.add(part(plan, score, top));
        }
        List<Chart.Page> whole = new ArrayList<>();
        for (int i = 0; i < pages.size(); i++) {
            List<Shape> shapes = new ArrayList<>(pages.get(i).shapes());
            shapes.addAll(frames.get(i).furniture(firsts.get(i), i + 1, pages.size()));
            whole.add(new Chart.Page(shapes.stream().map(this::printable).toList()));
        }
        return new Chart(new Chart.About("Practice: " + score.title(), score.composer(), "practice plan",
                options.language()), new Chart.Paper(options.spaceMm(), options.pageWidthMm(), options.pageHeightMm()),
                whole, bookmarks, List.copyOf(notes));
    }

    private Shape printable(Shape shape) {
        return shape instanceof Text t ? new Text(measures.text().printable(t.string(), t.style()), t.x(), t.y(),
                t.size(), t.style(), t.anchor(), t.role(), t.at()) : shape;
    }

    private Chart.Bookmark part(PracticePlan plan, Score score, int top) {
        String name = plan.counts().plan().timeline().part().name();
        String spoken = plan.counts().key();
        PageFrame frame = new PageFrame(options, measures, score.title(), score.composer(), name + ": practice plan",
                (spoken.isEmpty() ? "" : spoken + ". ") + "Bold: played. In parentheses: said, not played. A tick without"
                        + " a word: felt. " + (hasFelt(plan, top) ? "A dot: a note that is felt. " : "") + Breath.SIGN + " before a tick: breathe in there, and go on.");
        SheetPages sheet = new SheetPages(frame);
        for (String caution : Cautions.ALL) {
            sheet.add(words(caution, WORDS * 0.9, Text.Style.ITALIC, frame, true));
        }
        sheet.add(words("A box is ticked for a repeat without a mistake; go on when all boxes of a tempo are ticked.",
                WORDS, Text.Style.REGULAR, frame, false));
        List<Chart.Bookmark> marks = new ArrayList<>();
        for (Passage passage : plan.different().stream().limit(top).toList()) {
            passage(plan, passage, frame, sheet);
            marks.add(new Chart.Bookmark("Bars " + passage.stretch().numbers(), pages.size() + sheet.lastHeading(),
                    sheet.lastHeadingTop(), List.of()));
        }
        int firstPage = pages.size();
        for (List<Shape> shapes : sheet.finished()) {
            pages.add(new Chart.Page(shapes));
            frames.add(frame);
            firsts.add(pages.size() == firstPage + 1);
        }
        return new Chart.Bookmark(name, firstPage, frame.top, marks);
    }

    private static boolean hasFelt(PracticePlan plan, int top) {
        return plan.different().stream().limit(top).anyMatch(p -> p.counts().stream().anyMatch(StepCount::hasFelt));
    }

    private SheetBlock words(String text, double size, Text.Style style, PageFrame frame, boolean keepsWithNext) {
        Role role = size >= HEADING ? Role.SHEET_HEADING : Role.SHEET_TEXT;
        return SheetBlock.words(text, size, style, role, frame.width(), keepsWithNext, measures);
    }

    private void passage(PracticePlan plan, Passage passage, PageFrame frame, SheetPages sheet) {
        sheet.add(SheetBlock.gap(PASSAGE_GAP));
        sheet.heading(words(heading(plan, passage), HEADING, Text.Style.BOLD, frame, true));
        sheet.add(words(figures(passage), WORDS, Text.Style.REGULAR, frame, true));
        for (String note : PassageNotes.of(passage, plan.options().breath(), NoteNames.SYMBOLS)) {
            sheet.add(words(note, WORDS, Text.Style.REGULAR, frame, true));
        }
        sheet.add(SheetLadder.of(passage, frame.width(), measures));
        List<LineBreaker.Range> ranges = null;
        for (StepCount count : passage.counts()) {
            if (passage.counts().size() > 1) {
                sheet.add(words(count.title(NoteNames.SYMBOLS), WORDS, Text.Style.BOLD, frame, true));
            }
            ranges = stages(plan, passage, count, ranges, frame, sheet);
        }
    }

    /**
     * The stages of a count; of a further one only those at which something else is said.
     *
     * @param ranges where the lines break, or null for the first count: all stages break where its first one does, so that
     *     they can be compared
     * @return where the lines break
     */
    private List<LineBreaker.Range> stages(PracticePlan plan, Passage passage, StepCount count,
            List<LineBreaker.Range> ranges, PageFrame frame, SheetPages sheet) {
        StepCount before = count.number() == 1 ? null : passage.counts().get(count.number() - 2);
        List<LineBreaker.Range> breaks = ranges;
        boolean left = false;
        for (Stage stage : Stage.values()) {
            if (before != null && count.saysTheSame(before, stage)) {
                left = true;
                continue;
            }
            boolean drawn = stage != Stage.NONE;
            sheet.add(words("Stage " + (stage.ordinal() + 1) + ": " + stage.title(), WORDS, Text.Style.BOLD, frame,
                    drawn));
            if (drawn) {
                List<MeasuredBar> bars = new BarMeasurer(engraver, measures, options, true)
                        .measure(StageWords.of(plan, count, stage));
                if (breaks == null) {
                    breaks = LineBreaker.breakLines(bars, frame.width(), new boolean[bars.size()]);
                }
                // the stage without music is no more than a line of words: it stays below the one before it
                lines(bars, breaks, stage == Stage.STRONG_BEATS && before == null, frame, sheet);
            }
        }
        if (left) {
            sheet.add(words("The other stages as with count " + before.number() + ".", WORDS, Text.Style.REGULAR, frame, false));
        }
        return breaks;
    }

    /** A stage is read on one page, unless that would leave much of the page before it empty. */
    private void lines(List<MeasuredBar> bars, List<LineBreaker.Range> breaks, boolean staysWithNext, PageFrame frame,
            SheetPages sheet) {
        List<SheetBlock> lines = breaks.stream().map(range -> SheetBlock.music(line(bars, range, frame))).toList();
        boolean together = lines.stream().mapToDouble(SheetBlock::height).sum() < 0.5 * room(frame);
        SheetBlock.Keep inside = together ? SheetBlock.Keep.LOOSELY : SheetBlock.Keep.FREE;
        SheetBlock.Keep atEnd = staysWithNext ? SheetBlock.Keep.FIRMLY : SheetBlock.Keep.FREE;
        for (int i = 0; i < lines.size(); i++) {
            sheet.add(lines.get(i).kept(i == lines.size() - 1 ? atEnd : inside));
            sheet.add(SheetBlock.gap(LINE_GAP));
        }
    }

    private static String heading(PracticePlan plan, Passage passage) {
        StringBuilder heading = new StringBuilder(passage.rank() + ".  " + (passage.stretch().size() == 1 ? "Bar "
                : "Bars ") + passage.stretch().numbers());
        String separator = ", and alike: ";
        for (Passage other : plan.passages()) {
            if (other.sameAs() == passage.rank()) {
                heading.append(separator).append(other.stretch().numbers());
                separator = ", ";
            }
        }
        return heading.toString();
    }

    private static String figures(Passage passage) {
        Figures figures = passage.figures();
        String sayable = figures.sayable() == 0 ? "It cannot be said at any tempo." : "It can be said up to "
                + NoteNames.SYMBOLS.tempo(new Tempo(passage.written().unit(), BigDecimal.valueOf(figures.sayable()))) + ".";
        return String.format(Locale.ROOT, "Difficulty %.1f (changes a bar %.1f, fastest second %.1f syllables, rarity %d"
                + " of 4, distance %.1f). Written tempo %s. %s", figures.difficulty(), figures.changesPerBar(),
                figures.peak().toDouble(), figures.rarity(), figures.distance(),
                NoteNames.SYMBOLS.tempo(passage.written()), sayable);
    }

    private SystemBox line(List<MeasuredBar> bars, LineBreaker.Range range, PageFrame frame) {
        LineBreaker.Widths widths = LineBreaker.Widths.of(bars, range.from(), range.to());
        double factor = Math.min(1, frame.width() / (widths.fixed() + widths.least()));
        SystemBox system = new SystemBuilder(measures).build(bars, range, frame.width() / factor);
        return system.scaled(Math.min(factor, 0.6 * room(frame) / system.height()));
    }

    private static double room(PageFrame frame) {
        return frame.musicTop(true) - frame.musicBottom();
    }
}
