package countstave.cli;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.batch.OutputNames;
import countstave.batch.ScoreList;
import countstave.batch.Targets;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.count.Unplayed;
import countstave.files.SafeFile;
import countstave.grid.Explanation;
import countstave.grid.PlanOptions;
import countstave.json.JsonWriter;
import countstave.plain.Phrases;
import countstave.score.PartTimeline;
import countstave.plain.SafeText;
import countstave.text.TextOptions;
import countstave.text.TextWriter;
import countstave.text.WhyWriter;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

/** {@code countstave count}: prints the counts. */
@Command(name = "count", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = {
            "Prints what to count in every bar: the counts under a line of what is played, the unit, and where it"
                    + " changes. Counts in parentheses are said but not played.",
            "With -o they are written there instead of printed."},
        footer = {
            "",
            "Examples:",
            "  countstave count chart.musicxml --bars 9-16",
            "  countstave count chart.mxl --part Drums --system takadimi",
            "  countstave count chart.musicxml --tempo 60 --steadiness 8 --why",
            "  countstave count parts/ -o counts/           a text of every score"})
final class CountCommand implements Callable<Integer> {

    enum Format { text, json }

    private static final int GATHERED = 1 << 16;

    @ParentCommand
    Countstave parent;

    @Mixin
    OutputOptions files;

    @Option(names = "--format", order = 32, paramLabel = "FORMAT", defaultValue = "text",
            description = "text, or json for other programs. Default: ${DEFAULT-VALUE}.")
    Format format;

    @Option(names = "--unplayed", order = 33, paramLabel = "WHICH", defaultValue = "all",
            description = "Which counts that are not played are shown: all, needed or none. Default: ${DEFAULT-VALUE}.")
    Unplayed unplayed;

    @Option(names = "--ascii", order = 130, description = "Print with plain ASCII signs, for terminals without note symbols.")
    boolean ascii;

    @Option(names = "--why", order = 34, description = "Say for each bar what its count costs, what of, and what the next best would"
            + " cost. 1 is one word that is said and not played; a change of count costs about 2 to 5; less is better.")
    boolean why;

    @Mixin
    SharedOptions shared;

    @Override
    public Integer call() throws IOException {
        PlanOptions plan = shared.planOptions();
        files.check();
        ScoreList list = files.list();
        CountingOptions counting = shared.counting(list.many());
        boolean json = format == Format.json;
        files.refuseForce();
        if (json) {
            for (String option : List.of("--why", "--unplayed", "--ascii")) {
                GivenOptions.refuse(files.spec, option, "text", "leave it out, or --format json");
            }
        }
        if (files.output != null) {
            Targets targets = Targets.of(list, files.output, new OutputNames(null, json ? ".json" : ".txt"),
                    parent.console);
            return files.run(parent.console, list, targets.work(files.skipExisting, (score, file, console) -> {
                SafeFile.checkFree(targets.of(score), files.force);
                CountedScore counted = SharedOptions.count(score, file, console, counting);
                targets.write(score, files.force, out -> print(counted, plan, out), console);
            }));
        }
        return files.print(parent.console, list, json, (score, file, console) -> {
            print(SharedOptions.count(score, file, console, counting), plan, console.out());
            return null;
        });
    }

    /** Goes out as it is made: the counts of a long score are not gathered. */
    private void print(CountedScore counted, PlanOptions plan, OutputStream to) throws IOException {
        Writer out = new BufferedWriter(new OutputStreamWriter(to, StandardCharsets.UTF_8), GATHERED);
        if (format == Format.json) {
            JsonWriter.write(counted.score().title(), counted.score().source(), counted.parts(), out);
        } else {
            TextOptions options = new TextOptions(columns(), unplayed, new NoteNames(!ascii, shared.language.phrases()));
            out.append(SafeText.of(counted.score().title())).append("\n\n");
            for (PartCounts part : counted.parts()) {
                if (part != counted.parts().get(0)) {
                    out.append('\n');
                }
                new TextWriter(out, options).part(part);
                if (why) {
                    PartTimeline timeline = part.timeline();
                    new WhyWriter(out, options).part(timeline.part(), Explanation.of(timeline, plan));
                }
            }
        }
        out.flush();
    }

    /** How text is printed on this terminal. */
    static TextOptions textOptions(boolean ascii, Phrases phrases) {
        return new TextOptions(columns(), TextOptions.DEFAULT.unplayed(), new NoteNames(!ascii, phrases));
    }

    /** Width of the terminal where the shell tells it, else the usual one. */
    private static int columns() {
        String told = System.getenv("COLUMNS");
        return told != null && told.matches("\\d{1,4}") ? Integer.parseInt(told) : TextOptions.DEFAULT.width();
    }
}
