package countstave.musicxml;

import com.ctc.wstx.api.WstxInputProperties;
import com.ctc.wstx.exc.WstxEOFException;
import com.ctc.wstx.stax.WstxInputFactory;
import countstave.score.ScoreException;
import java.io.StringReader;
import javax.xml.stream.Location;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamException;
import org.codehaus.stax2.XMLInputFactory2;
import org.codehaus.stax2.XMLStreamReader2;

/**
 * Opens the XML of a score, secured: no document type is processed, so no entity is expanded and nothing outside the
 * text is ever opened; sizes are limited so that a hostile file is refused and not worked on.
 */
final class XmlInput {

    private static final WstxInputFactory FACTORY = create(true);

    /** Needed for few files: made when it is. */
    private static final class Pieces {
        static final WstxInputFactory FACTORY = create(false);
    }

    private XmlInput() {
    }

    private static WstxInputFactory create(boolean coalescing) {
        WstxInputFactory factory = new WstxInputFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, coalescing);
        // faults must show where they are met, as checked exceptions
        factory.setProperty(XMLInputFactory2.P_LAZY_PARSING, false);
        factory.setProperty(XMLInputFactory2.P_INTERN_NAMES, true);
        factory.setProperty(XMLInputFactory2.P_INTERN_NS_URIS, true);
        factory.setProperty(WstxInputProperties.P_MAX_ATTRIBUTE_SIZE, 100_000);
        factory.setProperty(WstxInputProperties.P_MAX_ATTRIBUTES_PER_ELEMENT, 200);
        factory.setProperty(WstxInputProperties.P_MAX_ELEMENT_DEPTH, 100);
        factory.setProperty(WstxInputProperties.P_MAX_CHILDREN_PER_ELEMENT, 20_000_000L);
        factory.setProperty(WstxInputProperties.P_MAX_TEXT_LENGTH, 50_000_000);
        factory.setProperty(WstxInputProperties.P_MAX_ENTITY_COUNT, 1);
        factory.setProperty(WstxInputProperties.P_MAX_DTD_DEPTH, 1);
        return factory;
    }

    /** The stream itself, with the places of what goes by. */
    static XMLStreamReader2 raw(String text) throws XMLStreamException {
        return (XMLStreamReader2) FACTORY.createXMLStreamReader(new StringReader(text));
    }

    /** The same, with CDATA sections apart from the text around them, and text in pieces. */
    static XMLStreamReader2 pieces(String text) throws XMLStreamException {
        return (XMLStreamReader2) Pieces.FACTORY.createXMLStreamReader(new StringReader(text));
    }

    static SpotReader open(String text) throws XMLStreamException {
        return new SpotReader(raw(text));
    }

    /** The fault in one line with its place and what to do. */
    static ScoreException describe(XMLStreamException fault) {
        Location place = fault.getLocation();
        String where = place == null || place.getLineNumber() < 1 ? ""
                : "line " + place.getLineNumber() + ", column " + Math.max(1, place.getColumnNumber()) + ": ";
        String what = firstLine(fault.getMessage());
        if (fault instanceof WstxEOFException) {
            return new ScoreException(where + "the file ends in the middle (" + what
                    + "): copy or export it again", fault);
        }
        if (what.startsWith("Undeclared general entity")) {
            return new ScoreException(where + "an entity is used that is not read here (" + what
                    + "): write its text in its place", fault);
        }
        if (what.contains("limit")) {
            return new ScoreException(where + "the file is built beyond all measure (" + what
                    + "): no score needs that; export it again", fault);
        }
        return new ScoreException(where + "this is not well-formed XML (" + what + "): export the score again", fault);
    }

    private static String firstLine(String message) {
        if (message == null) {
            return "no details";
        }
        int at = message.indexOf("\n at ");
        String first = at < 0 ? message : message.substring(0, at);
        String shown = Plain.line(first);
        return shown.length() > 160 ? shown.substring(0, 160) + "…" : shown;
    }
}
