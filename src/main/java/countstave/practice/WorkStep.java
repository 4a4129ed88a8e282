package countstave.practice;

import countstave.score.Event;
import countstave.score.Look;
import countstave.score.Voice;
import java.util.ArrayList;
import java.util.List;

/** The order of work on a passage, in the trade's words (common practice, no source). */
public enum WorkStep {
    COUNT_AND_FOOT("Count and foot", "say every word, tap the beats with a foot", "on the beats"),
    COUNT_AND_CLAP("Count and clap the rhythm", "say every word, clap what is played", "on the beats and on every word"),
    HANDS_ALONE("Hands alone", "say every word, play the hands", "on the beats and on every word"),
    FEET_ALONE("Feet alone", "say every word, play the feet", "on the beats and on every word"),
    ALL("All", "say every word, play everything", "on the beats and on every word"),
    THIN("Thin the count", "row by row: what a row does not say is felt", "on the beats and on what is still said"),
    TEMPO("Up in tempo", "box by box; as much as can be said is said again at each new tempo", "on the beats; later silent for some bars");

    private final String title;
    private final String doing;
    private final String click;

    WorkStep(String title, String doing, String click) {
        this.title = title;
        this.doing = doing;
        this.click = click;
    }

    /** Its name among players. */
    public String title() {
        return title;
    }

    /** What is done. */
    public String doing() {
        return doing;
    }

    /** Where the click sounds. */
    public String click() {
        return click;
    }

    /** One line for the player. */
    public String line() {
        return title + ": " + doing + "; the click is " + click + ".";
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
