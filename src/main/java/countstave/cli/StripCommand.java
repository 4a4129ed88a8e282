package countstave.cli;

import countstave.musicxml.OwnMarks;
import countstave.musicxml.ScoreFile;
import countstave.score.ScoreException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** {@code countstave strip}: takes countstave's annotations out again. */
@Command(name = "strip", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = "Takes countstave's counts and marks out of a score again: what is left is the score as it was"
                + " before 'countstave annotate', byte for byte.",
        footer = {
            "",
            "Examples:",
            "  countstave strip chart-counts.musicxml -o chart.musicxml",
            "  countstave strip chart-counts.musicxml --force         takes them out of the file itself"})
final class StripCommand implements Callable<Integer> {

    @ParentCommand
    Countstave parent;

    @Parameters(paramLabel = "SCORE", description = "An annotated score (.musicxml, .xml, .mxl), or - for standard input.")
    String score;

    @Option(names = {"-o", "--output"}, paramLabel = "OUT",
            description = "Where to write, in the form of the input. Default: the score itself, which needs --force.")
    Path output;

    @Option(names = "--force", description = "Replace the output if it is already there.")
    boolean force;

    @Override
    public Integer call() {
        return Job.run(parent.console, score, () -> {
            ScoreFile file = Inputs.open(score, parent.console);
            if (output == null && score.equals(Inputs.STANDARD_INPUT)) {
                throw new ScoreException("say with -o where to write");
            }
            Path target = output != null ? output : Inputs.path(score);
            SafeFile.checkFree(target, force);
            if (!OwnMarks.isAnnotated(file.text())) {
                Job.warn(parent.console, score, "has no counts of countstave in it; it is written as it is");
            }
            byte[] bytes = file.withText(OwnMarks.strip(file.text())).toBytes();
            SafeFile.write(target, force, out -> out.write(bytes));
            parent.console.out().println("wrote " + Console.clean(target.toString()));
        });
    }
}
