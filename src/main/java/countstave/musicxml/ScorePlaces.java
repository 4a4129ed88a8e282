package countstave.musicxml;

import countstave.score.ScoreException;
import java.util.ArrayList;
import java.util.List;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.codehaus.stax2.XMLStreamReader2;

/**
 * Where in a score's text a further part belongs.
 *
 * @param timewise whether bars hold parts, and not parts bars
 * @param partListEnd where the closing tag of the part list begins
 * @param partSlots where a further {@code part} goes: one place, or in a timewise score one for each bar
 */
record ScorePlaces(boolean timewise, int partListEnd, List<Integer> partSlots) {

    /** @throws countstave.score.ScoreException if the text is not well-formed XML */
    static ScorePlaces of(String text) {
        try {
            XMLStreamReader2 reader = XmlInput.raw(text);
            int depth = 0;
            boolean timewise = false;
            int partListEnd = -1;
            List<Integer> slots = new ArrayList<>();
            while (reader.hasNext()) {
                int event = reader.next();
                if (event == XMLStreamConstants.START_ELEMENT) {
                    depth++;
                    timewise |= depth == 1 && reader.getLocalName().equals("score-timewise");
                } else if (event == XMLStreamConstants.END_ELEMENT) {
                    String name = reader.getLocalName();
                    int start = (int) reader.getLocationInfo().getStartingCharOffset();
                    boolean hasRoom = text.startsWith("</", start);
                    if (depth == 2 && name.equals("part-list") && hasRoom) {
                        partListEnd = start;
                    } else if (depth == (timewise ? 2 : 1) && (!timewise || name.equals("measure"))) {
                        if (!hasRoom) {
                            throw new ScoreException("a measure without any part in it has no room for the counts; "
                                    + "use --as lyrics");
                        }
                        slots.add(start);
                    }
                    depth--;
                }
            }
            if (partListEnd < 0) {
                throw new ScoreException("the score has no list of parts to which the counts could be added; "
                        + "use --as lyrics");
            }
            return new ScorePlaces(timewise, partListEnd, List.copyOf(slots));
        } catch (XMLStreamException e) {
            throw XmlInput.describe(e);
        }
    }
}
