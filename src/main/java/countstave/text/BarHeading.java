package countstave.text;

import countstave.count.SpokenUnit;
import countstave.grid.BarPlan;
import countstave.grid.Segment;
import countstave.plain.SafeText;
import countstave.score.Bar;
import countstave.score.BarStyle;
import java.util.LinkedHashSet;
import java.util.Set;

/** The line above a bar: its number and meter, everything that is counted in it, and how fast that is. */
final class BarHeading {

    private BarHeading() {
    }

    static String of(BarPlan plan, TextOptions options) {
        Bar bar = plan.timeline().bar();
        StringBuilder text = new StringBuilder("bar ").append(SafeText.of(bar.called())).append("   ").append(bar.meter());
        if (bar.phase().isPositive()) {
            text.append(bar.index() == 0 ? " (pickup)" : " (second part of a bar)");
        }
        BarStyle style = bar.look().style();
        if (style.runNumber() > 0) {
            text.append("   ").append(switch (style.kind()) {
                case MULTI_REST -> "rest, bar " + style.runNumber() + " of " + Math.max(style.span(), style.runNumber());
                case NONE -> "rest, bar " + style.runNumber();
                case SLASH -> "slashes, bar " + style.runNumber();
                default -> "repeat, bar " + style.runNumber();
            });
        }
        if (!plan.segments().isEmpty()) {
            text.append("   ").append(String.join(", ", units(plan, options)));
        }
        return text.toString();
    }

    /** How fast the bar is said and played; empty where nothing is counted. */
    static String rates(BarPlan plan) {
        return plan.segments().isEmpty() ? "" : new Rates(plan).text();
    }

    /** Every unit once, in order of appearance. */
    private static Set<String> units(BarPlan plan, TextOptions options) {
        Set<String> names = new LinkedHashSet<>();
        for (Segment segment : plan.segments()) {
            names.add(SpokenUnit.of(plan.timeline(), segment).name(options.names()));
        }
        return names;
    }
}
