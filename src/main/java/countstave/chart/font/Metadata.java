package countstave.chart.font;

import countstave.chart.shape.Box;
import countstave.chart.shape.Point;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/**
 * The parts of a SMuFL metadata file that layout needs. The file has some 700 kB, most of it about signs we never
 * draw, so it is scanned once without building a tree.
 */
final class Metadata {

    final Map<String, Double> engravingDefaults = new HashMap<>();
    final Map<String, Double> advances = new HashMap<>();
    final Map<String, Box> boxes = new HashMap<>();
    final Map<String, Map<String, Point>> anchors = new HashMap<>();

    private final Set<String> wanted;
    private final JsonScanner json;

    /**
     * @param text the metadata file
     * @param wanted canonical names of the signs that are used
     */
    Metadata(String text, Set<String> wanted) {
        this.wanted = wanted;
        this.json = new JsonScanner(text);
        json.object(section -> {
            switch (section) {
                case "engravingDefaults" -> json.object(this::engravingDefault);
                case "glyphAdvanceWidths" -> json.object(this::advance);
                case "glyphBBoxes" -> json.object(this::box);
                case "glyphsWithAnchors" -> json.object(this::anchorsOf);
                default -> json.skip();
            }
        });
    }

    private void engravingDefault(String name) {
        if (json.atNumber()) {
            engravingDefaults.put(name, json.number());
        } else {
            json.skip();
        }
    }

    private void advance(String name) {
        if (wanted.contains(name)) {
            advances.put(name, json.number());
        } else {
            json.skip();
        }
    }

    private void box(String name) {
        if (!wanted.contains(name)) {
            json.skip();
            return;
        }
        Map<String, Point> corners = points();
        Point ne = corners.get("bBoxNE");
        Point sw = corners.get("bBoxSW");
        boxes.put(name, new Box(sw.x(), sw.y(), ne.x(), ne.y()));
    }

    private void anchorsOf(String name) {
        if (wanted.contains(name)) {
            anchors.put(name, points());
        } else {
            json.skip();
        }
    }

    private Map<String, Point> points() {
        Map<String, Point> points = new HashMap<>();
        json.object(name -> {
            double[] pair = json.pair();
            points.put(name, new Point(pair[0], pair[1]));
        });
        return points;
    }
}
