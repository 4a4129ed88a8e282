package countstave.musicxml;

import countstave.score.FretDiagram;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLStreamException;

/**
 * Reads a {@code harmony} as the chord name that a player sees: {@code C♯m7/G♯}, {@code G7(♭9)}, {@code N.C.}
 *
 * <p>Read from the stream and not through the binding, whose start every run would pay for. What the file says of the
 * spelling ({@code text}, {@code use-symbols}) is followed; where it says nothing, the kinds of MusicXML 4.0 are spelled
 * as lead sheets spell them (common practice, no source).
 */
final class HarmonyReader implements SpotReader.Children {

    /** MusicXML 4.0, {@code kind-value}; functional sixths and other rare kinds have no common spelling. */
    private static final Map<String, String> KINDS = Map.ofEntries(Map.entry("major", ""), Map.entry("minor", "m"),
            Map.entry("augmented", "aug"), Map.entry("diminished", "dim"), Map.entry("dominant", "7"),
            Map.entry("major-seventh", "maj7"), Map.entry("minor-seventh", "m7"), Map.entry("diminished-seventh", "dim7"),
            Map.entry("augmented-seventh", "aug7"), Map.entry("half-diminished", "m7\u266d5"),
            Map.entry("major-minor", "m(maj7)"), Map.entry("major-sixth", "6"), Map.entry("minor-sixth", "m6"),
            Map.entry("dominant-ninth", "9"), Map.entry("major-ninth", "maj9"), Map.entry("minor-ninth", "m9"),
            Map.entry("dominant-11th", "11"), Map.entry("major-11th", "maj11"), Map.entry("minor-11th", "m11"),
            Map.entry("dominant-13th", "13"), Map.entry("major-13th", "maj13"), Map.entry("minor-13th", "m13"),
            Map.entry("suspended-second", "sus2"), Map.entry("suspended-fourth", "sus4"), Map.entry("power", "5"),
            Map.entry("other", ""), Map.entry("none", "N.C."));

    /** MusicXML 4.0, {@code kind}, attribute {@code use-symbols}: the sign, and what of the spelling stays behind it. */
    private static final Map<String, String> SYMBOLS = Map.ofEntries(Map.entry("major", "\u25b3"),
            Map.entry("major-seventh", "\u25b37"), Map.entry("major-ninth", "\u25b39"), Map.entry("major-11th", "\u25b311"),
            Map.entry("major-13th", "\u25b313"), Map.entry("minor", "-"), Map.entry("minor-seventh", "-7"),
            Map.entry("minor-sixth", "-6"), Map.entry("minor-ninth", "-9"), Map.entry("minor-11th", "-11"),
            Map.entry("minor-13th", "-13"), Map.entry("major-minor", "-"), Map.entry("augmented", "+"),
            Map.entry("augmented-seventh", "+7"), Map.entry("diminished", "\u00b0"),
            Map.entry("diminished-seventh", "\u00b07"), Map.entry("half-diminished", "\u00f8"));

    private static final String[] SIGNS = {Character.toString(0x1D12B), "\u266d", "", "\u266f", Character.toString(0x1D12A)};

    /**
     * What was read.
     *
     * @param text the chord name; empty where nothing is printed
     * @param frame whether a fret diagram is to be printed with it
     * @param diagram it, or null where there is none that can be drawn
     * @param below whether the file wants it below the staff
     * @param offset in divisions, or null
     * @param staff its staff, 1 where the file says nothing usable
     */
    record Harmony(String text, boolean frame, FretDiagram diagram, boolean below, BigDecimal offset, int staff) {
    }

    private final StringBuilder text = new StringBuilder();
    private final List<String> degrees = new ArrayList<>();
    private String root = "";
    private String kind = "";
    private String bass = "";
    private String separator = "/";
    private boolean rootless;
    private boolean parentheses = true;
    private boolean shown;
    private String value = "";
    private BigDecimal alter;
    private boolean plusMinus;
    private String type = "";
    private boolean frame;
    private FretDiagram diagram;
    private BigDecimal offset;
    private int staff = 1;

    private HarmonyReader() {
    }

    /** Reads the element whose start tag was read last, and leaves the reader on what follows its end. */
    static Harmony read(SpotReader xml) throws XMLStreamException {
        HarmonyReader reader = new HarmonyReader();
        boolean printed = !"no".equals(xml.getAttributeValue(null, "print-object"));
        boolean diagram = !"no".equals(xml.getAttributeValue(null, "print-frame"));
        boolean below = "below".equals(xml.getAttributeValue(null, "placement"));
        xml.children(reader);
        xml.next();
        reader.close();
        return new Harmony(printed ? Plain.name(reader.text.toString()) : "", printed && diagram && reader.frame,
                printed && diagram ? reader.diagram : null, below, reader.offset, reader.staff);
    }

