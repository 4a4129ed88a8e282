package countstave.musicxml;

import countstave.score.SourceSpot;
import java.util.ArrayList;
import java.util.List;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.util.StreamReaderDelegate;
import org.codehaus.stax2.LocationInfo;
import org.codehaus.stax2.XMLStreamReader2;

/**
 * Watches the XML stream go by while the binding reads it, and keeps where in the text an element began and ended.
 */
final class SpotReader extends StreamReaderDelegate {

    /** More than any lyric or direction needs; the binding would otherwise turn endless digits into numbers. */
    private static final int LONGEST_TEXT = 10_000;

    private final LocationInfo places;
    private int depth;
    private int watchedDepth = -1;
    private int start;
    private int line;
    private int end;
    private int slot;
    private boolean slotOpen;
    private final List<MetronomeTrail> metronomes = new ArrayList<>();
    private MetronomeTrail metronome;

    SpotReader(XMLStreamReader2 reader) {
        super(reader);
        places = reader.getLocationInfo();
    }

    @Override
    public int next() throws XMLStreamException {
        int event = super.next();
        if (event == START_ELEMENT) {
            depth++;
            if (depth == watchedDepth + 1) {
                // MusicXML's order in a note: …, notations*, lyric*, play?, listen?
                String name = getLocalName();
                slotOpen = slotOpen && !name.equals("play") && !name.equals("listen");
            }
            trailStart();
        } else if (metronome != null && (event == CHARACTERS || event == CDATA)) {
            metronome.text(getText());
        } else if (event == END_ELEMENT) {
            if (depth == watchedDepth + 1 && slotOpen) {
                slot = (int) places.getEndingCharOffset();
            } else if (depth == watchedDepth) {
                end = (int) places.getEndingCharOffset();
                watchedDepth = -1;
            }
            trailEnd();
            depth--;
        }
        return event;
    }

    private void trailStart() {
        if (watchedDepth < 0 || depth == watchedDepth) {
            return;
        }
        String name = getLocalName();
        if (name.equals("metronome")) {
            metronome = new MetronomeTrail();
            metronomes.add(metronome);
        } else if (metronome != null) {
            metronome.start(name);
        }
    }

    private void trailEnd() {
        if (metronome != null) {
            String name = getLocalName();
            metronome.end(name);
            if (name.equals("metronome")) {
                metronome = null;
            }
        }
    }

    /** Begins to watch the element whose start tag was read last. */
    void watch() throws XMLStreamException {
        watchedDepth = depth;
        start = startOffset();
        line = line();
        end = start;
        slot = (int) places.getEndingCharOffset();
        slotOpen = true;
        metronomes.clear();
        metronome = null;
    }

    /** The note values of the metronome marks in the watched element, in order. */
    List<MetronomeTrail> metronomes() {
        return metronomes;
    }

    /** The watched element, once its end tag has gone by. */
    SourceSpot watched() {
        return new SourceSpot(start, end, line, slot);
    }

    /** Position of the first character of what was read last. */
    int startOffset() {
        return (int) places.getStartingCharOffset();
    }

    /** Position behind the last character of what was read last. */
    int endOffset() throws XMLStreamException {
        return (int) places.getEndingCharOffset();
    }

    /** 1-based line of the start of what was read last. */
    int line() {
        return places.getStartLocation().getLineNumber();
    }

    /** What is read of the children of an element, and of theirs. */
    interface Children {

        /** Reads a child; whether it is still open, because it only holds others. */
        boolean start(SpotReader xml) throws XMLStreamException;

        /** What was left open, and the element itself, has ended. */
        void end(String name);
    }

    /** Reads the children of the element whose start tag was read last, and stops on its end tag. */
    void children(Children reader) throws XMLStreamException {
        for (int open = 1; open > 0;) {
            int event = next();
            if (event == START_ELEMENT) {
                open += reader.start(this) ? 1 : 0;
            } else if (event == END_ELEMENT) {
                open--;
                reader.end(getLocalName());
            }
        }
    }

    /** Passes over the element whose start tag was read last, and stops on its end tag. */
    void skipElement() throws XMLStreamException {
        int open = depth;
        while (!(next() == END_ELEMENT && depth == open - 1)) {
            // its contents are of no use here
        }
    }

    /** The element's own text, without that of elements in it; stops on its end tag. */
    String elementText() throws XMLStreamException {
        int open = depth;
        StringBuilder text = new StringBuilder();
        while (true) {
            int event = next();
            if (event == END_ELEMENT && depth == open - 1) {
                return text.toString();
            }
            if ((event == CHARACTERS || event == CDATA) && depth == open && text.length() < LONGEST_TEXT) {
                text.append(getText());
            }
        }
    }

    @Override
    public String getText() {
        String text = super.getText();
        return text != null && text.length() > LONGEST_TEXT ? text.substring(0, LONGEST_TEXT) : text;
    }

    /** The binding reads texts this way. */
    @Override
    public int getTextLength() {
        return Math.min(super.getTextLength(), LONGEST_TEXT);
    }

    /** MusicXML has no namespace; a file that declares one all the same is read alike. */
    @Override
    public String getNamespaceURI() {
        return "";
    }
}
