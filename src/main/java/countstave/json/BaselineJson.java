package countstave.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import countstave.plain.Phrases;
import countstave.score.ScoreException;
import countstave.spelling.Finding;
import countstave.spelling.KnownFindings;
import java.io.IOException;
import java.io.Writer;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The baseline of {@code check}, {@code countstave-baseline/1}: the findings of a state that are known from then on. */
public final class BaselineJson {

    private static final String SCHEMA = "countstave-baseline/1";

    /** Files and findings. */
    private static final int LINES = 4;

    private static final JsonFactory FACTORY = new JsonFactory();

    private final JsonStream out;

    /** @param out where the text goes; not closed here */
    public BaselineJson(Writer out) throws IOException {
        this.out = new JsonStream(out, LINES);
        this.out.object().text("schema", SCHEMA).array("files");
    }

    /**
     * Adds a file; one without findings needs no place.
     *
     * @param name its path from the folder of the baseline
     */
    public void file(String name, List<Finding> findings) throws IOException {
        if (findings.isEmpty()) {
            return;
        }
        out.object().text("file", name).array("findings");
        for (Finding finding : findings) {
            // the mark alone decides; the rest is for whoever reads it
            out.object().text("mark", finding.mark()).text("rule", finding.rule()).text("place", finding.place(Phrases.ENGLISH)).endObject();
        }
        out.endArray().endObject();
    }

    public void end() throws IOException {
        out.endArray().endObject().end();
    }

    /**
     * Reads what was written so; fields that are not known are passed over.
     *
     * @throws ScoreException if it is no baseline
     */
    public static KnownFindings read(String text) {
        Map<String, Set<String>> marks = new HashMap<>();
        try (JsonParser in = FACTORY.createParser(text)) {
            boolean known = false;
            if (in.nextToken() != JsonToken.START_OBJECT) {
                throw noBaseline(null);
            }
            while (in.nextToken() == JsonToken.FIELD_NAME) {
                String field = in.currentName();
                JsonToken value = in.nextToken();
                if (field.equals("schema")) {
                    known = SCHEMA.equals(in.getValueAsString());
                } else if (field.equals("files") && value == JsonToken.START_ARRAY) {
                    while (in.nextToken() == JsonToken.START_OBJECT) {
                        file(in, marks);
                    }
                } else {
                    in.skipChildren();
                }
            }
            if (!known) {
                throw noBaseline(null);
            }
        } catch (IOException e) {
            throw noBaseline(e);
        }
        return new KnownFindings(marks);
    }

    private static void file(JsonParser in, Map<String, Set<String>> marks) throws IOException {
        String name = "";
        Set<String> found = new HashSet<>();
        while (in.nextToken() == JsonToken.FIELD_NAME) {
            String field = in.currentName();
            JsonToken value = in.nextToken();
            if (field.equals("file")) {
                name = in.getValueAsString("");
            } else if (field.equals("findings") && value == JsonToken.START_ARRAY) {
                while (in.nextToken() == JsonToken.START_OBJECT) {
                    found.add(mark(in));
                }
            } else {
                in.skipChildren();
            }
        }
        marks.computeIfAbsent(name, none -> new HashSet<>()).addAll(found);
    }

    private static String mark(JsonParser in) throws IOException {
        String mark = "";
        while (in.nextToken() == JsonToken.FIELD_NAME) {
            String field = in.currentName();
            in.nextToken();
            if (field.equals("mark")) {
                mark = in.getValueAsString("");
            } else {
                in.skipChildren();
            }
        }
        return mark;
    }

    private static ScoreException noBaseline(IOException fault) {
        return new ScoreException("this is no baseline that can be read; write it anew with --write-baseline", fault);
    }
}
