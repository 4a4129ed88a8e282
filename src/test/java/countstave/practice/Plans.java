package countstave.practice;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.count.Count;
import countstave.count.FeltNotes;
import countstave.count.HandPlans;
import countstave.count.PartCounts;
import countstave.grid.PlanOptions;
import countstave.musicxml.ScoreFile;
import countstave.score.PartTimeline;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.function.IntFunction;

/** Practice plans of whole scores for tests, and what has to be said at a stage, taken from the plan itself. */
public final class Plans {

    private static final Map<String, CountedScore> COUNTED = new ConcurrentHashMap<>();
    /** By identity: scores are not compared bar by bar. */
    private static final Map<CountedScore, List<PracticePlan>> PLANNED = Collections.synchronizedMap(new IdentityHashMap<>());

    private Plans() {
    }

    /** A demo score, counted once for all tests. */
    public static CountedScore counted(String score) {
        return COUNTED.computeIfAbsent(score, name -> CountedScore.of(
                ScoreFile.load(Path.of("scores", name + ".musicxml")), CountingOptions.defaults()));
    }

    public static CountedScore countedXml(String xml) {
        return CountedScore.of(ScoreFile.of("test.musicxml", xml.getBytes(StandardCharsets.UTF_8)),
                CountingOptions.defaults());
    }

    /** Counted with every note said at whatever speed, so that the count is the same on every tempo step. */
    public static CountedScore everyNoteSaid(String xml) {
        CountingOptions usual = CountingOptions.defaults();
        PlanOptions all = new PlanOptions(usual.plan().weights(), usual.plan().voiceLimit(), false, false);
        return CountedScore.of(ScoreFile.of("test.musicxml", xml.getBytes(StandardCharsets.UTF_8)),
                usual.with(all, FeltNotes.NO));
    }

    /**
     * A plan whose counts at each tempo are made by hand.
     *
     * @param counts at the written tempo
     * @param planning from bars at their tempi to their counts
     */
    public static PracticePlan by(PartCounts counts, Function<PartTimeline, PartCounts> planning) {
        return PracticePlan.of(counts, PracticeOptions.DEFAULT, new CountsAtTempo(counts, planning));
    }

    /**
     * The same with every bar of the first part counted as {@code unit} says for the quarters a minute at its start, in
     * the notation of {@link HandPlans}.
     */
    public static PracticePlan by(CountedScore counted, IntFunction<String> unit) {
        Function<PartTimeline, PartCounts> planning = timeline -> HandPlans.counts(timeline, timeline.bars().stream()
                .map(bar -> unit.apply(bar.tempo().perMinute().intValue())).toArray(String[]::new));
        return by(planning.apply(counted.parts().get(0).timeline()), planning);
    }

    public static List<PracticePlan> of(CountedScore counted) {
        return COUNTED.values().stream().anyMatch(one -> one == counted) ? PLANNED.computeIfAbsent(counted, Plans::planned) : planned(counted);
    }

    private static List<PracticePlan> planned(CountedScore counted) {
        return counted.parts().stream().map(part -> PracticePlan.of(part, PracticeOptions.DEFAULT)).toList();
    }

    /**
     * The said counts of a bar in order, the breath sign before those before which one breathes.
     *
     * @param bar from the passage's first bar
     */
    public static List<String> said(StepCount counted, Stage stage, int bar) {
        List<String> said = new ArrayList<>();
        for (Thinning.Thinned thinned : Thinning.of(counted.stretch(), stage)) {
            Count count = thinned.count();
            if (thinned.bar() == bar && thinned.said()) {
                boolean breath = counted.breaths().stream()
                        .anyMatch(mark -> mark.bar() == bar && mark.at().equals(count.at()));
                said.add((breath ? "^" : "") + count.say());
            }
        }
        return said;
    }

    /** The said counts of all bars of a passage. */
    public static List<String> said(StepCount counted, Stage stage) {
        List<String> said = new ArrayList<>();
        for (int bar = 0; bar < counted.stretch().size(); bar++) {
            said.addAll(said(counted, stage, bar));
        }
        return said;
    }
}
