package countstave.batch;

import countstave.files.Console;
import countstave.json.ManyJson;
import countstave.musicxml.ScoreFile;
import countstave.text.CellWidth;
import countstave.plain.SafeText;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** What is printed of many scores: one after another, each under its name. */
abstract class ManyPrinted implements ScoreWork<Void> {

    private final ScoreWork<Void> work;

    private ManyPrinted(ScoreWork<Void> work) {
        this.work = work;
    }

    @Override
    public Void run(NamedScore score, ScoreFile file, Console console) throws IOException {
        return work.run(score, file, console);
    }

    /** After the last score. */
    void end() throws IOException {
    }

    /** For reading. */
    static final class Text extends ManyPrinted {

        private boolean follows;

        Text(ScoreWork<Void> work) {
            super(work);
        }

        @Override
        public void deliver(NamedScore score, byte[] printed, Void result, String problem, PrintStream out)
                throws IOException {
            if (problem == null) {
                String name = SafeText.of(score.name());
                out.print((follows ? "\n" : "") + name + "\n" + "=".repeat(CellWidth.of(name)) + "\n");
                out.write(printed);
                follows = true;
            }
        }
    }

    /** For other programs: {@code countstave-many/1}, docs/json.md. */
    static final class Json extends ManyPrinted {

        private final ManyJson json;

        Json(ScoreWork<Void> work, PrintStream out) throws IOException {
            super(work);
            this.json = new ManyJson(new OutputStreamWriter(out, StandardCharsets.UTF_8));
        }

        @Override
        public void deliver(NamedScore score, byte[] printed, Void result, String problem, PrintStream out)
                throws IOException {
            json.score(score.name(), problem);
            if (problem == null) {
                out.write(printed);
            }
            json.endScore();
        }

        @Override
        void end() throws IOException {
            json.end();
        }
    }
}
