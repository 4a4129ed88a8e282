package countstave.practice;

import countstave.plain.Phrases;
import countstave.score.Event;
import countstave.score.Look;
import countstave.score.Voice;
import java.util.ArrayList;
import java.util.List;

/** The order of work on a passage, in the trade's words (common practice, no source). */
public enum WorkStep {
    COUNT_AND_FOOT("count-and-foot"), COUNT_AND_CLAP("count-and-clap"), HANDS_ALONE("hands-alone"), FEET_ALONE("feet-alone"),
    ALL("all"), THIN("thin"), TEMPO("tempo");

    private final String id;

    WorkStep(String id) {
        this.id = id;
    }

    public String title(Phrases phrases) {
        return phrases.text("work." + id);
    }

    /** What the player does. */
    public String doing(Phrases phrases) {
        return phrases.text("work." + id + ".doing");
    }

    /** On what the click sounds. */
    public String click(Phrases phrases) {
        return phrases.text("work." + id + ".click");
    }

    /** One line for the player. */
    public String line(Phrases phrases) {
        return phrases.text("work.line", title(phrases), doing(phrases), click(phrases));
    }

    /** The steps for a part: hands and feet are only told apart where a drummer plays with both. */
    public static List<WorkStep> of(PracticePlan plan) {
        List<WorkStep> steps = new ArrayList<>(List.of(values()));
        if (!hasHandsAndFeet(plan)) {
            steps.removeAll(List.of(HANDS_ALONE, FEET_ALONE));
        }
        return steps;
    }

    /** Drum notation has stems up for the hands and stems down for the feet (common practice, no source). */
    private static boolean hasHandsAndFeet(PracticePlan plan) {
        boolean hands = false;
        boolean feet = false;
        for (int i = 0; i < plan.counts().bars().size(); i++) {
            List<Voice> voices = plan.counts().bars().get(i).bar().voices();
            for (int v = 0; v < voices.size(); v++) {
                for (Event event : voices.get(v).events()) {
                    if (event.isAttack() && event.heads().stream().anyMatch(head -> head.pitch().unpitched())) {
                        Look.Stem stem = event.look().stem();
                        boolean down = stem == null ? v > 0 : stem == Look.Stem.DOWN;
                        hands |= !down;
                        feet |= down;
                    }
                }
            }
        }
        return hands && feet;
    }
}
