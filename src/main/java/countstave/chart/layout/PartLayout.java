package countstave.chart.layout;

import countstave.chart.ChartOptions;
import countstave.chart.Contents;
import countstave.chart.engrave.BarEngraver;
import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Shape;
import countstave.count.PartCounts;
import countstave.grid.Segment;
import countstave.plain.Phrases;
import countstave.score.Direction;
import countstave.score.Score;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.StringJoiner;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;

/** One part on pages: measure bars, break lines, build lines, break pages, place them. */
final class PartLayout {

    /** A chart, one in which something is left to be written by hand, or the same with what belongs there. */
    enum Sheet {
        CHART("chart.heading"), WORKSHEET("chart.heading.worksheet"), ANSWERS("chart.heading.answers");

        private final String heading;

        Sheet(String heading) {
            this.heading = heading;
        }
    }

    /** A page is filled by spreading its lines only if it is at least this full. */
    private static final double SPREAD_FROM = 0.6;
    /** Syllables of 10 pt become 6 pt: smaller ones cannot be read on a stand. */
    private static final double SMALLEST = 0.6;
    /** Lines are spread by no more than this, in staff spaces. */
    private static final double MOST_SPREAD = 9;

    private final PartCounts counts;
    private final Sheet sheet;
    private final Contents.Blank blank;
    private final PageFrame frame;
    private final List<MeasuredBar> bars;
    private final List<SystemBox> systems = new ArrayList<>();
    private final List<String> notes;
    private final SystemBuilder builder;
    private final Measures measures;
    private final Phrases phrases;

    PartLayout(PartCounts counts, Sheet sheet, Score score, ChartOptions options, BarEngraver engraver,
            Measures measures, List<String> notes) {
        this.counts = counts;
        this.sheet = sheet;
        this.phrases = options.phrases();
        this.blank = sheet == Sheet.WORKSHEET ? options.contents().blank() : Contents.Blank.NOTHING;
        this.measures = measures;
        this.notes = notes;
        frame = new PageFrame(options, measures, score.title(), score.composer(), heading(), key());
        bars = new BarMeasurer(engraver, measures, options, false).measure(SharedSigns.in(counts, score));
        builder = new SystemBuilder(measures, new CountsBelow(measures, options.names(), Blanks.of(blank, options.spaceMm()))::add);
        for (LineBreaker.Range range : LineBreaker.breakLines(bars, frame.width(), sections())) {
            systems.addAll(fitted(range));
        }
    }

    String partName() {
        return counts.part().name();
    }

    private String heading() {
        return phrases.text(sheet.heading, partName());
    }

    /** How the words are spoken and how the page is read. */
    private String key() {
        if (blank == Contents.Blank.COUNTS) {
            return phrases.text("chart.key.blank", counts.system().title(phrases));
        }
        String spoken = counts.key(phrases);
        StringJoiner key = new StringJoiner(" ");
        key.add(counts.system().title(phrases) + (spoken.isEmpty() ? "" : "; " + spoken) + ".");
        key.add(phrases.text("chart.key.played")).add(phrases.text("chart.key.unplayed"));
        if (hasFelt()) {
            key.add(phrases.text("chart.key.felt"));
        }
        return key.add(phrases.text(blank == Contents.Blank.CHANGES ? "chart.key.write-changes" : "chart.key.changes")).toString();
    }

    private boolean hasFelt() {
        return counts.bars().stream().anyMatch(bar -> bar.plan().segments().stream().anyMatch(Segment::hasFelt));
    }

    private boolean[] sections() {
        boolean[] starts = new boolean[bars.size()];
        for (int i = 0; i < starts.length; i++) {
            starts[i] = bars.get(i).bar().directions().stream().anyMatch(d -> d.kind() == Direction.Kind.REHEARSAL);
        }
        return starts;
    }

