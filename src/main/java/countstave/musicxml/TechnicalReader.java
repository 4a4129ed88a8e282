package countstave.musicxml;

import countstave.score.Head;
import jakarta.xml.bind.JAXBElement;
import java.util.List;
import org.audiveris.proxymusic.Fret;

/** What the {@code technical} notations of one note say. */
final class TechnicalReader {

    private static final int MOST_STRINGS = 20;
    private static final int HIGHEST_FRET = 99;

    private int string = -1;
    private int fret = -1;

    /** @param names gets the name of the notation */
    void add(List<String> names, Object notation) {
        if (!(notation instanceof JAXBElement<?> element)) {
            names.add("technical");
            return;
        }
        names.add(element.getName().getLocalPart());
        if (element.getValue() instanceof Fret value) {
            fret = Rationals.bounded(value.getValue(), 0, HIGHEST_FRET, -1);
        } else if (element.getValue() instanceof org.audiveris.proxymusic.String value) {
            string = Rationals.bounded(value.getValue(), 1, MOST_STRINGS, -1);
        }
    }

    /** Where the note is held down; null unless both string and fret are said. */
    Head.Fret fret() {
        return string < 1 || fret < 0 ? null : new Head.Fret(string, fret);
    }
}
