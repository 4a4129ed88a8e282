package countstave.page;

import countstave.count.ChangeMark;
import countstave.count.ChangeWords;
import countstave.count.CountingSystem;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.grid.PartPlan;
import countstave.practice.AtSpeed;
import countstave.practice.Passage;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.practice.StepCount;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The counts of a part bar by bar, as they are planned at several speeds: when each comes, at which stages it is said, and
 * its word in every counting system.
 *
 * @param bars the ways in which each bar is counted at one speed or another, that of the written tempo first
 * @param paces which of its ways each bar has at which speed, the slowest first
 * @param steps which of its ways each bar of a passage has on the tempo steps of a count, by identity
 */
record PageWords(List<List<Way>> bars, List<Pace> paces, Map<StepCount, List<Integer>> steps) {

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
        BarPlaces places = new BarPlaces(systems);
        List<Way> written = ways(counts.plan(), 0, places, names);
        List<List<Way>> bars = new ArrayList<>();
        written.forEach(way -> bars.add(new ArrayList<>(List.of(way))));
        List<Pace> paces = new ArrayList<>();
        for (BigDecimal speed : SPEEDS) {
            PartPlan there = AtSpeed.plan(counts, speed);
            List<Integer> ways = indexes(there == counts.plan() ? written : ways(there, 0, places, names), 0, bars);
            if (!paces.isEmpty() && paces.get(paces.size() - 1).ways().equals(ways)) {
                paces.remove(paces.size() - 1);
            }
            paces.add(new Pace(speed, ways));
        }
        Map<StepCount, List<Integer>> steps = new IdentityHashMap<>();
        for (Passage passage : plan.passages()) {
            for (StepCount count : passage.sameAs() == 0 ? passage.counts() : List.<StepCount>of()) {
                int first = count.stretch().first();
                int before = first - count.around().first();
                List<Way> around = ways(AtSpeed.plan(counts, count), first - before, places, names);
                steps.put(count, indexes(around.subList(before, before + count.stretch().size()), first, bars));
            }
        }
        return new PageWords(bars.stream().map(List::copyOf).toList(), List.copyOf(paces), steps);
    }

    /** Every place of every way. */
    Stream<Place> places() {
        return bars.stream().flatMap(List::stream).flatMap(way -> way.places().stream());
    }

    /** Which of the ways known so far each bar from {@code first} on has; those that are new are added. */
    private static List<Integer> indexes(List<Way> ways, int first, List<List<Way>> known) {
        List<Integer> indexes = new ArrayList<>();
        for (int bar = 0; bar < ways.size(); bar++) {
            List<Way> of = known.get(first + bar);
            if (!of.contains(ways.get(bar))) {
                of.add(ways.get(bar));
            }
            indexes.add(of.indexOf(ways.get(bar)));
        }
        return List.copyOf(indexes);
    }

    private static List<Way> ways(PartPlan plan, int first, BarPlaces all, NoteNames names) {
        List<List<Place>> places = all.of(plan, first);
        List<List<ChangeMark>> marks = ChangeWords.of(plan);
        List<Way> ways = new ArrayList<>();
        for (int bar = 0; bar < places.size(); bar++) {
            ways.add(new Way(places.get(bar),
                    plan.bars().get(bar).segments().stream().flatMap(segment -> segment.felt().stream()).toList(),
                    marks.get(bar).stream().map(mark -> new Mark(mark.at(), mark.text(names), mark.isOfUnit())).toList()));
        }
        return ways;
    }
}
