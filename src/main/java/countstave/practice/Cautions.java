package countstave.practice;

import java.util.List;

/** What stands wherever somebody is asked to breathe, listen or repeat. General care, no medical advice. */
public final class Cautions {

    public static final String BREATH = "Breathe calmly and say the counts without pressing. Stop as soon as you feel"
            + " light-headed or short of breath; if it comes back, ask a doctor.";

    public static final String SOUND = "Begin with the volume low, above all in headphones, and turn it up only as far"
            + " as you need. Take breaks; ringing ears mean it was too loud or too long.";

    public static final String REPEATING = "Rest often. Stop when something hurts or goes numb, and ask your teacher or"
            + " a doctor before you go on.";

    public static final List<String> ALL = List.of(BREATH, SOUND, REPEATING);

    private Cautions() {
    }
}
