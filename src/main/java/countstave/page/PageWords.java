package countstave.page;

import countstave.count.BarCounts;
import countstave.count.ChangeMark;
import countstave.count.ChangeWords;
import countstave.count.CountingSystem;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.count.Words;
import countstave.grid.BarPlan;
import countstave.grid.PartPlan;
import countstave.practice.AtSpeed;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.practice.Thinning;
import countstave.score.BarTimeline;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The counts of a part bar by bar, as they are planned at several speeds: when each comes, at which stages it is said, and
 * its word in every counting system.
 *
 * @param bars the ways in which each bar is counted at one speed or another, that of the written tempo first
 * @param paces which of its ways each bar has at which speed, the slowest first
 */
record PageWords(List<List<Way>> bars, List<Pace> paces) {

    /** Speeds against the written one for which the part is planned; what lies between two is counted as the faster one. */
    private static final List<BigDecimal> SPEEDS = Stream.of("0.4", "0.5", "0.6", "0.7", "0.8", "0.9", "1", "1.1", "1.25", "1.5", "2")
            .map(BigDecimal::new).toList();

    /**
     * A place where something is said at some stage.
     *
     * @param at from the bar's start
     * @param played whether a note begins there
     * @param stages one bit a stage, that of {@link Stage#ALL} lowest: whether it is said
     * @param words one for each counting system
     */
    record Place(Offset at, boolean played, int stages, List<String> words) {

        /** The same with the word of the next system. */
        Place with(String word) {
            List<String> all = new ArrayList<>(words);
            all.add(word);
            return new Place(at, played, stages, all);
        }
    }

    /** What the chart says where the count changes; a thick one where another unit is said. */
    record Mark(Offset at, String text, boolean ofUnit) {
    }

    /**
     * A way in which a bar is counted.
     *
     * @param places in the order of time
     * @param felt notes that are felt, from the bar's start
     */
    record Way(List<Place> places, List<Offset> felt, List<Mark> marks) {
    }

    /**
     * The counts up to a speed.
     *
     * @param upTo the highest speed at which it is counted so, 1 being the written one
     * @param ways one for each bar: index among its ways
     */
    record Pace(BigDecimal upTo, List<Integer> ways) {
    }

    static PageWords of(PracticePlan plan, List<CountingSystem> systems, NoteNames names) {
        PartCounts counts = plan.counts();
        List<Way> written = ways(counts.plan(), systems, names);
        List<List<Way>> bars = new ArrayList<>();
        written.forEach(way -> bars.add(new ArrayList<>(List.of(way))));
        List<Pace> paces = new ArrayList<>();
        List<?> before = null;
        for (BigDecimal speed : SPEEDS) {
            PartPlan there = AtSpeed.plan(counts, speed);
            List<?> segments = there.bars().stream().map(BarPlan::segments).toList();
            List<Integer> ways = segments.equals(before) ? paces.get(paces.size() - 1).ways()
                    : indexes(there == counts.plan() ? written : ways(there, systems, names), bars);
            if (!paces.isEmpty() && paces.get(paces.size() - 1).ways().equals(ways)) {
                paces.remove(paces.size() - 1);
            }
            paces.add(new Pace(speed, ways));
            before = segments;
        }
        return new PageWords(bars.stream().map(List::copyOf).toList(), List.copyOf(paces));
    }

    /** Every place of every way. */
    Stream<Place> places() {
        return bars.stream().flatMap(List::stream).flatMap(way -> way.places().stream());
    }

    /** Which of the ways known so far each bar has; those that are new are added. */
    private static List<Integer> indexes(List<Way> ways, List<List<Way>> known) {
        List<Integer> indexes = new ArrayList<>();
        for (int bar = 0; bar < ways.size(); bar++) {
            List<Way> of = known.get(bar);
            if (!of.contains(ways.get(bar))) {
                of.add(ways.get(bar));
            }
            indexes.add(of.indexOf(ways.get(bar)));
        }
        return List.copyOf(indexes);
    }

    private static List<Way> ways(PartPlan plan, List<CountingSystem> systems, NoteNames names) {
        List<List<Place>> places = places(plan, systems);
        List<List<ChangeMark>> marks = ChangeWords.of(plan);
        List<Way> ways = new ArrayList<>();
        for (int bar = 0; bar < places.size(); bar++) {
            ways.add(new Way(places.get(bar),
                    plan.bars().get(bar).segments().stream().flatMap(segment -> segment.felt().stream()).toList(),
                    marks.get(bar).stream().map(mark -> new Mark(mark.at(), mark.text(names), mark.isOfUnit())).toList()));
        }
        return ways;
    }

    /** When is said what, and in which stages, is the plan's: only the words are those of a system. */
    private static List<List<Place>> places(PartPlan plan, List<CountingSystem> systems) {
        List<TreeMap<Offset, Place>> bars = said(Words.of(plan, systems.get(0)));
        for (CountingSystem system : systems.subList(1, systems.size())) {
            List<BarCounts> counts = Words.of(plan, system).bars();
            for (int bar = 0; bar < bars.size(); bar++) {
                Map<Offset, String> words = new HashMap<>();
                counts.get(bar).segments().forEach(segment -> segment.counts().forEach(count -> words.put(count.at(), count.say())));
                BarTimeline timeline = counts.get(bar).timeline();
                // a beat inside a tuplet that is counted through is no count
                bars.get(bar).replaceAll((at, place) -> place.with(words.containsKey(at) ? words.get(at)
                        : Words.onBeat(timeline, timeline.beatAt(at), system)));
            }
        }
        return bars.stream().map(bar -> List.copyOf(bar.values())).toList();
    }

    private static List<TreeMap<Offset, Place>> said(PartCounts counts) {
        List<TreeMap<Offset, Place>> bars = new ArrayList<>();
        Stretch whole = Stretch.of(counts);
        counts.bars().forEach(bar -> bars.add(new TreeMap<>()));
        for (Stage stage : Stage.values()) {
            for (Thinning.Thinned count : Thinning.of(whole, stage)) {
                int bit = count.said() ? 1 << stage.ordinal() : 0;
                bars.get(count.bar()).merge(count.count().at(), new Place(count.count().at(), count.count().played(), bit,
                        List.of(count.count().say())),
                        (before, now) -> new Place(now.at(), now.played(), before.stages() | now.stages(), before.words()));
            }
        }
        return bars;
    }
}
