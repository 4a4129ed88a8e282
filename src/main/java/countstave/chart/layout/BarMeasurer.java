package countstave.chart.layout;

import countstave.chart.ChartOptions;
import countstave.chart.Contents;
import countstave.chart.engrave.BarEngraver;
import countstave.chart.engrave.Column;
import countstave.chart.engrave.EngraveContext;
import countstave.chart.engrave.StaffState;
import countstave.chart.font.Measures;
import countstave.chart.shape.Text;
import countstave.count.BarCounts;
import countstave.count.ChangeMark;
import countstave.count.ChangeWords;
import countstave.count.Count;
import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.grid.Segment;
import countstave.score.Bar;
import countstave.score.Barline;
import countstave.score.BarStyle;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Part;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Measures the bars of a part: notation, syllables and lyrics together decide how much room each moment needs. */
final class BarMeasurer {

    /** A run of rests shows the counts of this many bars in full; a longer one those of its ends. */
    private static final int RUN_IN_FULL = 3;

    private final BarEngraver engraver;
    private final Measures measures;
    private final ChartOptions options;
    private final boolean breaths;
    /** The staves that are drawn, 1 the uppermost. */
    private final List<Integer> staves = new ArrayList<>();
    private List<Double> lineNotes = List.of();

    /** Further rows of words below a bar. */
    interface MoreRows {
        /** @param bar index of the bar in the score */
        List<List<ShownCount>> of(int bar);
    }

    private MoreRows more = bar -> List.of();

    /** With further rows of words below the counts, for which there must be room too. */
    BarMeasurer with(MoreRows rows) {
        more = rows;
        return this;
    }

    /** @param breaths whether counts that begin with the breath sign are marked, and said without it */
    BarMeasurer(BarEngraver engraver, Measures measures, ChartOptions options, boolean breaths) {
        this.engraver = engraver;
        this.measures = measures;
        this.options = options;
        this.breaths = breaths;
    }

    List<MeasuredBar> measure(PartCounts counts) {
        Part part = counts.part();
        Set<Integer> chosen = counts.timeline().staves();
        staves.clear();
        IntStream.rangeClosed(1, part.staves()).filter(s -> chosen.isEmpty() || chosen.contains(s)).forEach(staves::add);
        staves.removeAll(TabStaves.doubled(part, staves));
        lineNotes = staves.stream().map(s -> EngraveContext.notes(part.bars(), s)).toList();
        List<StaffState> states = new ArrayList<>(Collections.nCopies(staves.size(), StaffState.DEFAULT));
        int first = counts.bars().isEmpty() ? 0 : bar(counts, 0).index();
        // bars may have been selected: what came before still sets clef and key
        part.bars().stream().filter(b -> b.index() < first).forEach(b -> advance(states, b));
        List<List<ChangeMark>> marks = ChangeWords.of(counts.plan());
        List<MeasuredBar> measured = new ArrayList<>();
        int i = 0;
        while (i < counts.bars().size()) {
            int end = runEnd(counts, i);
            measured.add(measure(counts, i, end, List.copyOf(states), marks.get(i)));
            int from = bar(counts, i).index();
            int to = end < counts.bars().size() ? bar(counts, end).index() : from;
            // bars that were not selected still set clef and key
            part.bars().stream().filter(b -> b.index() >= from && b.index() < to).forEach(b -> advance(states, b));
            i = end;
        }
        return measured;
    }

    private static Bar bar(PartCounts counts, int i) {
        return counts.bars().get(i).bar();
    }

    /** Whether bar {@code i} follows the one before it in the score; not so where bars between were left out. */
    private static boolean follows(PartCounts counts, int i) {
        return bar(counts, i).index() == bar(counts, i - 1).index() + 1;
    }

    /** The bar after this one in the part, or null. */
    private static Bar following(Part part, Bar bar) {
        int next = bar.index() + 1;
        return next < part.bars().size() ? part.bars().get(next) : null;
    }

    private void advance(List<StaffState> states, Bar bar) {
        for (int s = 0; s < states.size(); s++) {
            states.set(s, states.get(s).after(bar, staves.get(s)));
        }
    }

    /** The index after the last bar that is drawn as one with bar {@code start}: a run of rests, else one bar. */
    private int runEnd(PartCounts counts, int start) {
        int end = start + 1;
        while (end < counts.bars().size() && isRest(counts, end - 1) && isRest(counts, end)
                && bar(counts, end).look().style().runNumber() == bar(counts, end - 1).look().style().runNumber() + 1
                && bar(counts, end).directions().isEmpty() && Barline.isPlain(bar(counts, end).look().left())
                && Barline.isPlain(bar(counts, end - 1).look().right()) && !bar(counts, end).look().meterShown()
                && bar(counts, end).markings().staves().isEmpty()) {
            end++;
        }
        return end;
    }

