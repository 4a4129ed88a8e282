package countstave.musicxml;

import countstave.score.Part;
import countstave.score.Score;
import countstave.score.ScoreException;
import countstave.score.SourceSpot;
import countstave.time.TimeOverflowException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.audiveris.proxymusic.Attributes;
import org.audiveris.proxymusic.Backup;
import org.audiveris.proxymusic.Barline;
import org.audiveris.proxymusic.Direction;
import org.audiveris.proxymusic.Forward;
import org.audiveris.proxymusic.Note;
import org.audiveris.proxymusic.Sound;
import org.codehaus.stax2.XMLStreamReader2;

/**
 * Reads a score: MusicXML 1.0 to 4.0, by parts or by bars ({@code score-partwise}, {@code score-timewise}), in one pass
 * over the text. One element at a time is bound, turned into the model and dropped.
 *
 * <p>What the file says about time is made exact on the way, see {@link LengthReader} and {@link BarClock}.
 */
public final class ScoreReader {

    private final ScoreFile file;
    private final ReadOptions options;
    /** Null until the first element that is to be bound: it may have to be waited for. */
    private Binding binding;
    private final Header header = new Header();
    private final TempoMap tempi = new TempoMap();
    private final SwingMap swings = new SwingMap();
    private final Map<String, PartReader> parts = new LinkedHashMap<>();
    private SpotReader xml;

    private ScoreReader(ScoreFile file, ReadOptions options) {
        this.file = file;
        this.options = options;
    }

    /** Begins to get ready on a thread of its own: whoever knows that a score will be read soon saves the wait. */
    public static void prepare() {
        Binding.prepare();
    }

    /**
     * The score in {@code file}.
     *
     * @throws ScoreException if it is not a readable MusicXML score: one line that says where, what and what to do
     */
    public static Score read(ScoreFile file, ReadOptions options) {
        return new ScoreReader(file, options).read();
    }

    /**
     * Whether the file may be a score: its root element is one that {@link #read} reads, or cannot be read at all. Files
     * that end in {@code .xml} may be anything.
     */
    public static boolean isScore(ScoreFile file) {
        try {
            XMLStreamReader2 xml = XmlInput.raw(file.text());
            while (xml.hasNext()) {
                if (xml.next() == XMLStreamConstants.START_ELEMENT) {
                    String root = xml.getLocalName();
                    return root.equals("score-partwise") || root.equals("score-timewise");
                }
            }
        } catch (XMLStreamException e) {
            // told when it is read
        }
        return true;
    }

    private Score read() {
        try {
            xml = XmlInput.open(file.text());
            walk();
            SectionEnds.check(file.text());
        } catch (XMLStreamException e) {
            throw XmlInput.describe(e);
        } finally {
            if (binding != null) {
                binding.close();
            }
        }
        if (parts.isEmpty()) {
            throw new ScoreException("the score has no parts: export it again with its music");
        }
        for (PartReader part : parts.values()) {
            if (part.bars.isEmpty()) {
                throw new ScoreException(part.place() + ": it has no bars; take it out of the score or export again");
            }
        }
        ScoreFinisher finisher = new ScoreFinisher(List.copyOf(parts.values()));
        List<Part> finished;
        try {
            finished = finisher.finish(header, tempi, swings);
        } catch (TimeOverflowException e) {
            throw new ScoreException("its durations are so long or so finely divided that they cannot be kept exactly; "
                    + "export the score again", e);
        }
        return new Score(header.title(Plain.line(file.stem())), header.composer(), file.name(), finished,
                finisher.facts());
    }

    private void walk() throws XMLStreamException {
        while (xml.next() != XMLStreamConstants.START_ELEMENT) {
            if (xml.getEventType() == XMLStreamConstants.END_DOCUMENT) {
                throw new ScoreException("the file holds no XML element: export the score again");
            }
        }
        switch (xml.getLocalName()) {
            case "score-partwise" -> children(this::partwise);
            case "score-timewise" -> children(this::timewise);
            case "opus" -> throw new ScoreException("this is a list of scores (an opus), not a score: "
                    + "name one of the scores in it");
            case "container" -> throw new ScoreException("this is the table of contents of a compressed score: "
                    + "name the .mxl file itself");
            default -> throw new ScoreException("its root element is \"" + Plain.shown(xml.getLocalName())
                    + "\", not score-partwise or score-timewise: this is not a MusicXML score; export it as MusicXML");
        }
        while (xml.hasNext()) {
            // to the end: what is not well-formed behind the score would be written back
            xml.next();
        }
    }

