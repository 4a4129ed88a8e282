package countstave.musicxml;

import countstave.score.ScoreException;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.codehaus.stax2.XMLStreamReader2;

/**
 * Looks for {@code ]]>} where it does not end a CDATA section. XML 1.0, 2.4, forbids it in text; the parser overlooks it
 * at some places of its buffer, so that a score could be read and, with insertions before that place, not read again.
 */
final class SectionEnds {

    private static final String END = "]]>";

    private SectionEnds() {
    }

    /**
     * @param text well-formed apart from this
     * @throws ScoreException if one stands in text
     */
    static void check(String text) throws XMLStreamException {
        if (!text.contains(END)) {
            return;
        }
        XMLStreamReader2 reader = XmlInput.pieces(text);
        // text comes in pieces
        int start = -1;
        int end = -1;
        while (reader.hasNext()) {
            if (reader.next() == XMLStreamConstants.CHARACTERS) {
                int from = (int) reader.getLocationInfo().getStartingCharOffset();
                start = from == end ? start : from;
                end = (int) reader.getLocationInfo().getEndingCharOffset();
                int found = text.indexOf(END, start);
                if (found >= 0 && found + END.length() <= end) {
                    throw new ScoreException("line " + reader.getLocationInfo().getStartLocation().getLineNumber()
                            + ": this is not well-formed XML (its text holds \"" + END + "\"): export the score again");
                }
            }
        }
    }
}
