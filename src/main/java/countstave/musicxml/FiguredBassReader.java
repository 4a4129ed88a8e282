package countstave.musicxml;

import countstave.score.Direction;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLStreamException;

/**
 * Reads a {@code figured-bass}: its figures from the top down, each as a player sees it, {@code ♯6}. A figure with a stroke through it
 * ends with U+0338, the combining stroke.
 *
 * <p>Signs before and behind a figure: MusicXML 4.0, {@code prefix} and {@code suffix}.
 */
final class FiguredBassReader implements SpotReader.Children {

    private static final Map<String, String> SIGNS = Map.ofEntries(Map.entry("plus", "+"), Map.entry("sharp", "\u266f"),
            Map.entry("flat", "\u266d"), Map.entry("natural", "\u266e"), Map.entry("double-sharp", Character.toString(0x1D12A)),
            Map.entry("sharp-sharp", "\u266f\u266f"), Map.entry("flat-flat", Character.toString(0x1D12B)), Map.entry("slash", Direction.STROKE),
            Map.entry("back-slash", Direction.STROKE), Map.entry("backslash", Direction.STROKE), Map.entry("vertical", Direction.STROKE));
    /** More stand nowhere. */
    private static final int MOST = 8;
    private static final int LONGEST = 6;

    /**
     * What was read.
     *
     * @param figures from the top down; none where nothing is printed
     * @param duration how long they hold until others under the same note, in divisions, or null
     */
    record Figures(List<String> figures, BigDecimal duration) {
    }

    private final List<String> figures = new ArrayList<>();
    private final boolean parentheses;
    private BigDecimal duration;
    private String before = "";
    private String number = "";
    private String behind = "";

    private FiguredBassReader(boolean parentheses) {
        this.parentheses = parentheses;
    }

    /** Reads the element whose start tag was read last, and leaves the reader on what follows its end. */
    static Figures read(SpotReader xml) throws XMLStreamException {
        FiguredBassReader reader = new FiguredBassReader("yes".equals(xml.getAttributeValue(null, "parentheses")));
        boolean printed = !"no".equals(xml.getAttributeValue(null, "print-object"));
        xml.children(reader);
        xml.next();
        return new Figures(printed ? List.copyOf(reader.figures) : List.of(), reader.duration);
    }

    @Override
    public boolean start(SpotReader xml) throws XMLStreamException {
        switch (xml.getLocalName()) {
            case "figure" -> {
                before = "";
                number = "";
                behind = "";
                return true;
            }
            case "prefix" -> before = SIGNS.getOrDefault(xml.elementText().strip(), "");
            case "figure-number" -> {
                String given = Plain.line(xml.elementText());
                number = given.length() > LONGEST ? "" : given;
            }
            case "suffix" -> behind = SIGNS.getOrDefault(xml.elementText().strip(), "");
            case "duration" -> duration = HarmonyReader.number(xml.elementText());
            default -> xml.skipElement();
        }
        return false;
    }

    @Override
    public void end(String name) {
        String figure = before + number + behind;
        if (name.equals("figure") && !figure.isEmpty() && figures.size() < MOST) {
            boolean stroke = figure.endsWith(Direction.STROKE);
            String plain = stroke ? figure.substring(0, figure.length() - 1) : figure;
            figures.add((parentheses ? "(" + plain + ")" : plain) + (stroke ? Direction.STROKE : ""));
        }
    }
}
