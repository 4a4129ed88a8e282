package countstave.cli;

import countstave.CountedScore;
import countstave.chart.ChartOptions;
import countstave.chart.ChartWriter;
import countstave.count.Unplayed;
import countstave.musicxml.Annotator;
import countstave.musicxml.CountPart;
import countstave.musicxml.ScoreFile;
import countstave.score.ScoreException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** {@code countstave annotate}: writes the counts under the notes. */
@Command(name = "annotate", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = {
            "Writes the counts under the notes: a lyric under every attack, with the counts that are said but not"
                    + " played in parentheses, and a mark above the staff wherever the counting changes.",
            "The score itself stays as it is; 'countstave strip' takes the counts out again.",
            "With an output that ends in .pdf it draws a chart for the music stand instead: the notation with the counts"
                    + " under the notes."},
        footer = {
            "",
            "Examples:",
            "  countstave annotate chart.musicxml                     writes chart-counts.musicxml",
            "  countstave annotate chart.mxl -o counted.musicxml --unplayed all",
            "  countstave annotate chart.musicxml --part Drums --system takadimi",
            "  countstave annotate chart.musicxml -o chart.pdf --paper letter --large"})
final class AnnotateCommand implements Callable<Integer> {

    enum Form { lyrics, part }

    @ParentCommand
    Countstave parent;

    @Parameters(paramLabel = "SCORE", description = "A MusicXML score (.musicxml, .xml, .mxl), or - for standard input.")
    String score;

    @Option(names = {"-o", "--output"}, paramLabel = "OUT",
            description = "Where to write; the ending decides: .musicxml or .xml plain, .mxl compressed, .pdf a chart."
                    + " Default: beside the score, with -counts in its name.")
    Path output;

    @Option(names = "--force", description = "Replace the output if it is already there.")
    boolean force;

    @Option(names = "--as", paramLabel = "FORM", defaultValue = "lyrics",
            description = "lyrics: under the notes. part: as a one-line part of its own with the whole grid written out."
                    + " Default: ${DEFAULT-VALUE}.")
    Form form;

    @Option(names = "--unplayed", paramLabel = "WHICH",
            description = "Which counts that are not played are shown: all; needed (in a beat with a note off its start"
                    + " every count, in any other beat the number alone); none. Default: needed; in a PDF all.")
    Unplayed unplayed;

    @Mixin
    PageOptions page;

    @Mixin
    SharedOptions shared;

    @Override
    public Integer call() {
        return Job.run(parent.console, score, () -> {
            ScoreFile file = Inputs.open(score, parent.console);
            Path target = output != null ? output : beside(file);
            if (hasEnding(target, ".pdf")) {
                draw(file, target);
                return;
            }
            boolean compressed = compressed(target);
            SafeFile.checkFree(target, force);
            CountedScore counted = CountedScore.of(file, shared.counting());
            counted.warnings().forEach(line -> Job.warn(parent.console, score, line));
            String text = form == Form.part
                    ? CountPart.annotate(counted.file().text(), counted.score().parts(), counted.parts())
                    : Annotator.annotate(counted.file().text(), counted.parts(), shared.selection(),
                            unplayed != null ? unplayed : Unplayed.NEEDED);
            ScoreFile annotated = counted.file().withText(text);
            byte[] bytes = compressed ? annotated.toMxl() : annotated.toPlain();
            SafeFile.write(target, force, out -> out.write(bytes));
            parent.console.out().println("wrote " + Console.clean(target.toString()));
        });
    }

    private void draw(ScoreFile file, Path target) {
        ChartOptions options;
        try {
            options = page.chart(unplayed != null ? unplayed : Unplayed.ALL);
        } catch (IllegalArgumentException e) {
            throw new ScoreException(e.getMessage(), e);
        }
        SafeFile.checkFree(target, force);
        Thread fonts = ChartWriter.prepare();
        CountedScore counted = CountedScore.of(file, shared.counting());
        counted.warnings().forEach(line -> Job.warn(parent.console, score, line));
        await(fonts);
        List<String> notes = new ArrayList<>();
        SafeFile.write(target, force,
                out -> notes.addAll(ChartWriter.write(counted.parts(), counted.score(), options, out)));
        notes.forEach(line -> Job.warn(parent.console, score, line));
        parent.console.out().println("wrote " + Console.clean(target.toString()));
    }

    private static void await(Thread thread) {
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static boolean hasEnding(Path target, String ending) {
        return target.toString().toLowerCase(Locale.ROOT).endsWith(ending);
    }

    private Path beside(ScoreFile file) {
        if (score.equals(Inputs.STANDARD_INPUT)) {
            throw new ScoreException("say with -o where to write");
        }
        String ending = file.isCompressed() ? ".mxl" : file.name().toLowerCase(Locale.ROOT).endsWith(".xml") ? ".xml"
                : ".musicxml";
        return Inputs.path(score).resolveSibling(file.stem() + "-counts" + ending);
    }

    private static boolean compressed(Path target) {
        if (hasEnding(target, ".mxl")) {
            return true;
        }
        if (hasEnding(target, ".musicxml") || hasEnding(target, ".xml")) {
            return false;
        }
        throw new ScoreException("cannot tell what to write from the name " + Console.clean(target.toString())
                + ": end it in .musicxml, .xml, .mxl or .pdf");
    }
}
