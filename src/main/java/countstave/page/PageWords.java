package countstave.page;

import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.count.Words;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.practice.Thinning;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The counts of a part bar by bar: when each comes, at which stages it is said, and its word in every counting system.
 *
 * @param bars the places of each bar, in the order of time
 */
record PageWords(List<List<Place>> bars) {

    /**
     * A place where something is said at some stage.
     *
     * @param at from the bar's start
     * @param played whether a note begins there
     * @param stages one bit a stage, that of {@link Stage#ALL} lowest: whether it is said
     * @param words one for each counting system
     */
    record Place(Offset at, boolean played, int stages, List<String> words) {
    }

    static PageWords of(PracticePlan plan, List<CountingSystem> systems) {
        List<TreeMap<Offset, Place>> bars = new ArrayList<>();
        plan.counts().bars().forEach(bar -> bars.add(new TreeMap<>()));
        for (CountingSystem system : systems) {
            List<TreeMap<Offset, Place>> said = said(Words.of(plan.counts().plan(), system));
            for (int bar = 0; bar < bars.size(); bar++) {
                for (Map.Entry<Offset, Place> place : said.get(bar).entrySet()) {
                    Place one = place.getValue();
                    bars.get(bar).merge(place.getKey(), one, (before, now) -> new Place(now.at(), now.played(), now.stages(),
                            joined(before.words(), now.words())));
                }
            }
        }
        return new PageWords(bars.stream().map(bar -> List.copyOf(bar.values())).toList());
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

    private static List<String> joined(List<String> before, List<String> now) {
        List<String> all = new ArrayList<>(before);
        all.addAll(now);
        return List.copyOf(all);
    }
}
