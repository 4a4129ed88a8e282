package countstave.musicxml;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.codehaus.stax2.XMLStreamReader2;

/** What somebody has written to countstave into the score: comments such as {@code <!-- countstave: ignore beat-hidden -->}. */
public final class Comments {

    private static final String NAME = "countstave:";
    private static final Pattern IGNORE = Pattern.compile("\\s*countstave:\\s*ignore\\s+(.+?)\\s*", Pattern.DOTALL);

    /**
     * A rule that is to be left alone.
     *
     * @param rule what stands for its name
     * @param at place of the comment in the text
     * @param line its line, from 1
     */
    public record Ignore(String rule, int at, int line) {
    }

    private Comments() {
    }

    /**
     * The rules that comments name, in the order of the text.
     *
     * @throws countstave.score.ScoreException if the text is not well-formed XML
     */
    public static List<Ignore> ignored(String text) {
        if (!text.contains(NAME)) {
            return List.of();
        }
        List<Ignore> found = new ArrayList<>();
        try {
            XMLStreamReader2 reader = XmlInput.raw(text);
            while (reader.hasNext()) {
                if (reader.next() != XMLStreamConstants.COMMENT) {
                    continue;
                }
                Matcher said = IGNORE.matcher(reader.getText());
                if (said.matches()) {
                    int at = (int) reader.getLocationInfo().getStartingCharOffset();
                    int line = reader.getLocationInfo().getStartLocation().getLineNumber();
                    for (String rule : said.group(1).split("[\\s,]+")) {
                        found.add(new Ignore(Plain.name(rule), at, line));
                    }
                }
            }
        } catch (XMLStreamException e) {
            throw XmlInput.describe(e);
        }
        return List.copyOf(found);
    }
}
