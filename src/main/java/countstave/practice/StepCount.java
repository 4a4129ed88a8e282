package countstave.practice;

import countstave.count.NoteNames;
import countstave.score.Tempo;
import countstave.time.Exact;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * How a passage is counted on some of its tempo steps: at each of them this is the plan of that tempo.
 *
 * @param number 1 for the count of the slowest step
 * @param steps the tempo steps in a row on which it is counted so, at least one
 * @param stretch the bars with this count, at their written tempi
 * @param sayable for each stage the highest whole tempo within the voice limit, in the unit of the written tempo
 * @param breaths breath marks for the slowest of its steps, hence for the others
 */
public record StepCount(int number, List<TempoLadder.Rung> steps, Stretch stretch, Map<Stage, Integer> sayable,
        List<Breath.Mark> breaths) {

    /** All counts of a passage from the slowest step to the written tempo, whose count is {@code written} itself. */
    static List<StepCount> of(Stretch written, PracticeOptions options, CountsAtTempo counts) {
        List<TempoLadder.Rung> ladder = TempoLadder.of(written.tempo(), slowest(written, options, counts));
        List<StepCount> found = new ArrayList<>();
        List<TempoLadder.Rung> steps = new ArrayList<>();
        Stretch now = null;
        for (int i = 0; i < ladder.size(); i++) {
            boolean last = i == ladder.size() - 1;
            Stretch next = last ? written : counts.of(written, ladder.get(i).tempo().perMinute());
            if (now == null || !now.counting().equals(next.counting())) {
                if (now != null) {
                    found.add(of(found.size() + 1, steps, now, options));
                }
                steps = new ArrayList<>();
                now = next;
            } else if (last) {
                now = written;
            }
            steps.add(ladder.get(i));
        }
        found.add(of(found.size() + 1, steps, now, options));
        return List.copyOf(found);
    }

    /** The highest whole tempo, half the written one at most, at which the count of that very tempo can be said. */
    private static int slowest(Stretch written, PracticeOptions options, CountsAtTempo counts) {
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

    private static StepCount of(int number, List<TempoLadder.Rung> steps, Stretch stretch, PracticeOptions options) {
        Clock clock = Clock.of(stretch);
        Tempo written = stretch.tempo();
        Map<Stage, Integer> sayable = new EnumMap<>(Stage.class);
        sayable.put(Stage.ALL, SpeechRate.of(stretch, clock).highestTempo(written, options.voiceLimit()));
        for (Stage stage : List.of(Stage.BEATS_AND_PLAYED, Stage.BEATS, Stage.STRONG_BEATS, Stage.NONE)) {
            List<Offset> said = Thinning.of(stretch, stage).stream().filter(Thinning.Thinned::said)
                    .map(t -> stretch.position(t.bar(), t.count().at())).toList();
            sayable.put(stage, SpeechRate.of(said, stretch.end(), clock).highestTempo(written, options.voiceLimit()));
        }
        Exact slowest = Exact.of(steps.get(0).tempo().perMinute()).over(Exact.of(written.perMinute()));
        return new StepCount(number, List.copyOf(steps), stretch, sayable,
                Breath.marks(stretch, clock.faster(slowest), options.breath(), options.voiceLimit()));
    }

    /** The slowest tempo at which it is counted so. */
    public Tempo from() {
        return steps.get(0).tempo();
    }

    /** The fastest. */
    public Tempo to() {
        return steps.get(steps.size() - 1).tempo();
    }

    /** What stands above it where there are several: {@code Count 2, from ♩ = 104 on}. */
    public String title(NoteNames names) {
        return "Count " + number + ", " + (number == 1 ? "up to " + names.tempo(to()) : "from " + names.tempo(from()) + " on");
    }

    /**
     * The first stage that can be said at a step within the voice limit: {@link Stage#ALL} on the lower ones, thinner
     * ones where the tempo outruns the voice.
     */
    public Stage sayableStage(TempoLadder.Rung step) {
        for (Stage stage : Stage.values()) {
            if (step.tempo().perMinute().compareTo(BigDecimal.valueOf(sayable.get(stage))) <= 0) {
                return stage;
            }
        }
        return Stage.NONE;
    }

    /** Whether a note is felt in it. */
    public boolean hasFelt() {
        return stretch.slices().stream().anyMatch(slice -> slice.segment().hasFelt());
    }

    /** Whether fewer words are said than in {@code other}. */
    public boolean isLighterThan(StepCount other) {
        return words() < other.words();
    }

    private int words() {
        return stretch.slices().stream().mapToInt(slice -> slice.counts().counts().size()).sum();
    }

    /** Whether at {@code stage} the same words are said at the same places as in {@code other}. */
    public boolean saysTheSame(StepCount other, Stage stage) {
        return said(stage).equals(other.said(stage));
    }

    private List<Object> said(Stage stage) {
        List<Object> said = new ArrayList<>();
        for (Thinning.Thinned thinned : Thinning.of(stretch, stage)) {
            if (thinned.said()) {
                said.add(List.of(thinned.bar(), thinned.count().at(), thinned.count().say(), thinned.count().played()));
            }
        }
        return said;
    }
}
