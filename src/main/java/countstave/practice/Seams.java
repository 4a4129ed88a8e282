package countstave.practice;

import countstave.count.SpokenUnit;
import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Finds the seams of passages, no seam twice: a change whose smallest piece is counted and played like that of another
 * one is practised there.
 */
final class Seams {

    /**
     * What is known of a smallest piece: by which passage's rank and which letter its seam is called, and where else it is: bars as
     * they are called, in the order of the part.
     */
    private record Known(int rank, String letter, TreeMap<Integer, String> also) {

        String name() {
            return rank + letter;
        }
    }

    private final Map<List<Object>, Known> known = new HashMap<>();

    /**
     * The passages with their seams, the hardest of each first.
     *
     * @param ranked the part's passages in order of rank; those alike to another get none, theirs are in that one
     */
    static List<Passage> in(List<Passage> ranked) {
        Seams seams = new Seams();
        List<Passage> found = new ArrayList<>();
        for (Passage passage : ranked) {
            found.add(passage.sameAs() > 0 ? passage
                    : seams.of(passage, ranked.stream().filter(p -> p == passage || p.sameAs() == passage.rank()).toList()));
        }
        return found.stream().map(passage -> passage.withSeams(passage.seams().stream()
                .map(seam -> seam.alsoIn(List.copyOf(seams.known.get(piece(seam)).also().values()))).toList(), passage.seamMarks())).toList();
    }

    /** a to z, then aa, ab … */
    static String letter(int index) {
        String last = String.valueOf((char) ('a' + index % 26));
        return index < 26 ? last : letter(index / 26 - 1) + last;
    }

    /** @param alike the passage and those alike to it: they may begin after another count, which is practised here too */
    private Passage of(Passage passage, List<Passage> alike) {
        List<Seam> all = new ArrayList<>();
        for (Passage one : alike) {
            one.counts().forEach(count -> all.addAll(of(count)));
        }
        // the sort is stable: equally hard ones keep the order of the score
        all.sort(Comparator.comparingDouble((Seam seam) -> seam.figures().sum()).reversed());
        List<Seam> fresh = new ArrayList<>();
        List<Seam.Mark> marks = new ArrayList<>();
        for (Seam seam : all) {
            List<Object> piece = piece(seam);
            Known before = known.get(piece);
            if (before == null) {
                before = new Known(passage.rank(), letter(fresh.size()), new TreeMap<>());
                known.put(piece, before);
                fresh.add(seam.named(before.name()));
            } else if (isElsewhere(seam, before, fresh)) {
                before.also().put(seam.around().first() + seam.bar(), seam.barCalled());
            }
            marks.add(seam.mark(before.rank() == passage.rank() ? before.letter() : before.name()));
        }
        return passage.withSeams(fresh, marks.stream().distinct().toList());
    }

    private static boolean isElsewhere(Seam seam, Known before, List<Seam> fresh) {
        return fresh.stream().noneMatch(s -> s.name().equals(before.name()) && s.barCalled().equals(seam.barCalled()));
    }

    /** Every change in a count, also the one with which its first bar begins. */
    static List<Seam> of(StepCount count) {
        Stretch around = count.around();
        int first = count.stretch().first() - around.first();
        List<Stretch.Slice> slices = around.slices();
        List<Seam> seams = new ArrayList<>();
        for (UnitChange change : UnitChange.in(slices)) {
            Stretch.Slice before = slices.get(change.to() - 1);
            Stretch.Slice after = slices.get(change.to());
            if (after.bar() >= first && after.bar() < first + count.stretch().size()) {
                BarTimeline bar = around.timeline(after.bar());
                Offset at = after.segment().start();
                Seam.Place place = at.equals(Offset.ZERO) ? Seam.Place.BARLINE
                        : opens(bar, at) ? Seam.Place.BEAT : Seam.Place.INSIDE_BEAT;
                Seam.Difficulty figures = new Seam.Difficulty(Math.abs(Math.log(change.before().over(change.after()).toDouble())
                        / Math.log(2)), change.leavesFamily(), place,
                        Math.max(Rarity.of(around, before), Rarity.of(around, after)));
                Seam.Change spoken = new Seam.Change(SpokenUnit.of(around.timeline(before.bar()), before.segment()),
                        SpokenUnit.of(bar, after.segment()), change.before().over(change.after()));
                seams.add(new Seam("", count, around, after.bar(), at, spoken, loops(around, after.bar(), after.start()),
                        figures, List.of()));
            }
        }
        return seams;
    }

    private static boolean opens(BarTimeline bar, Offset at) {
        Beat beat = bar.beatAt(at);
        return beat.start().equals(at) && bar.opens(beat);
    }

