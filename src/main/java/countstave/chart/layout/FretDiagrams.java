package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.score.FretDiagram;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * Draws fret diagrams: strings upright, the lowest left; the nut thick, or the number of the first fret beside it; dots where strings
 * are held down, a line for a barre; above it rings for open strings and crosses for those that are not played, below it the fingers
 * (common practice, no source). Sizes in staff spaces: house choices.
 */
final class FretDiagrams {

    private static final double STRING = 0.75;
    private static final double FRET = 0.95;
    private static final double LINE = 0.09;
    private static final double NUT = 0.28;
    private static final double BARRE = 0.3;
    /** Rings and crosses, and their distance from the grid. */
    private static final double SIGN = 0.62;
    private static final double ABOVE = 0.28;
    private static final double DOT = 0.62;
    private static final double NUMBER = 1.5;
    private static final double FINGER = 1.2;
    private static final double GAP = 0.3;
    private static final Text.Style STYLE = Text.Style.REGULAR;

    private final Measures measures;

    FretDiagrams(Measures measures) {
        this.measures = measures;
    }

    private static double grid(FretDiagram diagram) {
        return (diagram.strings() - 1) * STRING;
    }

    private static boolean hasFingers(FretDiagram diagram) {
        return diagram.places().stream().anyMatch(place -> !place.finger().isEmpty());
    }

    private double belowGrid(FretDiagram diagram) {
        return hasFingers(diagram) ? measures.text().capHeight(FINGER, STYLE) + GAP : 0;
    }

    double width(FretDiagram diagram) {
        double number = diagram.firstFret() == 1 ? 0 : GAP + measures.text().width(number(diagram), NUMBER, STYLE);
        return DOT + grid(diagram) + number;
    }

    double height(FretDiagram diagram) {
        return belowGrid(diagram) + diagram.frets() * FRET + ABOVE + SIGN;
    }

    private static String number(FretDiagram diagram) {
        return Integer.toString(diagram.firstFret());
    }

    /**
     * @param x left edge
     * @param y lower edge
     */
    List<Shape> draw(FretDiagram diagram, double x, double y, Offset at) {
        List<Shape> shapes = new ArrayList<>();
        double left = x + DOT / 2;
        double right = left + grid(diagram);
        double bottom = y + belowGrid(diagram);
        double top = bottom + diagram.frets() * FRET;
        for (int string = 1; string <= diagram.strings(); string++) {
            double sx = string(string, right);
            shapes.add(new Line(sx, bottom, sx, top, LINE, Role.FRET_DIAGRAM, at));
            int one = string;
            if (diagram.crosses() && diagram.places().stream().noneMatch(place -> place.string() == one)
                    && diagram.barres().stream().noneMatch(barre -> barre.covers(one))) {
                sign("fretboardX", SIGN, sx, top + ABOVE + SIGN / 2, at, shapes);
            }
        }
        for (int fret = 0; fret <= diagram.frets(); fret++) {
            boolean nut = fret == 0 && diagram.firstFret() == 1;
            double fy = top - fret * FRET + (nut ? (NUT - LINE) / 2 : 0);
            shapes.add(new Line(left - LINE / 2, fy, right + LINE / 2, fy, nut ? NUT : LINE, Role.FRET_DIAGRAM, at));
        }
        if (diagram.firstFret() > 1) {
            shapes.add(new Text(number(diagram), right + DOT / 2 + GAP, top - FRET / 2 - measures.text().capHeight(NUMBER, STYLE) / 2, NUMBER, STYLE,
                    Text.Anchor.START, Role.FRET_DIAGRAM, at));
        }
        for (FretDiagram.Barre barre : diagram.barres()) {
            double by = middle(diagram, barre.fret(), top);
            shapes.add(new Line(string(barre.to(), right), by, string(barre.from(), right), by, BARRE, Role.FRET_DIAGRAM, at));
        }
        for (FretDiagram.Place place : diagram.places()) {
            double sx = string(place.string(), right);
            if (place.fret() == 0) {
                sign("fretboardO", SIGN, sx, top + ABOVE + SIGN / 2, at, shapes);
            } else {
                sign("fretboardFilledCircle", DOT, sx, middle(diagram, place.fret(), top), at, shapes);
            }
            if (!place.finger().isEmpty()) {
                shapes.add(new Text(place.finger(), sx, y, FINGER, STYLE, Text.Anchor.MIDDLE, Role.FRET_DIAGRAM, at));
            }
        }
        return shapes;
    }

    /** x of a string; {@code right} is that of the highest. */
    private static double string(int string, double right) {
        return right - (string - 1) * STRING;
    }

    private static double middle(FretDiagram diagram, int fret, double top) {
        return top - (fret - diagram.firstFret() + 0.5) * FRET;
    }

    /** A sign as high as this, with its middle there. */
    private void sign(String name, double height, double x, double y, Offset at, List<Shape> shapes) {
        Box box = measures.music().box(name);
        double scale = height / box.height();
        shapes.add(new Glyph(name, x - (box.left() + box.right()) / 2 * scale, y - (box.bottom() + box.top()) / 2 * scale, scale,
                Role.FRET_DIAGRAM, at));
    }
}
