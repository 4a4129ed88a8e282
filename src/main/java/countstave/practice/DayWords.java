package countstave.practice;

import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The plan of days in words; the same on every page. */
public final class DayWords {

    /** What is done on a day of rest. */
    public static final String REST = "rest: no clicks, no counting";

    private DayWords() {
    }

    /** {@code Day 3}; {@code Day 3, Thu 2026-12-03}. */
    public static String day(DayPlan.Day day) {
        return "Day " + day.number() + (day.date() == null ? ""
                : ", " + day.date().getDayOfWeek().getDisplayName(TextStyle.SHORT, Locale.ENGLISH) + " " + day.date());
    }

    /** {@code new seams, 12 min}: all of a day's work of one kind. */
    public static String group(DayPlan.Day day, DayPlan.Kind kind) {
        return kind.title() + ", "
                + day.items().stream().filter(i -> i.kind() == kind).mapToInt(DayPlan.Item::minutes).sum() + " min";
    }

    /** How the plan is made and how to go through it, a sentence each. */
    public static List<String> rules(DayPlan plan) {
        List<String> rules = new ArrayList<>(List.of(plan.options().minutes() + " minutes a day. " + DayPlan.RULE,
                DayPlan.SPACING));
        if (!plan.left().isEmpty()) {
            rules.add("No time is left for bars " + plan.left().stream().map(p -> p.stretch().numbers())
                    .collect(Collectors.joining(", ")) + ": give more with --days or --minutes.");
        }
        return rules;
    }

    /** {@code Read at sight, without a plan: bars 1–2, 9}; nothing where there are none. */
    public static String atSight(PracticePlan plan) {
        List<Passage> atSight = plan.atSight();
        return atSight.isEmpty() ? "" : "Read at sight, without a plan (no change, easily said): bars "
                + atSight.stream().map(p -> p.stretch().numbers()).collect(Collectors.joining(", ")) + ".";
    }
}
