package countstave.json;

import java.io.IOException;

/**
 * The frame around the documents of many scores, {@code countstave-many/1}; docs/json.md describes it. The documents
 * themselves are put between by whoever has them.
 */
public final class ManyJson {

    /** Name and version of the contract. */
    public static final String SCHEMA = "countstave-many/1";

    private boolean first = true;

    public void begin(Appendable out) throws IOException {
        JsonText text = new JsonText(out);
        text.raw("{\"schema\":").text(SCHEMA).raw(",\"scores\":[");
        text.flush();
    }

    /**
     * Opens a score: its document is to follow, unless there is a problem.
     *
     * @param file as it was named or found
     * @param problem why it could not be worked on, or null
     */
    public void score(String file, String problem, Appendable out) throws IOException {
        JsonText text = new JsonText(out);
        text.raw(first ? "\n" : ",\n").raw("{\"file\":").text(file);
        first = false;
        if (problem == null) {
            text.raw(",\"result\":");
        } else {
            text.raw(",\"problem\":").text(problem);
        }
        text.flush();
    }

    public void endScore(Appendable out) throws IOException {
        out.append("}");
    }

    public void end(Appendable out) throws IOException {
        out.append("]}\n");
    }
}