    /** A child of the element that is open; must leave the reader behind the child's end tag. */
    private interface Child {
        void read(String name) throws XMLStreamException;
    }

    /** Hands on every child of the element whose start tag was read last, and stops on that element's end tag. */
    private void children(Child child) throws XMLStreamException {
        xml.next();
        while (xml.getEventType() != XMLStreamConstants.END_ELEMENT) {
            if (xml.getEventType() == XMLStreamConstants.START_ELEMENT) {
                child.read(xml.getLocalName());
            } else {
                xml.next();
            }
        }
    }

    private void partwise(String name) throws XMLStreamException {
        if (!name.equals("part")) {
            header.read(xml);
            xml.next();
            return;
        }
        PartReader part = newPart(Plain.name(xml.getAttributeValue(null, "id")));
        children(child -> {
            if (child.equals("measure")) {
                measureOf(part, xml.getAttributeValue(null, "number"), isImplicit());
            } else {
                xml.skipElement();
                xml.next();
            }
        });
        xml.next();
    }

    private void timewise(String name) throws XMLStreamException {
        if (!name.equals("measure")) {
            header.read(xml);
            xml.next();
            return;
        }
        String number = xml.getAttributeValue(null, "number");
        boolean implicit = isImplicit();
        int index = parts.values().stream().mapToInt(p -> p.bars.size()).max().orElse(0);
        children(child -> {
            if (child.equals("part")) {
                String id = Plain.name(xml.getAttributeValue(null, "id"));
                PartReader part = parts.get(id);
                if (part == null) {
                    part = newPart(id);
                }
                while (part.bars.size() < index) {
                    part.emptyBar(null);
                }
                measureOf(part, number, implicit);
            } else {
                xml.skipElement();
                xml.next();
            }
        });
        for (PartReader part : parts.values()) {
            if (part.bars.size() == index) {
                part.emptyBar(number);
            }
        }
        xml.next();
    }

    private boolean isImplicit() {
        return "yes".equals(xml.getAttributeValue(null, "implicit"));
    }

    /** A part by its id; where the file forgets it or uses it twice, one that is free. */
    private PartReader newPart(String given) {
        String id = given;
        if (id.isEmpty()) {
            List<String> listed = new ArrayList<>(header.partIds());
            listed.removeAll(parts.keySet());
            id = listed.isEmpty() ? "P" + (parts.size() + 1) : listed.get(0);
        }
        String free = id;
        for (int i = 2; parts.containsKey(free); i++) {
            free = id + "-" + i;
        }
        PartReader part = new PartReader(free, tempi, swings, options);
        parts.put(free, part);
        return part;
    }

    /** Reads the bar of one part: a measure's contents, or in a timewise score those of a part in a measure. */
    private void measureOf(PartReader part, String number, boolean implicit) throws XMLStreamException {
        int start = xml.startOffset();
        int line = xml.line();
        part.beginBar(number, implicit);
        try {
            children(child -> musicData(part, child));
        } catch (TimeOverflowException e) {
            throw part.absurd(e);
        }
        part.endBar(new SourceSpot(start, xml.endOffset(), line, 0));
        xml.next();
    }

    private void musicData(PartReader part, String name) throws XMLStreamException {
        xml.watch();
        if (binding == null) {
            binding = new Binding();
        }
        switch (name) {
            case "note" -> {
                Note note = binding.read(xml, Note.class);
                part.add(new BarElement(note, xml.watched(), List.of()));
            }
            case "backup" -> part.add(BarElement.of(binding.read(xml, Backup.class)));
            case "forward" -> part.add(BarElement.of(binding.read(xml, Forward.class)));
            case "attributes" -> part.add(BarElement.of(binding.read(xml, Attributes.class)));
            case "direction" -> {
                Direction direction = binding.read(xml, Direction.class);
                part.add(new BarElement(direction, null, List.copyOf(xml.metronomes())));
            }
            case "sound" -> part.add(BarElement.of(binding.read(xml, Sound.class)));
            case "barline" -> part.add(BarElement.of(binding.read(xml, Barline.class)));
            case "harmony" -> part.add(BarElement.of(HarmonyReader.read(xml)));
            case "figured-bass" -> part.add(BarElement.of(FiguredBassReader.read(xml)));
            default -> {
                xml.skipElement();
                xml.next();
            }
        }
    }
}