    @Override
    public boolean start(SpotReader xml) throws XMLStreamException {
        switch (xml.getLocalName()) {
            case "root", "numeral" -> {
                // another one begins another chord
                close();
                return true;
            }
            case "bass" -> {
                return true;
            }
            case "degree" -> {
                shown = !"no".equals(xml.getAttributeValue(null, "print-object"));
                value = "";
                alter = null;
                plusMinus = false;
                type = "";
                return true;
            }
            case "function" -> {
                close();
                root = Plain.line(xml.elementText());
            }
            case "root-step", "numeral-root" -> root = spelled(xml);
            case "root-alter" -> root = altered(xml, root, "right");
            case "numeral-alter" -> root = altered(xml, root, "left");
            case "kind" -> kind(xml);
            case "bass-separator" -> {
                String given = Plain.line(xml.elementText());
                // a word stands apart, a sign does not
                separator = !given.isEmpty() && given.chars().allMatch(Character::isLetter) ? " " + given + " " : given;
            }
            case "bass-step" -> bass = spelled(xml);
            case "bass-alter" -> bass = altered(xml, bass, "right");
            case "degree-value" -> value = spelled(xml);
            case "degree-alter" -> {
                plusMinus = "yes".equals(xml.getAttributeValue(null, "plus-minus"));
                alter = number(xml.elementText());
            }
            case "degree-type" -> {
                String given = xml.getAttributeValue(null, "text");
                String word = xml.elementText().strip();
                type = given != null ? Plain.line(given) : degreeWord(word);
            }
            case "frame" -> {
                frame = true;
                diagram = FretDiagramReader.read(xml);
            }
            case "offset" -> offset = number(xml.elementText());
            case "staff" -> {
                String given = xml.elementText().strip();
                staff = given.matches("[1-9]\\d?") ? Integer.parseInt(given) : 1;
            }
            default -> xml.skipElement();
        }
        return false;
    }

    @Override
    public void end(String name) {
        if (name.equals("degree") && shown && !value.isEmpty()) {
            String sign = sign(alter);
            degrees.add(type + (plusMinus ? sign.replace('\u266d', '-').replace('\u266f', '+') : sign) + value);
        }
    }

    /** Only what is added without an alteration, and what is left out, is said in words. */
    private String degreeWord(String given) {
        return switch (given) {
            case "add" -> alter == null || alter.signum() == 0 ? "add" : "";
            case "subtract" -> "no";
            default -> "";
        };
    }

    /** Adds the chord that is complete to the name; a second one stands behind it. */
    private void close() {
        String name = (rootless ? "" : root) + kind;
        if (!degrees.isEmpty()) {
            String list = String.join(",", degrees);
            name += parentheses ? "(" + list + ")" : list;
        }
        if (!bass.isEmpty()) {
            name += separator + bass;
        }
        text.append(text.isEmpty() || name.isEmpty() ? "" : " ").append(name);
        root = "";
        kind = "";
        bass = "";
        separator = "/";
        rootless = false;
        degrees.clear();
    }

    private void kind(SpotReader xml) throws XMLStreamException {
        String given = xml.getAttributeValue(null, "text");
        boolean symbols = "yes".equals(xml.getAttributeValue(null, "use-symbols"));
        parentheses = !"no".equals(xml.getAttributeValue(null, "parentheses-degrees"));
        String name = xml.elementText().strip();
        rootless = name.equals("none");
        String symbol = symbols ? SYMBOLS.getOrDefault(name, "") : "";
        if (given != null) {
            // behind a sign the file says the rest itself
            kind = symbol.replaceAll("\\d+$", "") + Plain.line(given);
        } else {
            kind = symbol.isEmpty() ? KINDS.getOrDefault(name, " " + Plain.name(name)) : symbol;
        }
    }

    /** The text attribute where there is one, else the content. */
    private static String spelled(SpotReader xml) throws XMLStreamException {
        String given = xml.getAttributeValue(null, "text");
        String content = xml.elementText();
        return Plain.line(given != null ? given : content);
    }

    private static String altered(SpotReader xml, String step, String usualPlace) throws XMLStreamException {
        boolean printed = !"no".equals(xml.getAttributeValue(null, "print-object"));
        String place = xml.getAttributeValue(null, "location");
        String sign = sign(number(xml.elementText()));
        return !printed ? step : (place == null ? usualPlace : place).equals("left") ? sign + step : step + sign;
    }

    /** In semitones; what is no whole number of them has no sign here. */
    private static String sign(BigDecimal alter) {
        for (int semitones = -2; alter != null && semitones <= 2; semitones++) {
            if (alter.compareTo(BigDecimal.valueOf(semitones)) == 0) {
                return SIGNS[semitones + 2];
            }
        }
        return "";
    }

    /** Null for what is no number. */
    static BigDecimal number(String text) {
        String digits = text.strip();
        try {
            return digits.length() > 20 ? null : new BigDecimal(digits);
        } catch (NumberFormatException e) {
            return null;
        }
    }
}