    /** The pieces, each once: where a bar has two beats, one beat more is the bar. */
    private static List<Seam.Loop> loops(Stretch stretch, int bar, Offset at) {
        TreeSet<Offset> cuts = cuts(stretch);
        Offset from = cuts.lower(at);
        Offset to = cuts.higher(at);
        boolean oneBeat = !cuts.contains(at) && isOneBeat(stretch, from, to);
        Offset next = oneBeat ? cuts.higher(to) : null;
        to = next == null ? to : next;
        List<Seam.Loop> loops = new ArrayList<>();
        add(Seam.Size.TWO_BEATS, from, to, loops);
        Offset earlier = cuts.lower(from);
        Offset later = cuts.higher(to);
        add(Seam.Size.BEAT_MORE, earlier == null ? from : earlier, later == null ? to : later, loops);
        int firstBar = stretch.barAt(from);
        int afterLast = stretch.barAt(to) + (stretch.starts().contains(to) ? 0 : 1);
        add(Seam.Size.BAR, stretch.starts().get(firstBar), stretch.starts().get(afterLast), loops);
        add(Seam.Size.NEIGHBOURS, stretch.starts().get(Math.max(0, Math.min(firstBar, bar - 1))),
                stretch.starts().get(Math.min(stretch.size(), Math.max(afterLast, bar + 2))), loops);
        return List.copyOf(loops);
    }

    private static void add(Seam.Size size, Offset from, Offset to, List<Seam.Loop> loops) {
        if (loops.stream().noneMatch(loop -> loop.from().equals(from) && loop.to().equals(to))) {
            loops.add(new Seam.Loop(size, from, to));
        }
    }

    /** Whether a stretch of time is no more than a beat, which is little to loop. */
    private static boolean isOneBeat(Stretch stretch, Offset from, Offset to) {
        int bar = stretch.barAt(from);
        Beat beat = stretch.timeline(bar).beatAt(Offset.at(from.minus(stretch.starts().get(bar))));
        return !to.minus(from).isLongerThan(beat.groupLength().isLongerThan(beat.length()) ? beat.groupLength() : beat.length());
    }

    /** Where a piece may begin and end: at beats, of irregular meters at groups, never inside a tuplet; and at barlines. */
    private static TreeSet<Offset> cuts(Stretch stretch) {
        TreeSet<Offset> cuts = new TreeSet<>(stretch.starts());
        for (int i = 0; i < stretch.size(); i++) {
            int bar = i;
            BarTimeline timeline = stretch.timeline(bar);
            List<Segment> spans = stretch.bars().get(bar).plan().segments().stream().filter(Segment::isSpan).toList();
            for (Beat beat : timeline.beats()) {
                Offset at = beat.start();
                boolean opens = at.isAfter(Offset.ZERO) && timeline.opens(beat);
                if (opens && timeline.tuplets().stream().noneMatch(t -> t.hides(at))
                        && spans.stream().noneMatch(s -> at.isAfter(s.start()) && at.isBefore(s.end()))) {
                    cuts.add(stretch.position(bar, at));
                }
            }
        }
        return cuts;
    }

    /** What is counted and played in the smallest piece, from its start: equal where the same is looped. */
    private static List<Object> piece(Seam seam) {
        Seam.Loop loop = seam.loops().get(0);
        Stretch stretch = seam.around();
        List<Object> piece = new ArrayList<>();
        piece.add(loop.to().minus(loop.from()));
        for (Stretch.Slice slice : stretch.slices()) {
            Offset start = slice.start().isBefore(loop.from()) ? loop.from() : slice.start();
            Offset end = slice.end().isAfter(loop.to()) ? loop.to() : slice.end();
            if (start.isBefore(end)) {
                Segment segment = slice.segment();
                piece.add(List.of(start.minus(loop.from()), end.minus(loop.from()), segment.unit(), segment.kind(),
                        segment.isSwung()));
            }
        }
        for (int bar = 0; bar < stretch.size(); bar++) {
            for (Offset attack : stretch.timeline(bar).attacks()) {
                Offset at = stretch.position(bar, attack);
                if (at.isWithin(loop.from(), loop.to())) {
                    piece.add(at.minus(loop.from()));
                }
            }
            for (Beat beat : stretch.timeline(bar).beats()) {
                Offset at = stretch.position(bar, beat.start());
                if (at.isWithin(loop.from(), loop.to())) {
                    piece.add(List.of(at.minus(loop.from()), beat.length()));
                }
            }
        }
        return piece;
    }
}
