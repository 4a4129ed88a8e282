package countstave.chart.layout;

import countstave.chart.engrave.OpenStem;
import countstave.chart.font.Measures;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Point;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.score.BeamMark;
import countstave.score.Event;
import countstave.score.Voice;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Beams that reach over a barline or from staff to staff, with their stems. Where all stems point one way the beam slants with its
 * notes; between two staves it lies level, halfway between the heads. Where a line of music ends it breaks off (common practice,
 * no source).
 */
final class FarBeamLines {

    private static final double STEM = 3;
    private static final double MOST_RISE = 1;
    private static final double HOOK = 1.18;
    private static final double BREAK_OFF = 0.3;

    private final Measures measures;
    private final double thickness;
    private final double step;

    FarBeamLines(Measures measures) {
        this.measures = measures;
        thickness = measures.music().engraving("beamThickness");
        step = thickness + measures.music().engraving("beamSpacing");
    }

    /** A stem on the line of music: where it begins, and on which of the staves. */
    private record Stem(OpenStem open, PlacedBar bar, double x, double root, int staff) {
    }

    /** Stems under one beam; {@code goesOn}: it comes from the line before, or goes on in the next. */
    static final class Group {

        private final List<Stem> stems = new ArrayList<>();
        private boolean comes;
        private boolean goesOn;

        /** Whether it stands on one staff. */
        boolean isOn(int staff) {
            return stems.stream().allMatch(s -> s.staff == staff);
        }

        boolean isBetween(int upper, int lower) {
            return stems.stream().anyMatch(s -> s.staff <= upper) && stems.stream().anyMatch(s -> s.staff >= lower);
        }
    }

    /** All groups of a line, voice by voice. */
    List<Group> groups(List<PlacedBar> placed) {
        Map<String, Group> open = new TreeMap<>();
        List<Group> groups = new ArrayList<>();
        for (PlacedBar bar : placed) {
            for (Stem stem : stems(bar)) {
                String voice = stem.open.voice();
                BeamMark.Kind kind = stem.open.beam(1);
                Group group = kind == BeamMark.Kind.BEGIN ? null : open.get(voice);
                if (group == null) {
                    group = new Group();
                    group.comes = kind != BeamMark.Kind.BEGIN && bar == placed.get(0);
                    groups.add(group);
                    open.put(voice, group);
                }
                group.stems.add(stem);
                if (kind == BeamMark.Kind.END) {
                    open.remove(voice);
                }
            }
        }
        for (Group group : open.values()) {
            Stem last = group.stems.get(group.stems.size() - 1);
            group.goesOn = last.bar == placed.get(placed.size() - 1) && !endsLater(last);
        }
        return groups;
    }

    private static List<Stem> stems(PlacedBar bar) {
        List<Stem> stems = new ArrayList<>();
        for (int s = 0; s < bar.staves().size(); s++) {
            for (OpenStem open : bar.staves().get(s).stems()) {
                stems.add(new Stem(open, bar, bar.left() + open.x(), open.root(), s));
            }
        }
        stems.sort((a, b) -> Integer.compare(a.open.index(), b.open.index()));
        return stems;
    }

