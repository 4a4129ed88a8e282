package countstave.musicxml;

import countstave.score.FretDiagram;
import countstave.score.FretDiagram.Barre;
import countstave.score.FretDiagram.Place;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLStreamException;

/**
 * Reads a {@code frame} (MusicXML 4.0): frets have their numbers on the neck, the first that is shown is 1 where the file does not
 * say, and a string without a {@code frame-note} is not played.
 */
final class FretDiagramReader implements SpotReader.Children {

    private int strings;
    private int frets;
    private int first = 1;
    private final boolean crosses;
    private final List<Place> places = new ArrayList<>();
    private final List<Barre> barres = new ArrayList<>();
    /** Where barres begin that have not ended yet: string by fret. */
    private final Map<Integer, Integer> open = new HashMap<>();
    private int string;
    private int fret;
    private String finger = "";
    private String barre = "";

    private FretDiagramReader(boolean crosses) {
        this.crosses = crosses;
    }

    /**
     * Reads the element whose start tag was read last, and stops on its end tag.
     *
     * @return null where it says too little, or what no drawing has room for
     */
    static FretDiagram read(SpotReader xml) throws XMLStreamException {
        FretDiagramReader reader = new FretDiagramReader(!"".equals(xml.getAttributeValue(null, "unplayed")));
        xml.children(reader);
        return reader.diagram();
    }

    @Override
    public boolean start(SpotReader xml) throws XMLStreamException {
        switch (xml.getLocalName()) {
            case "frame-note" -> {
                string = -1;
                fret = -1;
                finger = "";
                barre = "";
                return true;
            }
            case "frame-strings" -> strings = number(xml);
            case "frame-frets" -> frets = number(xml);
            case "first-fret" -> first = Math.max(1, number(xml));
            case "string" -> string = number(xml);
            case "fret" -> fret = number(xml);
            case "fingering" -> finger = Plain.line(xml.elementText());
            case "barre" -> {
                String type = xml.getAttributeValue(null, "type");
                barre = type == null ? "" : type;
                xml.skipElement();
            }
            default -> xml.skipElement();
        }
        return false;
    }

    @Override
    public void end(String name) {
        if (!name.equals("frame-note") || string < 1 || fret < 0) {
            return;
        }
        places.add(new Place(string, fret, finger));
        if (barre.equals("start")) {
            open.put(fret, string);
        } else if (barre.equals("stop") && open.containsKey(fret)) {
            barres.add(new Barre(fret, open.remove(fret), string));
        }
    }

    /** Frets that are held down outside of what the file shows are shown too. */
    private FretDiagram diagram() {
        int last = first + frets - 1;
        for (Place place : places) {
            if (place.string() > strings) {
                return null;
            }
            if (place.fret() > 0) {
                first = Math.min(first, place.fret());
                last = Math.max(last, place.fret());
            }
        }
        long shown = (long) last - first + 1;
        boolean fits = strings >= 2 && strings <= FretDiagram.MOST_STRINGS && shown >= 1 && shown <= FretDiagram.MOST_FRETS;
        return fits ? new FretDiagram(strings, (int) shown, first, List.copyOf(places), List.copyOf(barres), crosses) : null;
    }

    /** -1 for what is no small number. */
    private static int number(SpotReader xml) throws XMLStreamException {
        String text = xml.elementText().strip();
        return text.matches("\\d{1,3}") ? Integer.parseInt(text) : -1;
    }
}
