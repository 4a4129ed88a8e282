package countstave.cli;

import countstave.CountedScore;
import countstave.count.PartCounts;
import countstave.count.Unplayed;
import countstave.grid.Explanation;
import countstave.json.JsonWriter;
import countstave.musicxml.ScoreFile;
import countstave.score.PartTimeline;
import countstave.text.SafeText;
import countstave.text.TextOptions;
import countstave.text.TextWriter;
import countstave.text.WhyWriter;
import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** {@code countstave count}: prints the counts. */
@Command(name = "count", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = {
            "Prints what to count in every bar: the counts under a line of what is played, the unit, and where it"
                    + " changes. Counts in parentheses are said but not played."},
        footer = {
            "",
            "Examples:",
            "  countstave count chart.musicxml --bars 9-16",
            "  countstave count chart.mxl --part Drums --system takadimi",
            "  countstave count chart.musicxml --tempo 60 --steadiness 8 --why"})
final class CountCommand implements Callable<Integer> {

    enum Format { text, json }

    @ParentCommand
    Countstave parent;

    @Parameters(paramLabel = "SCORE", description = "A MusicXML score (.musicxml, .xml, .mxl), or - for standard input.")
    String score;

    @Option(names = "--format", paramLabel = "FORMAT", defaultValue = "text",
            description = "text, or json for other programs. Default: ${DEFAULT-VALUE}.")
    Format format;

    @Option(names = "--unplayed", paramLabel = "WHICH", defaultValue = "all",
            description = "Which counts that are not played are shown: all, needed or none. Default: ${DEFAULT-VALUE}.")
    Unplayed unplayed;

    @Option(names = "--ascii", description = "Print with plain ASCII signs, for terminals without note symbols.")
    boolean ascii;

    @Option(names = "--why", description = "Say for each bar what its count costs and what the next best would cost.")
    boolean why;

    @Mixin
    SharedOptions shared;

    @Override
    public Integer call() throws IOException {
        return Job.run(parent.console, score, () -> {
            ScoreFile file = Inputs.open(score, parent.console);
            CountedScore counted = CountedScore.of(file, shared.counting());
            counted.warnings().forEach(line -> Job.warn(parent.console, score, line));
            StringBuilder out = new StringBuilder();
            if (format == Format.json) {
                JsonWriter.write(counted.score().title(), counted.score().source(), counted.parts(), out);
            } else {
                print(counted, out);
            }
            parent.console.out().print(out);
            parent.console.out().flush();
        });
    }

    private void print(CountedScore counted, StringBuilder out) throws IOException {
        TextOptions options = new TextOptions(columns(), unplayed, !ascii);
        out.append(SafeText.of(counted.score().title())).append("\n\n");
        for (PartCounts part : counted.parts()) {
            new TextWriter(out, options).part(part);
            if (why) {
                PartTimeline timeline = part.plan().timeline();
                new WhyWriter(out, options).part(timeline.part(), Explanation.of(timeline, shared.planOptions()));
            }
        }
    }

    /** How text is printed on this terminal. */
    static TextOptions textOptions(boolean ascii) {
        return new TextOptions(columns(), TextOptions.DEFAULT.unplayed(), !ascii);
    }

    /** Width of the terminal where the shell tells it, else the usual one. */
    private static int columns() {
        String told = System.getenv("COLUMNS");
        return told != null && told.matches("\\d{1,4}") ? Integer.parseInt(told) : TextOptions.DEFAULT.width();
    }
}
