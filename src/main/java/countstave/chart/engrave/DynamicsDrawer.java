package countstave.chart.engrave;

import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Role;
import countstave.chart.shape.Text;
import countstave.score.Bar;
import countstave.score.Direction;
import countstave.score.Placement;
import java.util.List;
import java.util.Map;

/** Dynamics under the staff (above where the file says so), all of a bar on one baseline. */
final class DynamicsDrawer {

    private static final Map<Character, String> LETTERS = Map.of('p', "dynamicPiano", 'm', "dynamicMezzo", 'f',
            "dynamicForte", 'r', "dynamicRinforzando", 's', "dynamicSforzando", 'z', "dynamicZ", 'n', "dynamicNiente");
    private static final double GAP = 0.5;
    private static final double TEXT_SIZE = 2;

    private final Canvas canvas;
    private final int lines;

    DynamicsDrawer(Canvas canvas, int lines) {
        this.canvas = canvas;
        this.lines = lines;
    }

    void draw(Bar bar, int staff, Placing placing) {
        List<Direction> dynamics = bar.directions().stream().filter(d -> d.kind() == Direction.Kind.DYNAMICS
                && d.staff() == staff && d.text() != null && !d.text().isBlank()).toList();
        for (Placement side : Placement.values()) {
            List<Direction> here = dynamics.stream().filter(d -> side(d) == side).toList();
            if (!here.isEmpty()) {
                row(here, side, placing);
            }
        }
    }

    private static Placement side(Direction direction) {
        return direction.placement() == null ? Placement.BELOW : direction.placement();
    }

    private void row(List<Direction> dynamics, Placement side, Placing placing) {
        Box letter = canvas.font.box("dynamicForte");
        double baseline = 0;
        for (Direction dynamic : dynamics) {
            double half = width(dynamic.text()) / 2;
            double x = placing.x().x(dynamic.at());
            half += GAP;
            double y = side == Placement.BELOW
                    ? canvas.bottom(x - half, x + half, StaffMap.bottomLine(lines)) - GAP - letter.top()
                    : canvas.top(x - half, x + half, StaffMap.topLine(lines)) + GAP - letter.bottom();
            baseline = baseline == 0 ? y : side == Placement.BELOW ? Math.min(baseline, y) : Math.max(baseline, y);
        }
        double free = 0;
        for (Direction dynamic : dynamics) {
            // not before the bar, nor into the one before
            double half = width(dynamic.text()) / 2;
            double centre = Math.max(placing.x().x(dynamic.at()), free + half);
            draw(dynamic, centre, baseline);
            free = centre + half + GAP;
        }
    }

    private static boolean isLetters(String text) {
        return text.chars().allMatch(c -> LETTERS.containsKey((char) c));
    }

    private double width(String text) {
        return isLetters(text) ? text.chars().mapToDouble(c -> canvas.font.advance(LETTERS.get((char) c))).sum()
                : canvas.box(new Text(text, 0, 0, TEXT_SIZE, Text.Style.ITALIC, Text.Anchor.START, Role.DYNAMICS, null))
                        .width();
    }

    private void draw(Direction dynamic, double centre, double y) {
        String text = dynamic.text();
        if (!isLetters(text)) {
            canvas.add(new Text(text, centre, y, TEXT_SIZE, Text.Style.ITALIC, Text.Anchor.MIDDLE, Role.DYNAMICS,
                    dynamic.at()));
            return;
        }
        double x = centre - width(text) / 2;
        for (char c : text.toCharArray()) {
            String sign = LETTERS.get(c);
            canvas.add(new Glyph(sign, x, y, Role.DYNAMICS, dynamic.at()));
            x += canvas.font.advance(sign);
        }
    }
}
