package countstave.chart.layout;

import countstave.score.Direction;
import countstave.score.Event;
import countstave.score.LineMark;
import countstave.score.Placement;
import countstave.score.NoteSpan;
import countstave.score.Voice;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** What reaches from one note or moment of a part to another: slurs, hairpins, octave lines, pedals; ends paired. */
final class Spans {

    /** A note: bar (index into the measured bars), voice and event. */
    record Place(int bar, String voice, int event) {
    }

    /** A slur, or another sign from note to note; on which side it lies is decided where it begins and kept over line breaks. */
    static final class Slur {

        final NoteSpan sign;

        final Place from;
        final Place to;
        final int staff;
        /** The staff on which it ends. */
        final int toStaff;
        final Placement placement;
        /** Null until the first line that holds a part of it is built. */
        Boolean above;

        private Slur(NoteSpan sign, Place from, Place to, int staff, int toStaff, Placement placement) {
            this.toStaff = toStaff;
            this.sign = sign;
            this.from = from;
            this.to = to;
            this.staff = staff;
            this.placement = placement;
        }
    }

    /** A sign along time, from a moment of one bar to a moment of the same or a later one. */
    record Along(LineMark mark, int staff, Placement placement, int fromBar, Offset from, int toBar, Offset to) {

        boolean touches(LineBreaker.Range range) {
            return fromBar < range.to() && toBar >= range.from();
        }

        /** The part of it that stands on this line of music. */
        OnLine on(List<PlacedBar> placed, LineBreaker.Range range) {
            boolean begins = fromBar >= range.from();
            boolean ends = toBar < range.to();
            return new OnLine(this, begins, ends, placed.get(begins ? fromBar - range.from() : 0),
                    placed.get(ends ? toBar - range.from() : placed.size() - 1));
        }
    }

    /**
     * A sign along time on one line of music.
     *
     * @param begins whether it begins on this line; else it comes from an earlier one
     * @param ends whether it ends on this line
     */
    record OnLine(Along along, boolean begins, boolean ends, PlacedBar first, PlacedBar last) {

        /** Its left end: {@code before} its first moment, or where the line's music begins; staff spaces. */
        double left(double before) {
            return begins ? first.x(along.from()) - before : first.left() + first.bar().prefix(true);
        }

        /** Whether it reaches to the end of the last bar that it has on this line. */
        boolean toBarEnd() {
            return !ends || along.to().compareTo(last.bar().bar().end()) >= 0;
        }

        /** Its right end: so much before the end of the bar, or before its last moment; staff spaces. */
        double right(double beforeBarEnd, double beforeMoment) {
            return toBarEnd() ? last.right() - beforeBarEnd : last.x(along.to()) - beforeMoment;
        }
    }

    private final List<MeasuredBar> bars;
    private final List<Slur> slurs = new ArrayList<>();
    private final List<Slur> lines = new ArrayList<>();
    private final List<Slur> crossing = new ArrayList<>();
    private final List<Along> along = new ArrayList<>();
    private final Set<String> loose = new TreeSet<>();

    private Spans(List<MeasuredBar> bars) {
        this.bars = bars;
    }

    static Spans of(List<MeasuredBar> bars) {
        Spans spans = new Spans(bars);
        spans.pairSlurs();
        spans.pairLines();
        return spans;
    }

    /** The bars that were paired. */
    List<MeasuredBar> bars() {
        return bars;
    }

    List<Slur> slurs(LineBreaker.Range range, int staff) {
        return on(slurs, range, staff);
    }

    /** Slides, trills and their like. */
    List<Slur> lines(LineBreaker.Range range, int staff) {
        return on(lines, range, staff);
    }

    /** Slurs from one staff to another. */
    List<Slur> crossing(LineBreaker.Range range) {
        return crossing.stream().filter(s -> s.from.bar() < range.to() && s.to.bar() >= range.from()).toList();
    }

    private static List<Slur> on(List<Slur> signs, LineBreaker.Range range, int staff) {
        return signs.stream().filter(s -> s.staff == staff && s.from.bar() < range.to() && s.to.bar() >= range.from())
                .toList();
    }

    List<Along> along(LineMark.Kind kind, LineBreaker.Range range, int staff) {
        return along.stream().filter(a -> a.mark().kind() == kind && a.staff() == staff && a.touches(range)).toList();
    }

    /** Names of what has no other end among these bars, or one that cannot be reached. */
    Set<String> loose() {
        return loose;
    }

    private record OpenSlur(Place place, Event event, NoteSpan mark) {
    }

    private void pairSlurs() {
        Map<String, OpenSlur> open = new HashMap<>();
        for (int bar = 0; bar < bars.size(); bar++) {
            List<OpenSlur> marks = slurMarks(bar);
            for (OpenSlur one : marks) {
                String sign = "/" + one.mark().kind().xmlName() + "/" + one.mark().number();
                String key = one.place().voice() + sign;
                if (one.mark().start()) {
                    if (open.put(key, one) != null) {
                        loose.add(one.mark().kind().xmlName() + " without an end");
                    }
                    continue;
                }
                OpenSlur start = open.remove(key);
                if (start == null) {
                    // a slur may lead from one voice into another
                    String other = open.keySet().stream().filter(k -> k.endsWith(sign)).sorted()
                            .findFirst().orElse("");
                    start = open.remove(other);
                }
                add(start, one);
            }
        }
        open.values().forEach(one -> loose.add(one.mark().kind().xmlName() + " without an end"));
        arcs();
    }

