package countstave.musicxml;

import countstave.score.Head;
import countstave.score.NoteSpan;
import jakarta.xml.bind.JAXBElement;
import java.util.List;
import org.audiveris.proxymusic.Bend;
import org.audiveris.proxymusic.Fingering;
import org.audiveris.proxymusic.Fret;
import org.audiveris.proxymusic.HammerOnPullOff;

/** What the {@code technical} notations of one note say. */
final class TechnicalReader {

    private static final int MOST_STRINGS = 20;
    private static final int HIGHEST_FRET = 99;

    private int string = -1;
    private int fret = -1;

    /**
     * @param names gets the name of the notation, with what is written at it
     * @param spans gets it where it leads to another note
     */
    void add(List<String> names, List<NoteSpan> spans, Object notation) {
        if (!(notation instanceof JAXBElement<?> element)) {
            names.add("technical");
            return;
        }
        String name = element.getName().getLocalPart();
        if (element.getValue() instanceof HammerOnPullOff sign) {
            spans.add(SpanReader.hammer(name, sign));
            return;
        }
        names.add(name + written(element.getValue()));
        if (element.getValue() instanceof Fret value) {
            fret = Rationals.bounded(value.getValue(), 0, HIGHEST_FRET, -1);
        } else if (element.getValue() instanceof org.audiveris.proxymusic.String value) {
            string = Rationals.bounded(value.getValue(), 1, MOST_STRINGS, -1);
        }
    }

    private static String written(Object value) {
        if (value instanceof Fingering fingering) {
            return " " + Plain.line(fingering.getValue());
        }
        if (value instanceof org.audiveris.proxymusic.String string) {
            return " " + Rationals.bounded(string.getValue(), 1, MOST_STRINGS, 0);
        }
        if (value instanceof Bend bend) {
            return (bend.getBendAlter() == null ? "" : " " + bend.getBendAlter().stripTrailingZeros().toPlainString())
                    + (bend.getRelease() != null ? " with release" : bend.getPreBend() != null ? " made before" : "");
        }
        return "";
    }

    /** Where the note is held down; null unless both string and fret are said. */
    Head.Fret fret() {
        return string < 1 || fret < 0 ? null : new Head.Fret(string, fret);
    }
}
