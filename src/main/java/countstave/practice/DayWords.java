package countstave.practice;

import countstave.plain.Phrases;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** The plan of days in words; the same on every page. */
public final class DayWords {

    private DayWords() {
    }

    /** What is done on a day of rest. */
    public static String rest(Phrases phrases) {
        return phrases.text("day.rest");
    }

    /** {@code Day 3}; {@code Day 3, Thu 2026-12-03}. */
    public static String day(DayPlan.Day day, Phrases phrases) {
        String number = String.valueOf(day.number());
        return day.date() == null ? phrases.text("day", number) : phrases.text("day.dated", number,
                phrases.weekday(day.date().getDayOfWeek()), day.date().toString());
    }

    /** {@code new seams, 12 min}: all of a day's work of one kind. */
    public static String group(DayPlan.Day day, DayPlan.Kind kind, Phrases phrases) {
        int minutes = day.items().stream().filter(i -> i.kind() == kind).mapToInt(DayPlan.Item::minutes).sum();
        return phrases.text("day.group", kind.title(phrases), String.valueOf(minutes));
    }

    /** How the plan is made and how to go through it, a sentence each. The rules are common practice, no source. */
    public static List<String> rules(DayPlan plan, Phrases phrases) {
        List<String> rules = new ArrayList<>(List.of(phrases.text("day.rule", String.valueOf(plan.options().minutes())),
                phrases.text("day.spacing")));
        if (!plan.left().isEmpty()) {
            rules.add(phrases.text("day.left", bars(plan.left()), numbers(plan.left())));
        }
        return rules;
    }

    /** {@code Read at sight, without a plan: bars 1–2, 9}; nothing where there are none. */
    public static String atSight(PracticePlan plan, Phrases phrases) {
        List<Passage> atSight = plan.atSight();
        return atSight.isEmpty() ? "" : phrases.text("day.at-sight", bars(atSight), numbers(atSight));
    }

    /** For the choice of a plural. */
    private static int bars(List<Passage> passages) {
        return passages.stream().mapToInt(p -> p.stretch().size()).sum();
    }

    private static String numbers(List<Passage> passages) {
        return passages.stream().map(p -> p.stretch().numbers()).collect(Collectors.joining(", "));
    }
}
