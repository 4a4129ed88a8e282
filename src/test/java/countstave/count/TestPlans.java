package countstave.count;

import countstave.grid.BarPlan;
import countstave.grid.CoveringGrid;
import countstave.grid.PartPlan;
import countstave.grid.Segment;
import countstave.score.Bar;
import countstave.score.BarLook;
import countstave.score.BarName;
import countstave.score.BarSource;
import countstave.score.BarStyle;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Markings;
import countstave.score.Meter;
import countstave.score.Part;
import countstave.score.PartTimeline;
import countstave.score.Swung;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import countstave.score.VoiceAttacks;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/** Plans written by hand, so that words and writers are tested without the reader and the planner. */
public final class TestPlans {

    private final List<BarPlan> bars = new ArrayList<>();
    private final String name;
    private boolean tempoAssumed;
    private Tempo tempo = Tempo.of(70);
    private Duration lastUnit;
    private BarMaker open;

    private TestPlans(String name) {
        this.name = name;
    }

    public static TestPlans part(String name) {
        return new TestPlans(name);
    }

    public TestPlans tempo(Tempo tempo) {
        close();
        this.tempo = tempo;
        return this;
    }

    public TestPlans assumed() {
        tempoAssumed = true;
        return this;
    }

    /** A bar with beats of {@code beat} throughout. */
    public BarMaker bar(String meter, String beat) {
        close();
        open = new BarMaker(meter(meter), Duration.parse(beat), List.of());
        return open;
    }

    /** A bar of an irregular meter: every written unit a beat, in groups of these sizes. */
    public BarMaker groups(String meter, Integer... sizes) {
        close();
        Meter read = meter(meter);
        open = new BarMaker(read, Duration.of(1, read.components().get(0).unit()), List.of(sizes));
        return open;
    }

    public PartPlan plan() {
        close();
        List<BarTimeline> timelines = bars.stream().map(BarPlan::timeline).toList();
        Part part = new Part("P1", name, 1, timelines.stream().map(BarTimeline::bar).toList(), 0);
        return new PartPlan(new PartTimeline(part, timelines, tempoAssumed), List.copyOf(bars), 0, countstave.grid.PlanOptions.DEFAULT);
    }

    public PartCounts counts(CountingSystem system) {
        return Words.of(plan(), system);
    }

    public PartCounts counts(String system) {
        return counts(CountingSystem.named(system));
    }

    private void close() {
        if (open != null) {
            bars.add(open.plan());
            open = null;
        }
    }

    private static Meter meter(String text) {
        int slash = text.indexOf('/');
        List<Integer> numbers = new ArrayList<>();
        for (String number : text.substring(0, slash).split("\\+")) {
            numbers.add(Integer.valueOf(number));
        }
        return new Meter(List.of(new Meter.Component(numbers, Integer.parseInt(text.substring(slash + 1)))),
                Meter.Symbol.NORMAL);
    }

    /** What was said in one bar, unplayed words in parentheses. */
    public static String said(BarCounts bar) {
        StringBuilder text = new StringBuilder();
        for (SegmentCounts segment : bar.segments()) {
            for (Count count : segment.counts()) {
                text.append(text.isEmpty() ? "" : " ").append(count.played() ? count.say() : "(" + count.say() + ")");
            }
        }
        return text.toString();
    }

    /** One bar in the making. */
    public final class BarMaker {

        private final Meter meter;
        private final Duration beat;
        private final List<Integer> groups;
        private final TreeSet<Offset> attacks = new TreeSet<>();
        private final List<VoiceAttacks> lines = new ArrayList<>();
        private final List<Segment> segments = new ArrayList<>();
        private final TreeSet<Offset> felt = new TreeSet<>();
        private Swung swung;
        private Duration length;
        private Duration phase = Duration.ZERO;
        private int run;
        private boolean allFelt;
        private Offset at = Offset.ZERO;

        private BarMaker(Meter meter, Duration beat, List<Integer> groups) {
            this.meter = meter;
            this.beat = beat;
            this.groups = groups;
            this.length = meter.length();
        }

        /** A pickup of this length. */
        public BarMaker pickup(String pickup) {
            length = Duration.parse(pickup);
            phase = meter.length().minus(length);
            return this;
        }

        /** The number within a run of rests, repeats or slashes. */
        public BarMaker run(int number) {
            run = number;
            return this;
        }

        public BarMaker attacks(String... offsets) {
            for (String offset : offsets) {
                attacks.add(Offset.parse(offset));
            }
            return this;
        }

        /** An attack every {@code unit} through the whole bar. */
        public BarMaker attackEvery(String unit) {
            for (Offset o = Offset.ZERO; o.isBefore(Offset.at(length)); o = o.plus(Duration.parse(unit))) {
                attacks.add(o);
            }
            return this;
        }

        /** The attacks of one voice, beside those of the others. */
        public BarMaker voice(int staff, String voice, String... offsets) {
            attacks(offsets);
            lines.add(new VoiceAttacks(staff, voice, Arrays.stream(offsets).map(Offset::parse).map(this::sounding).toList()));
            return this;
        }

