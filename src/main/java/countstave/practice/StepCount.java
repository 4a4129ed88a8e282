package countstave.practice;

import countstave.count.NoteNames;
import countstave.score.Tempo;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * How a passage is counted on some of its tempo steps: at each of them this is the plan of that tempo.
 *
 * @param number 1 for the count of the slowest step
 * @param steps the tempo steps in a row on which it is counted so, at least one
 * @param stretch the bars with this count, at their written tempi
 * @param around the same with one bar more on either side where there is one, as counted at the first of these steps; of
 *     the count of the written tempo as counted in the score
 * @param sayable for each stage the highest whole tempo within the voice limit, in the unit of the written tempo
 * @param sayableAround the same for {@code around}, from which loops are taken, in the same unit
 * @param breaths breath marks for the slowest of its steps, hence for the others
 * @param stages the stages that are practised: those at which something else is said than at the one before
 */
public record StepCount(int number, List<TempoLadder.Rung> steps, Stretch stretch, Stretch around,
        Map<Stage, Integer> sayable, Map<Stage, Integer> sayableAround, List<Breath.Mark> breaths,
        List<Stage> stages) {

    /**
     * The same for a passage that is written alike, the bars around it too.
     *
     * @param wide the passage with these bars
     */
    StepCount in(Stretch alike, Stretch wide) {
        return new StepCount(number, steps, alike.countedAs(stretch), wide.countedAs(around), sayable, sayableAround,
                breaths, stages);
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
        return number == 1 ? names.phrase("count.title.up-to", "1", names.tempo(to()))
                : names.phrase("count.title.from", String.valueOf(number), names.tempo(from()));
    }

    /**
     * The first stage that can be said at a step within the voice limit: {@link Stage#ALL} on the lower ones, thinner
     * ones where the tempo outruns the voice.
     */
    public Stage sayableStage(TempoLadder.Rung step) {
        for (Stage stage : Stage.values()) {
            if (isSayable(step, stage)) {
                return stage;
            }
        }
        return Stage.NONE;
    }

    /** The first stage that can be said at a step in the bars around it too: a loop of a seam runs into them. */
    public Stage sayableStageAround(TempoLadder.Rung step) {
        for (Stage stage : Stage.values()) {
            if (isSayable(step, stage) && isWithin(step, sayableAround.get(stage))) {
                return stage;
            }
        }
        return Stage.NONE;
    }

    /** Whether a stage can be said at a step within the voice limit. */
    public boolean isSayable(TempoLadder.Rung step, Stage stage) {
        return isWithin(step, sayable.get(stage));
    }

    private static boolean isWithin(TempoLadder.Rung step, int highest) {
        return step.tempo().perMinute().compareTo(BigDecimal.valueOf(highest)) <= 0;
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
        return said(stretch, stage).equals(said(other.stretch, stage));
    }

    /** The {@code stages} of a stretch. */
    static List<Stage> stages(Stretch stretch) {
        List<Stage> stages = new ArrayList<>();
        List<Object> before = null;
        for (Stage stage : Stage.values()) {
            List<Object> said = said(stretch, stage);
            if (!said.equals(before)) {
                stages.add(stage);
                before = said;
            }
        }
        return List.copyOf(stages);
    }

    private static List<Object> said(Stretch stretch, Stage stage) {
        List<Object> said = new ArrayList<>();
        for (Thinning.Thinned thinned : Thinning.of(stretch, stage)) {
            if (thinned.said()) {
                said.add(List.of(thinned.bar(), thinned.count().at(), thinned.count().say(), thinned.count().played()));
            }
        }
        return said;
    }
}
