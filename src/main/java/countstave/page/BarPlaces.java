package countstave.page;

import countstave.count.BarCounts;
import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.count.Words;
import countstave.grid.BarPlan;
import countstave.grid.PartPlan;
import countstave.grid.Segment;
import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.practice.Thinning;
import countstave.score.BarTimeline;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What is said where in the bars of a part, at several tempi. It hangs on what is counted in a bar and on the last that was
 * counted before it: most bars are alike in both at most tempi, and are worked out once.
 */
final class BarPlaces {

    /** @param before what was counted last before the bar, or null */
    private record Known(int bar, List<Segment> segments, Segment before) {
    }

    private final List<CountingSystem> systems;
    private final Map<Known, List<PageWords.Place>> known = new HashMap<>();

    BarPlaces(List<CountingSystem> systems) {
        this.systems = systems;
    }

    /**
     * The places of every bar of a plan.
     *
     * @param plan of the same part each time, or some bars of it, whatever their tempi
     * @param first which of the part's bars is its first
     */
    List<List<PageWords.Place>> of(PartPlan plan, int first) {
        List<List<PageWords.Place>> places = new ArrayList<>();
        BarPlan before = null;
        for (BarPlan bar : plan.bars()) {
            List<Segment> segments = bar.segments().stream().map(segment -> segment.withRate(0)).toList();
            Segment last = before == null ? null : before.segments().get(before.segments().size() - 1).withRate(0);
            Known key = new Known(first + places.size(), segments, last);
            List<PageWords.Place> of = known.get(key);
            if (of == null) {
                of = places(plan, before, bar);
                known.put(key, of);
            }
            places.add(of);
            before = segments.isEmpty() ? before : bar;
        }
        return places;
    }

    /** When is said what, and in which stages, is the plan's: only the words are those of a system. */
    private List<PageWords.Place> places(PartPlan plan, BarPlan before, BarPlan bar) {
        TreeMap<Offset, PageWords.Place> said = said(alone(plan, before == null ? List.of(bar) : List.of(before, bar), systems.get(0)));
        for (CountingSystem system : systems.subList(1, systems.size())) {
            BarCounts counts = alone(plan, List.of(bar), system).bars().get(0);
            Map<Offset, String> words = new HashMap<>();
            counts.segments().forEach(segment -> segment.counts().forEach(count -> words.put(count.at(), count.say())));
            BarTimeline timeline = counts.timeline();
            // a beat inside a tuplet that is counted through is no count
            said.replaceAll((at, place) -> place.with(words.containsKey(at) ? words.get(at)
                    : Words.onBeat(timeline, timeline.beatAt(at), system)));
        }
        return List.copyOf(said.values());
    }

    private static PartCounts alone(PartPlan plan, List<BarPlan> bars, CountingSystem system) {
        return Words.of(new PartPlan(plan.timeline().withBars(bars.stream().map(BarPlan::timeline).toList()), bars, plan.cost(),
                plan.options()), system);
    }

    /** What is said in the last of these bars, at one stage or another. */
    private static TreeMap<Offset, PageWords.Place> said(PartCounts counts) {
        TreeMap<Offset, PageWords.Place> said = new TreeMap<>();
        Stretch stretch = Stretch.of(counts);
        for (Stage stage : Stage.values()) {
            for (Thinning.Thinned count : Thinning.of(stretch, stage)) {
                if (count.bar() == stretch.last()) {
                    int bit = count.said() ? 1 << stage.ordinal() : 0;
                    said.merge(count.count().at(), new PageWords.Place(count.count().at(), count.count().played(), bit,
                            List.of(count.count().say())),
                            (one, now) -> new PageWords.Place(now.at(), now.played(), one.stages() | now.stages(), one.words()));
                }
            }
        }
        return said;
    }
}