    private boolean isRest(PartCounts counts, int i) {
        BarStyle style = bar(counts, i).look().style();
        return counts.bars().get(i).timeline().attacks().isEmpty() && (style.kind() == BarStyle.Kind.MULTI_REST
                || style.kind() == BarStyle.Kind.NONE && style.runNumber() > 0
                && options.contents().rests() == Contents.Rests.JOIN && RestSigns.none(bar(counts, i)));
    }

    private MeasuredBar measure(PartCounts counts, int start, int end, List<StaffState> states,
            List<ChangeMark> marks) {
        List<BarCounts> run = List.copyOf(counts.bars().subList(start, end));
        Bar previous = start == 0 || !follows(counts, start) ? null : bar(counts, start - 1);
        Bar next = end == counts.bars().size() || !follows(counts, end) ? null : bar(counts, end);
        Bar following = following(counts.part(), bar(counts, end - 1));
        List<BarTimeline> timelines = new ArrayList<>(run.stream().map(b -> b.timeline()).toList());
        if (start == 0 || !follows(counts, start)) {
            timelines.set(0, withMeter(timelines.get(0)));
        }
        List<MeasuredBar.Staff> engraved = new ArrayList<>();
        for (int s = 0; s < states.size(); s++) {
            EngraveContext context = new EngraveContext(staves.get(s), states.get(s), previous, next,
                    following, measures.music(), measures.text(), lineNotes.get(s), options.phrases());
            boolean rests = run.size() > 1 || bar(counts, start).look().style().kind() == BarStyle.Kind.MULTI_REST
                    && isRest(counts, start);
            engraved.add(new MeasuredBar.Staff(staves.get(s), states.get(s), rests
                    ? engraver.engraveRests(timelines, context) : engraver.engrave(timelines.get(0), context)));
        }
        double leastContent = engraved.stream().mapToDouble(s -> s.notation().leastContentWidth()).max().orElse(0);
        return run.size() > 1 ? run(run, engraved, marks, leastContent)
                : single(run.get(0), engraved, counts.system(), marks, leastContent);
    }

    /** Where the page begins, or bars were left out, the time signature is shown whatever the file does. */
    private static BarTimeline withMeter(BarTimeline timeline) {
        Bar bar = timeline.bar();
        if (bar.look().meterShown() || bar.meter().isSenzaMisura()) {
            return timeline;
        }
        return timeline.withBar(bar.withLook(bar.look().withMeterShown(true)));
    }

