package countstave.cli;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.batch.Inputs;
import countstave.batch.NamedScore;
import countstave.batch.ScoreList;
import countstave.batch.ScoreRun;
import countstave.chart.ChartOptions;
import countstave.chart.ReportWriter;
import countstave.count.NoteNames;
import countstave.count.Unplayed;
import countstave.files.Console;
import countstave.files.FileNames;
import countstave.files.SafeFile;
import countstave.json.EarlierTake;
import countstave.json.ListenJson;
import countstave.listen.Earlier;
import countstave.listen.HeardPart;
import countstave.listen.ListenWords;
import countstave.musicxml.ScoreFile;
import countstave.score.BarChoice;
import countstave.score.ScoreException;
import countstave.score.Warning;
import countstave.take.Take;
import countstave.text.ListenText;
import countstave.text.TextOptions;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** {@code countstave listen}: what was played, against what was to be played. */
@Command(name = "listen", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = {
            "Hears a take of a passage, as sound (WAV) or MIDI, and says count by count what came early or late, which units"
                    + " are even, how soon a new speed is met, and whether the tempo holds.",
            "Nothing is called wrong that an ear, or the method, cannot tell. The take is read from its file; no microphone"
                    + " is opened, and nothing leaves this machine."},
        footer = {
            "",
            "Examples:",
            "  countstave listen chart.musicxml take.wav --bars 9-16",
            "  countstave listen chart.musicxml take.wav --bars 9-16 --tempo 54 --repeats 4",
            "  countstave listen chart.musicxml kit.mid --bars 9-16 --notes 36,38",
            "  countstave listen chart.musicxml take.wav --bars 9-16 --click step-54.wav",
            "  countstave listen chart.musicxml take.wav --bars 9-16 -o report.pdf"})
final class ListenCommand implements Callable<Integer> {

    enum Format { text, json }

    @ParentCommand
    Countstave parent;

    @Spec
    CommandSpec spec;

    @Parameters(index = "0", paramLabel = "SCORE", description = "A MusicXML score (.musicxml, .xml, .mxl).")
    String score;

    @Parameters(index = "1", paramLabel = "TAKE", description = "What was played: a WAV file, or a Standard MIDI file.")
    String take;

    @Mixin
    ListenOptions options;

    @Option(names = "--format", order = 32, paramLabel = "FORMAT", defaultValue = "text",
            description = "text, or json for other programs. Default: ${DEFAULT-VALUE}.")
    Format format;

    @Option(names = {"-o", "--output"}, order = 50, paramLabel = "REPORT",
            description = "Draw the passage with a row of signs under the counts: a PDF for the stand (.pdf), or a page for the"
                    + " screen (.html). Or write the text (.txt) or the data (.json) there.")
    String output;

    @Option(names = "--force", order = 51, description = "Replace what is already there.")
    boolean force;

    @Option(names = "--compare", order = 34, paramLabel = "EARLIER",
            description = "What an earlier run wrote with --format json: says what has got better since, and what worse.")
    String compare;

    @Option(names = "--ascii", order = 130, description = "Print with plain ASCII signs, for terminals without note symbols.")
    boolean ascii;

    @Mixin
    PageOptions page;

    @Mixin
    SharedOptions shared;

    @Override
    public Integer call() throws IOException {
        CountingOptions counting = shared.counting(false);
        ScoreList list = ScoreList.of(List.of(score));
        if (list.many()) {
            throw new ScoreException(score + " are several scores; a take is of one: name it");
        }
        if (output != null) {
            ending();
            SafeFile.checkFree(Inputs.path(output), force);
        }
        if (output == null || !isDrawn()) {
            page.refuse("end the output in .pdf or .html");
        }
        refuseWhatDoesNothing();
        Earlier earlier = compare == null ? null : earlier();
        Take heard = options.take(take);
        heard.remarks().forEach(remark -> parent.console.tell(remark));
        boolean done = new ScoreRun(parent.console, list, 1, false).run((named, file, console) -> {
            tell(named, file, counting, heard, earlier, console);
            return null;
        });
        return done ? 0 : Countstave.REFUSED;
    }

