package countstave.cli;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.batch.NamedScore;
import countstave.batch.OutputNames;
import countstave.batch.PartNames;
import countstave.batch.ScoreList;
import countstave.batch.Targets;
import countstave.chart.ChartOptions;
import countstave.chart.ChartWriter;
import countstave.chart.Preparation;
import countstave.chart.layout.Chart;
import countstave.count.FeltNotes;
import countstave.count.NoteNames;
import countstave.count.Unplayed;
import countstave.files.Console;
import countstave.files.FileNames;
import countstave.files.SafeFile;
import countstave.musicxml.Annotator;
import countstave.musicxml.CountPart;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.Splice;
import countstave.score.ScoreException;
import countstave.score.Warning;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

/** {@code countstave annotate}: writes the counts under the notes. */
@Command(name = "annotate", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = {
            "Writes the counts under the notes: a lyric under every attack, with the counts that are said but not"
                    + " played in parentheses, and a mark above the staff wherever the counting changes.",
            "The score itself stays as it is; 'countstave strip' takes the counts out again.",
            "With an output that ends in .pdf it draws a chart for the music stand instead: the notation with the counts"
                    + " under the notes; one that ends in .svg is the same as drawings, the further pages in chart-2.svg and so"
                    + " on. An output in .mxl is compressed, one in .musicxml or .xml plain.",
            "With the word beside for -o, the output lies beside each score, with -counts in its name; so does that of one"
                    + " score without -o."},
        footer = {
            "",
            "Examples:",
            "  countstave annotate chart.musicxml           writes chart-counts.musicxml",
            "  countstave annotate chart.mxl -o counted.musicxml --unplayed all",
            "  countstave annotate chart.musicxml --part Drums --system takadimi",
            "  countstave annotate chart.musicxml -o chart.pdf --paper letter --large",
            "  countstave annotate parts/ --as chart -o charts/     a PDF of every score",
            "  countstave annotate band.mxl --as chart --each-part -o set/"})
final class AnnotateCommand implements Callable<Integer> {

    enum Form { lyrics, part, chart }

    @ParentCommand
    Countstave parent;

    @Mixin
    OutputOptions files;

    @Option(names = "--as", order = 30, paramLabel = "FORM",
            description = "lyrics: under the notes. part: as a one-line part of its own with the whole grid written out."
                    + " chart: as a PDF for the music stand. Default: lyrics, or chart if the output ends in .pdf or .svg.")
    Form form;

    @Option(names = "--each-part", order = 31, description = "With --as chart: a PDF of its own for each part, named by score and part, in"
            + " the folder of -o.")
    boolean eachPart;

    @Option(names = "--unplayed", order = 33, paramLabel = "WHICH",
            description = "Which counts that are not played are shown: all; needed (in a beat with a note off its start"
                    + " every count, in any other beat the number alone); none. Default: needed; in a chart all.")
    Unplayed unplayed;

    @Mixin
    PageOptions page;

    @Mixin
    DrawnOptions drawn;

    @Mixin
    SharedOptions shared;

    @Override
    public Integer call() throws IOException {
        files.check();
        ScoreList list = files.list();
        CountingOptions counting = shared.counting(list.many());
        if (files.output != null && isChart(files.output) && !list.many()) {
            if (form != null && form != Form.chart) {
                throw new ScoreException("--as " + form + " cannot be a " + (hasEnding(files.output, ".pdf") ? ".pdf" : ".svg")
                        + ": end the output in .musicxml, .xml or .mxl");
            }
            form = Form.chart;
        }
        if (eachPart && form != Form.chart) {
            throw new ScoreException("--each-part is for charts: add --as chart, and name a folder with -o");
        }
        Targets targets = Targets.of(list, files.output, eachPart ? new PartNames()
                : new OutputNames("-counts", form == Form.chart ? ".pdf" : null), parent.console);
        if (form == Form.chart) {
            ChartOptions options = page.chart(unplayed != null ? unplayed : Unplayed.ALL, shared.language.phrases()).withContents(drawn.contents());
            Preparation preparation = ChartWriter.prepare();
            return files.run(parent.console, list,
                    targets.work(files.skipExisting, (score, file, console) -> draw(score, file, console, targets, options, counting,
                            preparation)));
        }
        page.refuse("end the output in .pdf or .svg, or add --as chart");
        drawn.refuse("end the output in .pdf or .svg, or add --as chart");
        if (form == Form.part) {
            GivenOptions.refuse(files.spec, "--unplayed", "lyrics and charts", "a part of counts has the whole grid; leave it out");
        }
        return files.run(parent.console, list,
                targets.work(files.skipExisting, (score, file, console) -> annotate(score, file, console, targets, counting)));
    }

    private NoteNames names() {
        return NoteNames.symbols(shared.language.phrases());
    }

    private void annotate(NamedScore score, ScoreFile file, Console console, Targets targets, CountingOptions counting) {
        Path target = targets.of(score);
        boolean compressed = compressed(target);
        SafeFile.checkFree(target, files.force);
        CountedScore counted = SharedOptions.count(score, file, console, counting);
        Splice annotated = form == Form.part
                ? CountPart.annotate(counted.file().text(), counted.score().parts(), counted.parts(), names())
                : Annotator.annotate(counted.file().text(), counted.parts(), counting.selection(),
                        unplayed != null ? unplayed : Unplayed.NEEDED, counting.felt() == FeltNotes.DOT, names());
        targets.write(score, files.force, out -> counted.file().write(annotated, compressed, out), console);
    }

    private void draw(NamedScore score, ScoreFile file, Console console, Targets targets, ChartOptions options,
            CountingOptions counting, Preparation preparation) {
        if (eachPart) {
            CountedScore counted = SharedOptions.count(score, file, console, counting);
            Map<String, Path> places = PartCharts.places(counted, targets.of(score), files);
            preparation.end();
            PartCharts.write(page.headed(counted, score, console), score, places, targets, files.force, options, console);
            return;
        }
        Path target = targets.of(score);
        if (!isChart(target.toString())) {
            throw new ScoreException("a chart is a PDF, or drawings: end the output in .pdf or .svg, not "
                    + FileNames.shown(target));
        }
        SafeFile.checkFree(target, files.force);
        CountedScore counted = page.headed(SharedOptions.count(score, file, console, counting), score, console);
        preparation.end();
        if (hasEnding(target.toString(), ChartPages.ENDING)) {
            Chart chart = ChartWriter.layout(counted.parts(), counted.score(), options);
            ChartPages.write(chart, target, files.force, console);
            chart.notes().forEach(line -> score.warn(console, Warning.of(line)));
            return;
        }
        List<String> notes = new ArrayList<>();
        targets.write(score, files.force, out -> notes.addAll(ChartWriter.write(counted.parts(), counted.score(), options, out)),
                console);
        notes.forEach(line -> score.warn(console, Warning.of(line)));
    }

    private static boolean isChart(String target) {
        return hasEnding(target, ".pdf") || hasEnding(target, ChartPages.ENDING);
    }

    private static boolean hasEnding(String target, String ending) {
        return target.toLowerCase(Locale.ROOT).endsWith(ending);
    }

    private static boolean compressed(Path target) {
        String name = target.toString();
        if (hasEnding(name, ".mxl")) {
            return true;
        }
        if (hasEnding(name, ".musicxml") || hasEnding(name, ".xml")) {
            return false;
        }
        throw new ScoreException("cannot tell what to write from the name " + Console.clean(name)
                + ": end it in .musicxml, .xml, .mxl, .pdf or .svg");
    }
}
