package countstave.json;

import java.io.IOException;
import java.io.Writer;

/**
 * The frame around the documents of many scores, {@code countstave-many/1}; docs/json.md describes it. The documents
 * themselves are put between by whoever has them.
 */
public final class ManyJson {

    /** Name and version of the contract. */
    public static final String SCHEMA = "countstave-many/1";

    private static final int LINES = 2;

    private final Writer target;
    private final JsonStream out;

    /** @param out where the frame goes, at once, so that the documents find their place in it; not closed here */
    public ManyJson(Writer out) throws IOException {
        this.target = out;
        this.out = new JsonStream(out, LINES);
        this.out.object().text("schema", SCHEMA).array("scores");
        flush();
    }

    /**
     * Opens a score: its document is to follow, unless there is a problem.
     *
     * @param file as it was named or found
     * @param problem why it could not be worked on, or null
     */
    public void score(String file, String problem) throws IOException {
        out.object().text("file", file);
        if (problem == null) {
            out.elsewhere("result");
        } else {
            out.text("problem", problem);
        }
        flush();
    }

    public void endScore() throws IOException {
        out.endObject();
        flush();
    }

    public void end() throws IOException {
        out.endArray().endObject().end();
        target.flush();
    }

    private void flush() throws IOException {
        out.flush();
        target.flush();
    }
}
