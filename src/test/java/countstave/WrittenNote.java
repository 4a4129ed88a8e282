package countstave;

import countstave.time.Duration;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.SAXException;

/**
 * One note or rest of a file, read with the JDK's own DOM and nothing of countstave but its fractions: the tests of the
 * demo scores must not lean on the reader they are to test.
 *
 * @param bar the measure's number as printed
 * @param meter the bar's length by its time signature
 * @param implicit whether the bar is a pickup
 * @param start where the note begins, from the bar's start, by {@code duration}
 * @param played {@code duration} over {@code divisions}
 * @param notated {@code type} with its dots and {@code time-modification}; {@code played} for a rest of a whole bar
 * @param element the note itself
 */
record WrittenNote(String part, String bar, String voice, Duration meter, boolean implicit, Duration start, Duration played,
        Duration notated, Element element) {

    static final Map<String, Duration> TYPES = Map.of("whole", Duration.of(1, 1), "half", Duration.of(1, 2),
            "quarter", Duration.of(1, 4), "eighth", Duration.of(1, 8), "16th", Duration.of(1, 16), "32nd",
            Duration.of(1, 32));

    boolean isRest() {
        return child(element, "rest") != null;
    }

    /** Whether the note begins to sound here: not a rest and not held over by a tie. */
    boolean isAttack() {
        return !isRest() && children(element, "tie").stream().noneMatch(tie -> tie.getAttribute("type").equals("stop"));
    }

    Duration end() {
        return start.plus(played);
    }

    List<Element> notations(String name) {
        Element notations = child(element, "notations");
        return notations == null ? List.of() : children(notations, name);
    }

    /** Pitch, or the place on the staff that stands for a drum. */
    String place() {
        Element pitch = child(element, "pitch");
        Element place = pitch == null ? child(element, "unpitched") : pitch;
        return place.getTextContent().strip();
    }

    static Document parse(Path file) throws IOException, SAXException {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance();
            factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
            DocumentBuilder builder = factory.newDocumentBuilder();
            return builder.parse(file.toFile());
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException(e);
        }
    }

    /** All notes and rests of a score in the order of the file, chords as one. */
    static List<WrittenNote> read(Path file) throws IOException, SAXException {
        List<WrittenNote> notes = new ArrayList<>();
        for (Element part : children(parse(file).getDocumentElement(), "part")) {
            long divisions = 0;
            Duration meter = Duration.ZERO;
            for (Element bar : children(part, "measure")) {
                Duration cursor = Duration.ZERO;
                for (Element item : children(bar, null)) {
                    switch (item.getTagName()) {
                        case "attributes" -> {
                            divisions = child(item, "divisions") == null ? divisions : number(item, "divisions");
                            meter = child(item, "time") == null ? meter : length(child(item, "time"));
                        }
                        case "backup" -> cursor = cursor.minus(played(item, divisions));
                        case "forward" -> cursor = cursor.plus(played(item, divisions));
                        case "note" -> {
                            if (child(item, "chord") == null) {
                                Duration played = played(item, divisions);
                                notes.add(new WrittenNote(part.getAttribute("id"), bar.getAttribute("number"),
                                        child(item, "voice").getTextContent(), meter,
                                        bar.getAttribute("implicit").equals("yes"), cursor, played,
                                        child(item, "type") == null ? played : notated(item), item));
                                cursor = cursor.plus(played);
                            }
                        }
                        default -> { }
                    }
                }
            }
        }
        return notes;
    }

    private static Duration length(Element time) {
        int beats = 0;
        for (String term : child(time, "beats").getTextContent().split("\\+")) {
            beats += Integer.parseInt(term);
        }
        return Duration.of(beats, number(time, "beat-type"));
    }

    private static Duration played(Element item, long divisions) {
        return Duration.of(number(item, "duration"), 4 * divisions);
    }

    private static Duration notated(Element note) {
        Duration type = TYPES.get(child(note, "type").getTextContent());
        int dots = children(note, "dot").size();
        Duration value = type.times(2).minus(type.times(1, 1L << dots));
        Element modification = child(note, "time-modification");
        return modification == null ? value
                : value.times(number(modification, "normal-notes"), number(modification, "actual-notes"));
    }

    static long number(Element parent, String name) {
        return Long.parseLong(child(parent, name).getTextContent());
    }

    static Element child(Element parent, String name) {
        return children(parent, name).stream().findFirst().orElse(null);
    }

    /** The child elements of that name, all of them for null. */
    static List<Element> children(Element parent, String name) {
        return IntStream.range(0, parent.getChildNodes().getLength()).mapToObj(parent.getChildNodes()::item)
                .filter(node -> node.getNodeType() == Node.ELEMENT_NODE).map(Element.class::cast)
                .filter(element -> name == null || element.getTagName().equals(name)).toList();
    }
}
