package countstave.practice;

import countstave.plain.Phrases;
import java.util.ArrayList;
import java.util.List;

/**
 * A tempo step and what changes with it, in words.
 *
 * @param rung the step
 * @param words another count or another stage than on the step before: {@code count 2, half}; mostly empty
 */
public record StepTurn(TempoLadder.Rung rung, String words) {

    /** The steps of a passage in order. */
    public static List<StepTurn> of(Passage passage, Phrases phrases) {
        List<StepTurn> turns = new ArrayList<>();
        int counted = 1;
        Stage said = Stage.ALL;
        for (StepCount count : passage.counts()) {
            for (TempoLadder.Rung rung : count.steps()) {
                Stage stage = count.sayableStage(rung);
                List<String> words = new ArrayList<>();
                if (count.number() != counted) {
                    words.add(phrases.text("turn.count", String.valueOf(count.number())));
                }
                if (stage != said) {
                    words.add(stage.label(phrases));
                }
                turns.add(new StepTurn(rung, String.join(", ", words)));
                counted = count.number();
                said = stage;
            }
        }
        return turns;
    }
}