        /** Attacks between the spoken positions are felt. */
        public BarMaker felt() {
            allFelt = true;
            return this;
        }

        /** Swings the bar, to be called first: attacks are given as written, and what is counted in {@code unit} is swung. */
        public BarMaker swung(String unit, int longPart, int shortPart) {
            swung = new Swung(Duration.parse(unit), longPart, shortPart, List.of());
            return this;
        }

        /** These attacks of the segment that is made next are felt, not said. */
        public BarMaker felt(String... offsets) {
            for (String offset : offsets) {
                felt.add(Offset.parse(offset));
            }
            return attacks(offsets);
        }

        /** Counts on in swung pairs up to {@code end}. */
        public BarMaker pairs(String end) {
            return segment(swung.unit(), end, Segment.Kind.FILL, swung.unit(), swung);
        }

        /** Counts on in {@code unit} up to {@code end}; its felt notes lie on the grid of {@code grid}. */
        public BarMaker fill(String unit, String end, String grid) {
            return segment(Duration.parse(unit), end, Segment.Kind.FILL, Duration.parse(grid), null);
        }

        /** Counts on in {@code unit} up to {@code end}. */
        public BarMaker fill(String unit, String end) {
            return segment(Duration.parse(unit), end, Segment.Kind.FILL, Duration.parse(unit),
                    swung != null && swung.unit().equals(Duration.parse(unit)) ? swung : null);
        }

        /** Counts the whole bar in {@code unit}. */
        public TestPlans fill(String unit) {
            return fill(unit, length.toString()).end();
        }

        public BarMaker span(String unit, String end) {
            return segment(Duration.parse(unit), end, Segment.Kind.SPAN, Duration.parse(unit), null);
        }

        public TestPlans end() {
            return TestPlans.this;
        }

        private BarMaker segment(Duration unit, String end, Segment.Kind kind, Duration grid, Swung pairs) {
            boolean change = !unit.equals(lastUnit);
            lastUnit = unit;
            segments.add(new Segment(at, Offset.parse(end), unit, kind, change, tempo.rate(unit),
                    felt.stream().map(this::sounding).toList(), grid, pairs));
            felt.clear();
            at = Offset.parse(end);
            return this;
        }

        /** Where a note sounds that is written here: the second of a swung pair is late. */
        private Offset sounding(Offset written) {
            if (swung == null) {
                return written;
            }
            Duration pair = swung.unit().times(2);
            Offset first = Offset.ZERO.plus(pair.times(written.minus(Offset.ZERO).floorOver(pair)));
            return written.minus(first).equals(swung.unit()) ? first.plus(swung.second()) : written;
        }

        /** The segment with its felt notes, once all attacks are known. */
        private Segment withFelt(Segment segment, Swung told) {
            List<Offset> said = new ArrayList<>();
            for (int k = 0; k < segment.positions(); k++) {
                said.add(segment.position(k));
            }
            List<Offset> between = attacks.stream().map(this::sounding)
                    .filter(a -> a.isWithin(segment.start(), segment.end()) && !said.contains(a)).toList();
            List<Offset> all = new ArrayList<>(said);
            all.addAll(between);
            return new Segment(segment.start(), segment.end(), segment.unit(), segment.kind(), segment.change(), segment.rate(),
                    between, between.isEmpty() ? segment.unit()
                            : CoveringGrid.unit(segment.start(), segment.end(), all), segment.isSwung() ? told : null);
        }

        private BarPlan plan() {
            int index = bars.size();
            BarStyle style = run == 0 ? BarStyle.NONE : new BarStyle(BarStyle.Kind.MULTI_REST, run, run);
            Bar bar = new Bar(new BarName(index, Integer.toString(index + 1), !phase.isZero()), meter, length, phase,
                    List.of(), List.of(), Markings.NONE, BarLook.of(index == 0, null, null, style), BarSource.NONE);
            Swung told = swung == null ? null
                    : new Swung(swung.unit(), swung.longPart(), swung.shortPart(), List.copyOf(attacks));
            BarTimeline timeline = new BarTimeline(bar, beats(), !groups.isEmpty(),
                    attacks.stream().map(this::sounding).toList(), List.copyOf(lines), List.of(),
                    List.of(new TempoChange(Offset.ZERO, tempo)), told);
            return new BarPlan(timeline,
                    segments.stream().map(s -> allFelt || s.isSwung() && s.felt().isEmpty() ? withFelt(s, told) : s).toList());
        }

        private List<Beat> beats() {
            List<Beat> beats = new ArrayList<>();
            List<Integer> sizes = groups.isEmpty()
                    ? java.util.Collections.nCopies((int) meter.length().floorOver(beat), 1) : groups;
            Offset start = Offset.ZERO.minus(phase);
            int number = 1;
            for (int group = 0; group < sizes.size(); group++) {
                Offset groupStart = start;
                for (int i = 0; i < sizes.get(group); i++) {
                    Beat next = new Beat(number++, start, beat, group, groupStart, beat.times(sizes.get(group)));
                    start = start.plus(beat);
                    if (next.end().isAfter(Offset.ZERO)) {
                        beats.add(next);
                    }
                }
            }
            return beats;
        }
    }
}
