package countstave.practice;

import countstave.score.BarTimeline;
import countstave.score.Tempo;
import countstave.time.Exact;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Finds the tempo steps of passages and how they are counted on each: the plan of that tempo. Steps in a row that are
 * counted alike make one {@link StepCount}.
 */
final class StepCounts {

    private final CountsAtTempo counts;
    private final PracticeOptions options;
    /** What was found for passages that are alike with the bars around them. */
    private final Map<List<Object>, List<StepCount>> known = new HashMap<>();

    StepCounts(CountsAtTempo counts, PracticeOptions options) {
        this.counts = counts;
        this.options = options;
    }

    /** From the slowest step to the written tempo, whose count is {@code written} itself. */
    List<StepCount> of(Stretch written) {
        List<Object> content = content(written);
        List<StepCount> alike = known.get(content);
        if (alike != null) {
            Stretch wide = counts.wide(written);
            return alike.stream().map(count -> count.in(written, wide)).toList();
        }
        List<StepCount> found = find(written);
        known.put(content, found);
        return found;
    }

    /** The count at each tempo that was asked for, each a single step. */
    List<StepCount> asked(Stretch written) {
        List<StepCount> asked = new ArrayList<>();
        for (BigDecimal perMinute : options.at()) {
            Tempo tempo = new Tempo(written.tempo().unit(), perMinute);
            Stretch there = perMinute.compareTo(written.tempo().perMinute()) == 0 ? written : counts.of(written, perMinute);
            asked.add(count(asked.size() + 1, List.of(new TempoLadder.Rung(tempo, TempoLadder.CLEAN)), there, written));
        }
        return List.copyOf(asked);
    }

    private List<Object> content(Stretch written) {
        List<Object> content = new ArrayList<>(written.counting());
        content.add(written.unitBefore());
        content.add(written.first() - counts.firstAround(written));
        for (BarTimeline bar : counts.around(written)) {
            content.add(List.of(bar.bar().length(), bar.bar().phase(), bar.bar().meter(),
                    bar.bar().look().style().runNumber(), bar.beats(), bar.attacks(), bar.lines(), bar.tuplets(), bar.tempi(), bar.swung() == null));
            content.add(bar.swung());
        }
        return content;
    }

    private List<StepCount> find(Stretch written) {
        List<TempoLadder.Rung> ladder = TempoLadder.of(written.tempo(), slowest(written));
        List<StepCount> found = new ArrayList<>();
        List<TempoLadder.Rung> steps = new ArrayList<>();
        Stretch now = null;
        for (int i = 0; i < ladder.size(); i++) {
            Stretch next = i == ladder.size() - 1 ? written : counts.of(written, ladder.get(i).tempo().perMinute());
            boolean goesOn = now != null && now.counting().equals(next.counting());
            if (now != null && !goesOn) {
                found.add(count(found.size() + 1, steps, now, written));
                steps = new ArrayList<>();
            }
            now = goesOn && next != written ? now : next;
            steps.add(ladder.get(i));
        }
        found.add(count(found.size() + 1, steps, now, written));
        return List.copyOf(found);
    }

    /** The highest whole tempo, half the written one at most, at which the count of that very tempo can be said. */
    private int slowest(Stretch written) {
        int least = Clock.SLOWEST.intValueExact();
        int tempo = written.tempo().perMinute().divide(BigDecimal.valueOf(2), 0, RoundingMode.FLOOR).intValueExact();
        while (tempo > least) {
            Stretch there = counts.of(written, BigDecimal.valueOf(tempo));
            int sayable = SpeechRate.of(there, Clock.of(there)).highestTempo(written.tempo(), options.voiceLimit());
            if (sayable >= tempo) {
                break;
            }
            tempo = sayable;
        }
        return tempo;
    }

    private StepCount count(int number, List<TempoLadder.Rung> steps, Stretch stretch, Stretch passage) {
        Tempo written = stretch.tempo();
        Exact slowest = Exact.of(steps.get(0).tempo().perMinute()).over(Exact.of(written.perMinute()));
        Stretch around = stretch == passage ? counts.wide(passage)
                : counts.wide(passage, steps.get(0).tempo().perMinute());
        return new StepCount(number, List.copyOf(steps), stretch, around, sayable(stretch, written),
                sayable(around, written),
                Breath.marks(stretch, Clock.of(stretch).faster(slowest), options.breath(), options.voiceLimit()),
                StepCount.stages(stretch));
    }

    /** @param written the tempo in which the highest is given */
    private Map<Stage, Integer> sayable(Stretch stretch, Tempo written) {
        Clock clock = Clock.of(stretch);
        Map<Stage, Integer> sayable = new EnumMap<>(Stage.class);
        sayable.put(Stage.ALL, SpeechRate.of(stretch, clock).highestTempo(written, options.voiceLimit()));
        for (Stage stage : EnumSet.complementOf(EnumSet.of(Stage.ALL))) {
            List<Offset> said = Thinning.of(stretch, stage).stream().filter(Thinning.Thinned::said)
                    .map(t -> stretch.position(t.bar(), t.count().at())).toList();
            sayable.put(stage, SpeechRate.of(said, stretch.end(), clock).highestTempo(written, options.voiceLimit()));
        }
        return sayable;
    }
}
