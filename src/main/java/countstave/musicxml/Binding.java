package countstave.musicxml;

import countstave.score.ScoreException;
import jakarta.xml.bind.JAXBContext;
import jakarta.xml.bind.JAXBException;
import jakarta.xml.bind.Unmarshaller;
import jakarta.xml.bind.ValidationEvent;
import jakarta.xml.bind.ValidationEventLocator;
import java.util.Map;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.audiveris.proxymusic.Attributes;
import org.audiveris.proxymusic.Backup;
import org.audiveris.proxymusic.Barline;
import org.audiveris.proxymusic.Direction;
import org.audiveris.proxymusic.Forward;
import org.audiveris.proxymusic.Note;
import org.audiveris.proxymusic.Sound;
import org.glassfish.jaxb.runtime.api.JAXBRIContext;
import org.glassfish.jaxb.runtime.v2.runtime.Coordinator;

/**
 * Binds one element of a bar at a time to its class, so that a score of any size needs memory for one note only.
 *
 * <p>The binding's context is built once in a process and only when a score is read: it takes longer than a page of
 * music does.
 */
final class Binding implements AutoCloseable {

    private static final class Context {

        static final JAXBContext CONTEXT = create();

        private static JAXBContext create() {
            try {
                Class<?>[] bound = {Note.class, Attributes.class, Backup.class, Forward.class, Direction.class,
                    Sound.class, Barline.class};
                return JAXBContext.newInstance(bound, Map.of(JAXBRIContext.ANNOTATION_READER, new ReadAnnotations()));
            } catch (JAXBException e) {
                throw new ScoreException("the MusicXML binding could not be prepared: reinstall the program", e);
            }
        }
    }

    /**
     * Stays with a thread for as long as it reads a score. Without it the binding takes its own entry out of the thread's
     * table after every start tag and text, and puts it in anew at the next.
     */
    private static final class Stay extends Coordinator {

        void begin() {
            pushCoordinator();
        }

        void end() {
            popCoordinator();
        }

        @Override
        protected ValidationEventLocator getLocation() {
            return null;
        }

        @Override
        public boolean handleEvent(ValidationEvent event) {
            return true;
        }
    }

    private final Stay stay = new Stay();
    private final Unmarshaller unmarshaller;

    /** Builds the context beside what the program does until it reads its first score. */
    static void prepare() {
        Thread builder = new Thread(() -> Context.CONTEXT.hashCode(), "binding");
        builder.setDaemon(true);
        // a fault shows where the binding is used
        builder.setUncaughtExceptionHandler((thread, fault) -> { });
        builder.start();
    }

    Binding() {
        stay.begin();
        try {
            unmarshaller = Context.CONTEXT.createUnmarshaller();
            // a stray element or an unreadable number is no reason to refuse the score: it stays unset
            unmarshaller.setEventHandler(event -> true);
        } catch (JAXBException e) {
            throw new ScoreException("the MusicXML binding could not be prepared: reinstall the program", e);
        }
    }

    /**
     * Binds the element at which {@code reader} stands, and leaves the reader on what follows its end.
     *
     * @throws XMLStreamException if the text is not well-formed
     */
    <T> T read(XMLStreamReader reader, Class<T> type) throws XMLStreamException {
        try {
            return unmarshaller.unmarshal(reader, type).getValue();
        } catch (NumberFormatException e) {
            // the binding lets some of these through, in the middle of the element
            throw new ScoreException("line " + reader.getLocation().getLineNumber()
                    + ": not a number where one must stand; correct it or export again", e);
        } catch (JAXBException e) {
            for (Throwable cause = e; cause != null; cause = cause.getCause()) {
                if (cause instanceof XMLStreamException xml) {
                    throw xml;
                }
            }
            throw new XMLStreamException("the element cannot be read", reader.getLocation(), e);
        }
    }

    /** To be called on the thread that made it: another score may be read there later. */
    @Override
    public void close() {
        stay.end();
    }
}
