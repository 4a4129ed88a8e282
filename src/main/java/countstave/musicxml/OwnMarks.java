package countstave.musicxml;

import countstave.score.ScoreException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.codehaus.stax2.XMLStreamReader2;

/**
 * How countstave knows its own elements again: each begins with a processing instruction, which every MusicXML version
 * allows everywhere and every reader passes over.
 */
public final class OwnMarks {

    private static final String TARGET = "countstave";

    /** Stands directly after the start tag of every element that countstave writes. */
    static final String MARK = "<?" + TARGET + "?>";

    private record Open(int start, boolean own) {
    }

    private OwnMarks() {
    }

    /** Whether the text carries annotations of countstave. */
    public static boolean isAnnotated(String text) {
        return text.contains(MARK);
    }

    /**
     * The text without countstave's elements: exactly the text that was annotated.
     *
     * @throws ScoreException if the text is not well-formed XML
     */
    public static String strip(String text) {
        if (!isAnnotated(text)) {
            return text;
        }
        StringBuilder kept = new StringBuilder(text.length());
        int done = 0;
        for (int[] range : ranges(text)) {
            int from = range[0];
            while (from > done && Splice.isWhite(text.charAt(from - 1))) {
                from--;
            }
            kept.append(text, done, from);
            done = range[1];
        }
        return kept.append(text, done, text.length()).toString();
    }

    /** Start and end of each own element that lies in no other. */
    private static List<int[]> ranges(String text) {
        List<int[]> ranges = new ArrayList<>();
        try {
            XMLStreamReader2 reader = XmlInput.raw(text);
            Deque<Open> open = new ArrayDeque<>();
            boolean justOpened = false;
            while (reader.hasNext()) {
                int event = reader.next();
                if (event == XMLStreamConstants.START_ELEMENT) {
                    open.push(new Open((int) reader.getLocationInfo().getStartingCharOffset(), false));
                } else if (event == XMLStreamConstants.PROCESSING_INSTRUCTION && justOpened
                        && reader.getPITarget().equals(TARGET)) {
                    open.push(new Open(open.pop().start, true));
                } else if (event == XMLStreamConstants.END_ELEMENT) {
                    Open closed = open.pop();
                    if (closed.own) {
                        // another hand may have put one into another: the outer one holds both
                        while (!ranges.isEmpty() && ranges.get(ranges.size() - 1)[0] > closed.start) {
                            ranges.remove(ranges.size() - 1);
                        }
                        ranges.add(new int[] {closed.start, (int) reader.getLocationInfo().getEndingCharOffset()});
                    }
                }
                justOpened = event == XMLStreamConstants.START_ELEMENT;
            }
        } catch (XMLStreamException e) {
            throw XmlInput.describe(e);
        }
        return ranges;
    }
}
