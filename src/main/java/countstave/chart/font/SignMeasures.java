package countstave.chart.font;

import countstave.chart.shape.Box;
import countstave.chart.shape.Point;
import java.util.HashMap;
import java.util.Map;
import java.util.StringTokenizer;

/**
 * What layout needs of the music font's SMuFL metadata: a small table that a test makes anew from the published file and
 * compares. Of the 730 kB of that file, nine tenths are about signs we never draw.
 *
 * <p>A line is {@code default NAME NUMBER} or {@code sign NAME}, and behind that any of {@code advance NUMBER},
 * {@code box LEFT BOTTOM RIGHT TOP} and, for each registered point, its name with two numbers. Lengths are in staff spaces.
 */
final class SignMeasures {

    final Map<String, Double> engravingDefaults = new HashMap<>();
    final Map<String, Double> advances = new HashMap<>();
    final Map<String, Box> boxes = new HashMap<>();
    final Map<String, Map<String, Point>> anchors = new HashMap<>();

    /** @throws RuntimeException if the table is damaged */
    SignMeasures(String table) {
        table.lines().filter(line -> !line.startsWith("#")).forEach(line -> {
            StringTokenizer words = new StringTokenizer(line);
            boolean sign = words.nextToken().equals("sign");
            String name = words.nextToken();
            if (sign) {
                sign(name, words);
            } else {
                engravingDefaults.put(name, number(words));
            }
        });
    }

    private void sign(String name, StringTokenizer words) {
        Map<String, Point> points = new HashMap<>();
        while (words.hasMoreTokens()) {
            String what = words.nextToken();
            switch (what) {
                case "advance" -> advances.put(name, number(words));
                case "box" -> boxes.put(name, new Box(number(words), number(words), number(words), number(words)));
                default -> points.put(what, new Point(number(words), number(words)));
            }
        }
        anchors.put(name, points);
    }

    private static double number(StringTokenizer words) {
        return Double.parseDouble(words.nextToken());
    }
}