    /** Whether the beam ends in the same bar, on a staff that is not drawn. */
    private static boolean endsLater(Stem last) {
        for (Voice voice : last.bar.bar().bar().voices()) {
            if (voice.name().equals(last.open.voice())) {
                for (Event event : voice.events().subList(last.open.index() + 1, voice.events().size())) {
                    if (event.look().beams().stream().anyMatch(b -> b.level() == 1 && b.kind() == BeamMark.Kind.END)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /** @param dys how far each staff stands above the first, so negative below it */
    void draw(Group group, List<PlacedBar> placed, List<Double> dys, List<Shape> shapes) {
        List<Stem> stems = group.stems.stream().map(s -> new Stem(s.open, s.bar, s.x, s.root + dys.get(s.staff), s.staff)).toList();
        if (stems.size() == 1 && !group.comes && !group.goesOn) {
            alone(stems.get(0), shapes);
            return;
        }
        int levels = stems.stream().mapToInt(s -> s.open.levels()).max().orElse(1);
        boolean up = stems.stream().allMatch(s -> s.open.up());
        boolean down = stems.stream().noneMatch(s -> s.open.up());
        int way = up ? 1 : down ? -1 : 0;
        Stem first = stems.get(0);
        Stem last = stems.get(stems.size() - 1);
        double rise = way == 0 ? 0 : Math.max(-MOST_RISE, Math.min(MOST_RISE, (last.root - first.root) / 2));
        double slope = last.x - first.x < 0.5 ? 0 : rise / (last.x - first.x);
        double outer = way == 0 ? between(stems, levels) : -Double.MAX_VALUE;
        for (Stem stem : stems) {
            double needed = way * (stem.root - slope * (stem.x - first.x)) + STEM + Math.max(0, levels - 2) * step;
            outer = way == 0 ? outer : Math.max(outer, needed);
        }
        double y = way < 0 ? -outer : outer;
        for (Stem stem : stems) {
            double reach = y + slope * (stem.x - first.x);
            // between staves the beams hang from their upper edge: stems from above reach through all of them
            double end = way == 0 && !stem.open.up() ? reach - thickness - (stem.open.levels() - 1) * step : reach;
            shapes.add(new Line(stem.x, stem.root, stem.x, end, stem.open.thickness(), Role.STEM, stem.open.at()));
        }
        double left = group.comes ? placed.get(0).left() + placed.get(0).bar().prefix(true) : first.x;
        double right = group.goesOn ? placed.get(placed.size() - 1).right() - BREAK_OFF : last.x;
        for (int level = 1; level <= levels; level++) {
            double in = (level - 1) * step + (way < 0 ? -thickness : 0);
            double inner = way < 0 ? in + thickness : -in - thickness;
            for (double[] span : spans(group, stems, level, left, right)) {
                double half = first.open.thickness() / 2;
                double from = span[0] - half;
                double to = span[1] + half;
                double low = y + inner;
                shapes.add(new Polygon(List.of(new Point(from, low + slope * (from - first.x)), new Point(to, low + slope * (to - first.x)),
                        new Point(to, low + thickness + slope * (to - first.x)), new Point(from, low + thickness + slope * (from - first.x))),
                        Role.BEAM, first.open.at()));
            }
        }
    }

    /** The upper edge of beams between the lowest heads above and the highest below. */
    private double between(List<Stem> stems, int levels) {
        double above = stems.stream().filter(s -> !s.open.up()).mapToDouble(s -> s.root).min().orElse(0);
        double below = stems.stream().filter(s -> s.open.up()).mapToDouble(s -> s.root).max().orElse(0);
        return (above + below + thickness + (levels - 1) * step) / 2;
    }

    private static List<double[]> spans(Group group, List<Stem> stems, int level, double left, double right) {
        List<double[]> spans = new ArrayList<>();
        if (level == 1) {
            spans.add(new double[] {left, right});
            return spans;
        }
        double open = Double.NaN;
        for (int i = 0; i < stems.size(); i++) {
            double x = stems.get(i).x;
            BeamMark.Kind kind = stems.get(i).open.beam(level);
            if (kind == null) {
                open = Double.NaN;
                continue;
            }
            if (kind == BeamMark.Kind.BEGIN || Double.isNaN(open)) {
                open = i == 0 && group.comes && kind != BeamMark.Kind.BEGIN ? left : x;
            }
            switch (kind) {
                case END -> {
                    spans.add(new double[] {open, x});
                    open = Double.NaN;
                }
                case FORWARD_HOOK -> spans.add(new double[] {x, x + hook(stems, i, i + 1)});
                case BACKWARD_HOOK -> spans.add(new double[] {x - hook(stems, i, i - 1), x});
                default -> { }
            }
            if (kind == BeamMark.Kind.FORWARD_HOOK || kind == BeamMark.Kind.BACKWARD_HOOK) {
                open = Double.NaN;
            }
        }
        if (!Double.isNaN(open) && group.goesOn) {
            spans.add(new double[] {open, right});
        }
        return spans;
    }

    private static double hook(List<Stem> stems, int at, int neighbour) {
        return neighbour < 0 || neighbour >= stems.size() ? HOOK : Math.min(HOOK, Math.abs(stems.get(neighbour).x - stems.get(at).x) / 2);
    }

    /** A note whose beam leads nowhere has its flag. */
    private void alone(Stem stem, List<Shape> shapes) {
        double end = stem.root + (stem.open.up() ? STEM + 0.5 : -STEM - 0.5);
        shapes.add(new Line(stem.x, stem.root, stem.x, end, stem.open.thickness(), Role.STEM, stem.open.at()));
        Point anchor = measures.music().anchor(stem.open.flag(), stem.open.up() ? "stemUpNW" : "stemDownSW");
        double ax = anchor == null ? 0 : anchor.x();
        double ay = anchor == null ? 0 : anchor.y();
        shapes.add(new Glyph(stem.open.flag(), stem.x - stem.open.thickness() / 2 - ax, end - ay, 1, Role.FLAG, stem.open.at()));
    }
}
