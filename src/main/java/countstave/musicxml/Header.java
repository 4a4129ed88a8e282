package countstave.musicxml;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;

/** What stands before the music: titles, composer, and the list of parts. */
final class Header {

    private final List<String> titles = new ArrayList<>(List.of("", "", ""));
    private final List<String> composers = new ArrayList<>(List.of("", ""));
    private final Map<String, String> partNames = new LinkedHashMap<>();
    private final Map<String, Set<String>> instruments = new HashMap<>();

    /** Reads a child of the root if it is one of the header's; leaves the reader on its end tag. */
    void read(SpotReader xml) throws XMLStreamException {
        switch (xml.getLocalName()) {
            case "work" -> children(xml, name -> name.equals("work-title") && keep(titles, 0, xml.elementText()));
            case "movement-title" -> keep(titles, 1, xml.elementText());
            case "identification" -> children(xml, name -> name.equals("creator")
                    && "composer".equals(xml.getAttributeValue(null, "type"))
                    && keep(composers, 0, xml.elementText()));
            case "credit" -> credit(xml);
            case "part-list" -> children(xml, name -> name.equals("score-part") && part(xml));
            default -> xml.skipElement();
        }
    }

    String title(String otherwise) {
        String title = Plain.firstOf(titles);
        return title.isEmpty() ? otherwise : title;
    }

    String composer() {
        return Plain.firstOf(composers);
    }

    /** The printed name of the part with this id; the id where it has none. */
    String partName(String id) {
        String name = partNames.getOrDefault(id, "");
        return name.isEmpty() ? id : name;
    }

    /** Names of the instruments of the part with this id, each once. */
    List<String> instruments(String id) {
        return List.copyOf(instruments.getOrDefault(id, Set.of()));
    }

    /** Ids in the order of the part list. */
    List<String> partIds() {
        return List.copyOf(partNames.keySet());
    }

    private boolean part(SpotReader xml) throws XMLStreamException {
        String id = Plain.name(xml.getAttributeValue(null, "id"));
        String[] name = {""};
        Set<String> played = new LinkedHashSet<>();
        children(xml, child -> {
            if (child.equals("score-instrument")) {
                children(xml, inner -> inner.equals("instrument-name") && instrument(Plain.name(xml.elementText()), played));
                return true;
            }
            if (!child.equals("part-name")) {
                return false;
            }
            name[0] = Plain.name(xml.elementText());
            return true;
        });
        partNames.putIfAbsent(id, name[0]);
        instruments.putIfAbsent(id, played);
        return true;
    }

    private static boolean instrument(String name, Set<String> into) {
        if (!name.isEmpty()) {
            into.add(name);
        }
        return true;
    }

    private void credit(SpotReader xml) throws XMLStreamException {
        String[] type = {""};
        StringBuilder words = new StringBuilder();
        children(xml, child -> {
            if (child.equals("credit-type")) {
                type[0] = xml.elementText().strip();
                return true;
            }
            if (child.equals("credit-words")) {
                words.append(words.isEmpty() ? "" : " ").append(xml.elementText());
                return true;
            }
            return false;
        });
        if (type[0].equals("title")) {
            keep(titles, 2, words.toString());
        } else if (type[0].equals("composer")) {
            keep(composers, 1, words.toString());
        }
    }

    private static boolean keep(List<String> texts, int place, String text) {
        if (texts.get(place).isBlank()) {
            texts.set(place, text);
        }
        return true;
    }

    /** Reads a child element to its end tag, or leaves it untouched and says false. */
    private interface Child {
        boolean read(String name) throws XMLStreamException;
    }

    private static void children(SpotReader xml, Child child) throws XMLStreamException {
        while (true) {
            int event = xml.next();
            if (event == XMLStreamConstants.END_ELEMENT) {
                return;
            }
            if (event == XMLStreamConstants.START_ELEMENT && !child.read(xml.getLocalName())) {
                xml.skipElement();
            }
        }
    }
}
