package countstave.chart.layout;

import countstave.count.BarCounts;
import countstave.count.PartCounts;
import countstave.grid.BarPlan;
import countstave.score.BarTimeline;
import countstave.score.Direction;
import countstave.score.Part;
import countstave.score.Score;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Signs that hold for everybody stand in the uppermost part only (tempo, rehearsal letters, segno and coda; common
 * practice, no source). A part that is drawn by itself needs them too.
 */
final class SharedSigns {

    private SharedSigns() {
    }

    /** The part with the signs of the score's first part where it has none of the kind at the same moment. */
    static PartCounts in(PartCounts counts, Score score) {
        Part part = counts.part();
        Part top = score.parts().get(0);
        if (top.id().equals(part.id())) {
            return counts;
        }
        List<BarCounts> bars = new ArrayList<>();
        for (BarCounts bar : counts.bars()) {
            int index = bar.bar().index();
            bars.add(index < top.bars().size() ? with(bar, top.bars().get(index).directions()) : bar);
        }
        return new PartCounts(counts.plan(), counts.system(), List.copyOf(bars));
    }

    private static BarCounts with(BarCounts counts, List<Direction> above) {
        BarTimeline timeline = counts.timeline();
        List<Direction> own = timeline.bar().directions();
        List<Direction> missing = above.stream().filter(d -> isForAll(d, above) && !has(own, d))
                .map(d -> new Direction(d.at(), 1, d.kind(), d.text(), d.mark(), d.placement(), d.line(), d.pieces())).toList();
        if (missing.isEmpty()) {
            return counts;
        }
        List<Direction> all = new ArrayList<>(missing);
        // the words of a tempo stand in every part, its mark in the first only
        own.stream().filter(o -> missing.stream().noneMatch(m -> isSameWords(m, o))).forEach(all::add);
        all.sort(Comparator.comparing(Direction::at));
        return new BarCounts(new BarPlan(timeline.withBar(timeline.bar().withDirections(List.copyOf(all))),
                counts.plan().segments()), counts.segments());
    }

    /** Whether a part needs no such sign: it has one of the kind, or where it is the words of a tempo, a mark of its own. */
    private static boolean has(List<Direction> own, Direction sign) {
        Direction.Kind kind = sign.kind() == Direction.Kind.WORDS ? Direction.Kind.METRONOME : sign.kind();
        return own.stream().anyMatch(o -> o.kind() == kind && o.at().equals(sign.at()));
    }

    private static boolean isSameWords(Direction one, Direction other) {
        return one.kind() == Direction.Kind.WORDS && other.kind() == one.kind() && one.at().equals(other.at())
                && one.text().equals(other.text());
    }

    /** The words of a tempo stand where its metronome mark stands; other words are for who plays them. */
    private static boolean isForAll(Direction sign, List<Direction> others) {
        return sign.isForAll() || sign.kind() == Direction.Kind.WORDS && others.stream()
                .anyMatch(o -> o.kind() == Direction.Kind.METRONOME && o.at().equals(sign.at()));
    }
}
