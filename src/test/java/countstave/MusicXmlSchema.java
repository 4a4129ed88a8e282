package countstave;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.StringReader;
import java.net.URL;
import java.nio.file.Path;
import javax.xml.XMLConstants;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.parsers.SAXParserFactory;
import javax.xml.transform.sax.SAXSource;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.w3c.dom.ls.DOMImplementationLS;
import org.w3c.dom.ls.LSInput;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * The MusicXML 4.0 schema as the ProxyMusic jar ships it, ready to validate with. Nothing is fetched: the two schemas it
 * imports (for {@code xml:} and {@code xlink:} attributes) are not in the jar, so the few declarations MusicXML refers
 * to stand here.
 */
public final class MusicXmlSchema {

    private static final String SCHEMA = "/META-INF/jaxb/xsd/musicxml.xsd";

    /** {@code xml:lang} and {@code xml:space}, as in the W3C's "xml.xsd". */
    private static final String XML_ATTRIBUTES = """
            <xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema"
                targetNamespace="http://www.w3.org/XML/1998/namespace">
              <xs:attribute name="lang" type="xs:language"/>
              <xs:attribute name="space">
                <xs:simpleType><xs:restriction base="xs:NCName">
                  <xs:enumeration value="default"/><xs:enumeration value="preserve"/>
                </xs:restriction></xs:simpleType>
              </xs:attribute>
            </xs:schema>""";

    /** The XLink 1.0 attributes of a simple link. */
    private static final String XLINK_ATTRIBUTES = """
            <xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema" targetNamespace="http://www.w3.org/1999/xlink">
              <xs:attribute name="href" type="xs:anyURI"/>
              <xs:attribute name="type" type="xs:string"/>
              <xs:attribute name="role" type="xs:string"/>
              <xs:attribute name="title" type="xs:string"/>
              <xs:attribute name="show" type="xs:string"/>
              <xs:attribute name="actuate" type="xs:string"/>
            </xs:schema>""";

    private static Schema schema;

    private MusicXmlSchema() {
    }

    /** @throws SAXException with the first violation, if the file is not valid MusicXML 4.0 (partwise or timewise) */
    public static void validate(Path file) throws SAXException, IOException {
        validate(new InputSource(file.toUri().toString()));
    }

    /** @throws SAXException with the first violation, if the text is not valid MusicXML 4.0 (partwise or timewise) */
    public static void validate(InputSource text) throws SAXException, IOException {
        try {
            SAXParserFactory parsers = SAXParserFactory.newDefaultNSInstance();
            // a score names its DTD by a web address; it is neither needed here nor to be fetched
            parsers.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
            parsers.setFeature("http://xml.org/sax/features/external-general-entities", false);
            SAXSource source = new SAXSource(parsers.newSAXParser().getXMLReader(), text);
            schema().newValidator().validate(source);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException(e);
        }
    }

    private static synchronized Schema schema() throws SAXException, IOException, ParserConfigurationException {
        if (schema == null) {
            SchemaFactory factory = SchemaFactory.newDefaultInstance();
            factory.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
            DOMImplementationLS dom = (DOMImplementationLS) javax.xml.parsers.DocumentBuilderFactory
                    .newDefaultInstance().newDocumentBuilder().getDOMImplementation().getFeature("LS", "3.0");
            factory.setResourceResolver((type, namespace, publicId, systemId, base) -> {
                String text = switch (String.valueOf(namespace)) {
                    case XMLConstants.XML_NS_URI -> XML_ATTRIBUTES;
                    case "http://www.w3.org/1999/xlink" -> XLINK_ATTRIBUTES;
                    default -> throw new IllegalStateException("the schema asks for " + systemId);
                };
                LSInput input = dom.createLSInput();
                Reader reader = new StringReader(text);
                input.setCharacterStream(reader);
                input.setSystemId(systemId);
                return input;
            });
            URL url = MusicXmlSchema.class.getResource(SCHEMA);
            if (url == null) {
                throw new IllegalStateException("no " + SCHEMA + " on the class path");
            }
            try (InputStream in = url.openStream()) {
                schema = factory.newSchema(new StreamSource(in, url.toString()));
            }
        }
        return schema;
    }
}