    private MeasuredBar run(List<BarCounts> run, List<MeasuredBar.Staff> engraved, List<ChangeMark> marks,
            double leastContent) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < run.size(); i++) {
            boolean inFull = run.size() <= RUN_IN_FULL + 1 || i < RUN_IN_FULL - 1 || i == run.size() - 1;
            if (inFull) {
                words.add(run.get(i).segments().stream().flatMap(s -> s.counts().stream()).map(Count::say)
                        .collect(Collectors.joining(" ", "(", ")")));
            } else if (i == RUN_IN_FULL - 1) {
                words.add("…");
            }
        }
        String text = String.join(" ", words);
        double width = measures.text().width(text, Sizes.SYLLABLE, Text.Style.REGULAR) + 2 * Sizes.SYLLABLE_GAP;
        BarTimeline first = run.get(0).timeline();
        Spacing spacing = new Spacing(List.of(new Spacing.Piece(Offset.ZERO, first.bar().end(), first.bar().length(),
                Math.max(width, leastContent))), List.of());
        return new MeasuredBar(run, engraved, List.of(), marks, text, spacing, 0, 0, leastContent);
    }

    private MeasuredBar single(BarCounts bar, List<MeasuredBar.Staff> engraved, CountingSystem system,
            List<ChangeMark> marks, double leastContent) {
        TreeMap<Offset, Column> notes = new TreeMap<>();
        engraved.forEach(s -> s.notation().columns().forEach(c -> notes.merge(c.at(), c, Column::with)));
        List<ShownCount> shown = PrintedCounts.of(bar, system, options.unplayed(), breaths);
        List<Column> syllables = syllables(shown, marks.stream().map(ChangeMark::at).toList());
        List<Spacing.Track> tracks = new ArrayList<>();
        tracks.add(new Spacing.Track(List.copyOf(notes.values()), Sizes.NOTE_GAP));
        tracks.add(new Spacing.Track(syllables, Sizes.SYLLABLE_GAP));
        more.of(bar.bar().index()).forEach(row ->
                tracks.add(new Spacing.Track(syllables(row, List.of()), Sizes.SYLLABLE_GAP)));
        double noteRoom = firstRoom(List.copyOf(notes.values()));
        double prefix = engraved.stream().mapToDouble(s -> s.notation().prefixWidth(false)).max().orElse(0);
        tracks.addAll(new LyricTracks(measures, staves).of(bar.bar(), MeasuredBar.start(prefix, noteRoom, firstRoom(syllables))));
        tracks.addAll(dynamics(bar.bar()));
        tracks.add(new ChordNames(measures).track(bar.bar(), staves));
        tracks.add(new FiguredBass(measures).track(bar.bar(), staves));
        Spacing spacing = new Spacing(pieces(bar), tracks);
        return new MeasuredBar(List.of(bar), engraved, shown, marks, null, spacing, noteRoom, firstRoom(syllables), leastContent);
    }

    private static double firstRoom(List<Column> columns) {
        return columns.isEmpty() || !columns.get(0).at().equals(Offset.ZERO) ? 0 : columns.get(0).left();
    }

    private List<Column> syllables(List<ShownCount> shown, List<Offset> changes) {
        // the answers stand where they were to be written
        double wider = options.contents().blank() == Contents.Blank.COUNTS ? Blanks.WIDER : 1;
        return shown.stream().map(count -> {
            Text.Style style = count.played() ? Text.Style.BOLD : Text.Style.REGULAR;
            double half = measures.text().width(count.say(), Sizes.SYLLABLE, style) / 2 * wider;
            double parenthesis = measures.text().width("(", Sizes.SYLLABLE, Text.Style.REGULAR) * wider;
            return new Column(count.at(), half + (count.opens() ? parenthesis : 0)
                    + (changes.contains(count.at()) ? Sizes.CHANGE_ROOM : 0), half + (count.closes() ? parenthesis : 0));
        }).toList();
    }

    /** The dynamics, one track a staff. */
    private List<Spacing.Track> dynamics(Bar bar) {
        TreeMap<Integer, TreeMap<Offset, Column>> rows = new TreeMap<>();
        bar.directions().stream().filter(DynamicSigns::isDynamic).filter(d -> staves.contains(d.staff())).forEach(direction -> {
            double half = DynamicSigns.width(direction.text(), measures) / 2;
            rows.computeIfAbsent(direction.staff(), n -> new TreeMap<>()).merge(direction.at(),
                    new Column(direction.at(), half, half), Column::with);
        });
        return rows.values().stream()
                .map(s -> new Spacing.Track(List.copyOf(s.values()), Sizes.LYRIC_GAP)).toList();
    }

    /** Beats (groups of them in irregular meters), and spans counted through as wholes. */
    private static List<Spacing.Piece> pieces(BarCounts bar) {
        BarTimeline timeline = bar.timeline();
        Offset end = timeline.bar().end();
        List<Spacing.Piece> pieces = new ArrayList<>();
        for (Segment segment : bar.plan().segments()) {
            SortedSet<Offset> cuts = new TreeSet<>();
            cuts.add(segment.start());
            cuts.add(segment.end());
            if (!segment.isSpan()) {
                timeline.beats().stream().filter(timeline::opens).map(Beat::start)
                        .filter(b -> b.isAfter(segment.start()) && b.isBefore(segment.end())).forEach(cuts::add);
            }
            addPieces(List.copyOf(cuts), segment.unit(), pieces);
        }
        if (pieces.isEmpty()) {
            Duration length = timeline.bar().length().isPositive() ? timeline.bar().length() : Duration.QUARTER;
            pieces.add(new Spacing.Piece(Offset.ZERO, Offset.at(length), length, Sizes.LEAST_UNIT));
        } else if (pieces.get(pieces.size() - 1).end().isBefore(end)) {
            Offset from = pieces.get(pieces.size() - 1).end();
            pieces.add(new Spacing.Piece(from, end, end.minus(from), Sizes.LEAST_UNIT));
        }
        return pieces;
    }

    private static void addPieces(List<Offset> cuts, Duration unit, List<Spacing.Piece> pieces) {
        for (int i = 0; i + 1 < cuts.size(); i++) {
            pieces.add(new Spacing.Piece(cuts.get(i), cuts.get(i + 1), unit, Sizes.LEAST_UNIT));
        }
    }
}