    /** A hammered or pulled note is bound to the one before it: by a slur of its own, unless the file has one. */
    private void arcs() {
        for (Slur line : lines) {
            boolean hammer = line.sign.kind() == NoteSpan.Kind.HAMMER_ON || line.sign.kind() == NoteSpan.Kind.PULL_OFF;
            if (hammer && slurs.stream().noneMatch(s -> s.from.equals(line.from) && s.to.equals(line.to))) {
                slurs.add(new Slur(line.sign, line.from, line.to, line.staff, line.toStaff, Placement.ABOVE));
            }
        }
    }

    private void add(OpenSlur start, OpenSlur end) {
        String name = end.mark().kind().xmlName();
        if (start == null) {
            loose.add(name + " without a beginning");
        } else {
            Placement placement = start.mark().placement() != null ? start.mark().placement() : end.mark().placement();
            Slur slur = new Slur(start.mark(), start.place(), end.place(), start.event().staff(), end.event().staff(), placement);
            boolean isSlur = end.mark().kind() == NoteSpan.Kind.SLUR;
            if (slur.staff == slur.toStaff) {
                (isSlur ? slurs : lines).add(slur);
            } else if (isSlur && areDrawn(slur)) {
                crossing.add(slur);
            } else {
                loose.add(name + " between staves");
            }
        }
    }

    private boolean areDrawn(Slur slur) {
        return bars.get(0).staffNumbers().containsAll(List.of(slur.staff, slur.toStaff));
    }

    /** The marks of a bar in playing order; where one slur ends and another begins, the end comes first. */
    private List<OpenSlur> slurMarks(int bar) {
        if (bars.get(bar).isRun()) {
            return List.of();
        }
        List<OpenSlur> marks = new ArrayList<>();
        for (Voice voice : bars.get(bar).bar().voices()) {
            for (int i = 0; i < voice.events().size(); i++) {
                Event event = voice.events().get(i);
                if (!event.look().slurMarks().isEmpty() && event.isNote() && event.printed()) {
                    for (NoteSpan mark : event.look().slurMarks()) {
                        marks.add(new OpenSlur(new Place(bar, voice.name(), i), event, mark));
                    }
                }
            }
        }
        marks.sort(Comparator.comparing((OpenSlur m) -> m.event().start())
                .thenComparing(m -> m.event().isGrace() ? 0 : 1).thenComparing(m -> m.place().event())
                .thenComparing(m -> m.mark().start()));
        return marks;
    }

    private record OpenLine(int bar, Direction direction) {
    }

    private void pairLines() {
        List<OpenLine> open = new ArrayList<>();
        for (int bar = 0; bar < bars.size(); bar++) {
            for (Direction direction : lineMarks(bar)) {
                LineMark mark = direction.line();
                if (mark.type() != LineMark.Type.START) {
                    end(open, direction, bar);
                }
                if (mark.type() != LineMark.Type.STOP) {
                    open.add(new OpenLine(bar, direction));
                }
            }
        }
        for (OpenLine start : open) {
            LineMark.Kind kind = start.direction().line().kind();
            if (kind == LineMark.Kind.OCTAVE) {
                // its notes are printed away from their sound to the end: so the line must say
                int last = bars.size() - 1;
                along.add(along(start, last, bars.get(last).bar().end(), false));
            } else {
                loose.add(start.direction().text() + " without an end");
            }
        }
    }

    /** In order of time; where one sign ends and another begins, the end comes first. */
    private List<Direction> lineMarks(int bar) {
        return bars.get(bar).bar().directions().stream().filter(d -> d.kind() == Direction.Kind.LINE)
                .sorted(Comparator.comparing(Direction::at).thenComparing(d -> d.line().type() != LineMark.Type.STOP))
                .toList();
    }

    /** Ends the sign of this kind and number that began last, if need be on another staff or with another number. */
    private void end(List<OpenLine> open, Direction stop, int bar) {
        OpenLine found = null;
        int best = -1;
        for (OpenLine start : open) {
            Direction direction = start.direction();
            if (direction.line().kind() != stop.line().kind()) {
                continue;
            }
            int fit = (direction.staff() == stop.staff() ? 2 : 0) + (direction.line().number() == stop.line().number() ? 1 : 0);
            if (fit >= best) {
                best = fit;
                found = start;
            }
        }
        if (found == null) {
            loose.add(stop.text() + " without a beginning");
            return;
        }
        open.remove(found);
        along.add(along(found, bar, stop.at(), stop.line().niente()));
    }

    /** What ends at a barline ends before it: a following line of music shows nothing of it. */
    private Along along(OpenLine start, int toBar, Offset to, boolean niente) {
        boolean before = to.compareTo(Offset.ZERO) <= 0 && toBar > start.bar();
        int bar = before ? toBar - 1 : toBar;
        Offset at = before ? bars.get(bar).bar().end() : to;
        Direction direction = start.direction();
        LineMark mark = direction.line();
        LineMark whole = new LineMark(mark.kind(), mark.type(), mark.number(), mark.amount(), mark.niente() || niente,
                mark.signs());
        return new Along(whole, direction.staff(), direction.placement(), start.bar(), direction.at(), bar, at);
    }
}