    private void refuseWhatDoesNothing() {
        String written = output != null ? ending() : format == Format.json ? "json" : "txt";
        if (output == null) {
            GivenOptions.refuse(spec, "--force", "outputs", "name their place with -o");
        } else if (!written.equals(format == Format.json ? "json" : "txt")) {
            GivenOptions.refuse(spec, "--format", "what is printed", "leave it out, the ending of the output says what is written");
        }
        if (!written.equals("txt")) {
            GivenOptions.refuse(spec, "--ascii", "text", "leave it out, or have text written");
        }
        if (written.equals("json")) {
            GivenOptions.refuse(spec, "--compare", "sentences", "the data have none; write text, .pdf or .html");
        }
    }

    private Earlier earlier() throws IOException {
        try {
            return EarlierTake.read(Files.readString(Inputs.path(compare)), compare);
        } catch (NoSuchFileException e) {
            throw new ScoreException(compare + ": there is no such file; check its name", e);
        } catch (IOException e) {
            throw new ScoreException(compare + " cannot be read as text; name what --format json has written", e);
        }
    }

    private void tell(NamedScore named, ScoreFile file, CountingOptions counting, Take heard, Earlier earlier, Console console)
            throws IOException {
        CountedScore counted = SharedOptions.count(named, file, console, counting);
        HeardPart best = HeardPart.of(counted.parts(), () -> CountedScore.of(file, counting.with(BarChoice.ALL)).parts(),
                options.places(), heard, options.times(), shared.tempo != null);
        if (output == null) {
            write(counted, best, earlier, format == Format.json, console.out());
            console.out().flush();
            return;
        }
        Path target = Inputs.path(output);
        if (isDrawn()) {
            CountedScore headed = page.headed(counted, named, console);
            List<String> notes = new ArrayList<>();
            SafeFile.write(target, force, out -> notes.addAll(draw(headed, best, earlier, out)));
            notes.forEach(line -> named.warn(console, Warning.of(line)));
        } else {
            SafeFile.write(target, force, out -> write(counted, best, earlier, ending().equals("json"), out));
        }
        console.out().println("wrote " + FileNames.shown(target));
    }

    /** What the user is to be told of the drawing. */
    private List<String> draw(CountedScore counted, HeardPart best, Earlier earlier, OutputStream to) throws IOException {
        NoteNames names = NoteNames.symbols(shared.language.phrases());
        List<String> told = new ArrayList<>(ListenWords.of(best.listening(), names));
        told.addAll(against(earlier, best, names));
        ChartOptions drawn = page.chart(Unplayed.ALL, names.phrases());
        return ending().equals("pdf") ? ReportWriter.pdf(best.part(), counted.score(), best.listening(), told, drawn, to)
                : ReportWriter.html(best.part(), counted.score(), best.listening(), told, drawn, to);
    }

    private void write(CountedScore counted, HeardPart best, Earlier earlier, boolean json, OutputStream to) throws IOException {
        Writer out = new OutputStreamWriter(to, StandardCharsets.UTF_8);
        if (json) {
            ListenJson.write(counted.score().title(), counted.score().source(), best.part().part(), best.listening(), out);
        } else {
            TextOptions printed = CountCommand.textOptions(ascii, shared.language.phrases());
            ListenText.write(counted.score().title(), score, best.listening(), against(earlier, best, printed.names()), printed, out);
        }
        out.flush();
    }

    private static List<String> against(Earlier earlier, HeardPart best, NoteNames names) {
        return earlier == null ? List.of() : earlier.against(best.listening(), names);
    }

    private boolean isDrawn() {
        return ending().equals("pdf") || ending().equals("html");
    }

    /** @throws ScoreException if {@code -o} does not say what is to be written */
    private String ending() {
        String name = output.toLowerCase(Locale.ROOT);
        for (String ending : List.of("pdf", "html", "txt", "json")) {
            if (name.endsWith("." + ending)) {
                return ending;
            }
        }
        throw new ScoreException("a report is a PDF or a page for the screen: end the output in .pdf, .html, .txt or .json, not "
                + Console.clean(output));
    }
}
