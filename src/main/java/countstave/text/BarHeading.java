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
        StringBuilder text = new StringBuilder(options.phrase("bar", SafeText.of(bar.called()))).append("   ").append(bar.meter());
        if (bar.phase().isPositive()) {
            text.append(" (").append(options.phrase(bar.index() == 0 ? "bar.pickup" : "bar.second-part")).append(')');
        }
        BarStyle style = bar.look().style();
        if (style.runNumber() > 0) {
            String number = String.valueOf(style.runNumber());
            text.append("   ").append(switch (style.kind()) {
                case MULTI_REST -> options.phrase("bar.rest.of", number, String.valueOf(Math.max(style.span(), style.runNumber())));
                case NONE -> options.phrase("bar.rest", number);
                case SLASH -> options.phrase("bar.slashes", number);
                default -> options.phrase("bar.repeat", number);
            });
        }
        if (!plan.segments().isEmpty()) {
            text.append("   ").append(String.join(", ", units(plan, options)));
        }
        return text.toString();
    }

    /** How fast the bar is said and played; empty where nothing is counted. */
    static String rates(BarPlan plan, TextOptions options) {
        return plan.segments().isEmpty() ? "" : new Rates(plan).text(options);
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