    /** A line; if a single bar is wider than the page, it is reduced, or cut where it would become too small to read. */
    private List<SystemBox> fitted(LineBreaker.Range range) {
        LineBreaker.Widths widths = LineBreaker.Widths.of(bars, range.from(), range.to());
        double needed = widths.fixed() + widths.least();
        double factor = Math.min(1, frame.width() / needed);
        if (factor < SMALLEST) {
            BarSplitter splitter = new BarSplitter(builder.build(bars, range, needed), frame.width(), measures);
            List<Double> cuts = splitter.cuts();
            if (!cuts.isEmpty()) {
                DoubleUnaryOperator filling = splitter.filling(cuts);
                List<SystemBox> pieces = new BarSplitter(builder.buildAgain(bars, range, needed, filling), frame.width(), measures)
                        .pieces(cuts.stream().map(filling::applyAsDouble).toList());
                notes.add(TooWide.cut(partName(), bars.get(range.from()).counts().get(0), pieces.size()));
                return pieces.stream().map(p -> p.scaled(Math.min(1, height() / p.height()))).toList();
            }
        }
        if (factor < 1) {
            notes.add(TooWide.reduced(partName(), bars.get(range.from()).bar(), factor));
        }
        SystemBox system = builder.build(bars, range, frame.width() / factor);
        return List.of(system.scaled(Math.min(factor, height() / system.height())));
    }

    private double height() {
        return frame.musicTop(false) - frame.musicBottom();
    }

    /** Adds this part's pages and gives its bookmark. */
    Chart.Bookmark addPages(PageList pages) {
        double low = frame.musicBottom();
        List<Integer> perPage = PageBreaker.breakPages(systems.stream().map(SystemBox::height).toList(),
                Sizes.SYSTEM_GAP, frame.musicTop(true) - low, frame.musicTop(false) - low);
        int firstPage = pages.size();
        List<Chart.Bookmark> marks = new ArrayList<>();
        int next = 0;
        for (int i = 0; i < perPage.size(); i++) {
            List<SystemBox> on = systems.subList(next, next + perPage.get(i));
            next += perPage.get(i);
            pages.add(place(on, i == 0, i == perPage.size() - 1, pages.size(), marks), frame, i == 0);
        }
        if (perPage.isEmpty()) {
            pages.add(new Chart.Page(List.of()), frame, true);
        }
        return new Chart.Bookmark(heading(), firstPage, frame.top, marks);
    }

    private Chart.Page place(List<SystemBox> on, boolean first, boolean last, int page, List<Chart.Bookmark> marks) {
        double top = frame.musicTop(first);
        double room = top - frame.musicBottom();
        double used = on.stream().mapToDouble(SystemBox::height).sum() + Sizes.SYSTEM_GAP * (on.size() - 1);
        double spread = on.size() < 2 || used < SPREAD_FROM * room && last ? Math.min(2, MOST_SPREAD)
                : Math.min(MOST_SPREAD, (room - used) / (on.size() - 1));
        spread = Math.max(0, Math.min(spread, on.size() < 2 ? 0 : (room - used) / (on.size() - 1)));
        List<Shape> shapes = new ArrayList<>();
        List<BarPlace> bars = new ArrayList<>();
        double y = top;
        for (SystemBox system : on) {
            double base = y - system.top();
            for (String mark : system.rehearsals()) {
                marks.add(new Chart.Bookmark(mark, page, y, List.of()));
            }
            system.shapes().forEach(s -> shapes.add(s.moved(frame.left, base)));
            system.spans().forEach(s -> bars.add(BarPlace.of(counts.part().id(), s,
                    new Box(s.left(), system.bottom(), s.right(), system.top()).moved(frame.left, base))));
            y -= system.height() + Sizes.SYSTEM_GAP + spread;
        }
        return new Chart.Page(shapes, List.copyOf(bars));
    }

    /** Names of what is not drawn, as the notation and the page see it. */
    Set<String> notDrawn() {
        Set<String> names = new TreeSet<>(bars.isEmpty() ? Set.of() : builder.spans().loose());
        for (MeasuredBar bar : bars) {
            bar.staves().forEach(s -> names.addAll(s.notation().notDrawn()));
            bar.counts().forEach(c -> c.bar().directions().stream()
                    .filter(d -> d.kind() == Direction.Kind.OTHER).forEach(d -> names.add(d.text())));
        }
        return names;
    }
}
