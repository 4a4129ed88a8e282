package countstave.cli;

import countstave.files.Arguments;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Several runs in one process, whose locale is its own: command lines with {@code ---} between them. */
public final class RunsInARow {

    static final String THEN = "---";
    /** Before the exit code of a run, after what it has told. */
    static final String EXIT = "exit code ";

    private RunsInARow() {
    }

    public static void main(String[] args) {
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        List<String> line = new ArrayList<>();
        for (String word : (String.join("\n", Arguments.typed(args)) + "\n" + THEN).split("\n")) {
            if (word.equals(THEN)) {
                out.println(EXIT + Countstave.run(line.toArray(String[]::new), System.in, out, out));
                line.clear();
            } else {
                line.add(word);
            }
        }
    }
}
