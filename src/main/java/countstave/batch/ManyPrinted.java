package countstave.batch;

import countstave.files.Console;
import countstave.json.ManyJson;
import countstave.musicxml.ScoreFile;
import countstave.text.CellWidth;
import countstave.text.SafeText;
import java.io.IOException;
import java.io.PrintStream;

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

    void begin(PrintStream out) throws IOException {
    }

    void end(PrintStream out) throws IOException {
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

        private final ManyJson json = new ManyJson();

        Json(ScoreWork<Void> work) {
            super(work);
        }

        @Override
        void begin(PrintStream out) throws IOException {
            json.begin(out);
        }

        @Override
        public void deliver(NamedScore score, byte[] printed, Void result, String problem, PrintStream out)
                throws IOException {
            json.score(score.name(), problem, out);
            if (problem == null) {
                out.write(printed);
            }
            json.endScore(out);
        }

        @Override
        void end(PrintStream out) throws IOException {
            json.end(out);
        }
    }
}
