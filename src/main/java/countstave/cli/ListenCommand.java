package countstave.cli;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.batch.Inputs;
import countstave.batch.NamedScore;
import countstave.batch.ScoreList;
import countstave.batch.ScoreRun;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.files.Console;
import countstave.json.EarlierTake;
import countstave.json.ListenJson;
import countstave.listen.BestGuess;
import countstave.listen.Earlier;
import countstave.listen.Listener;
import countstave.listen.Listening;
import countstave.listen.OtherTakeException;
import countstave.musicxml.ScoreFile;
import countstave.score.BarChoice;
import countstave.score.ScoreException;
import countstave.take.Take;
import countstave.text.ListenText;
import countstave.text.TextOptions;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

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
            "  countstave listen chart.musicxml take.wav --bars 9-16 --click step-54.wav"})
final class ListenCommand implements Callable<Integer> {

    enum Format { text, json }

    /** From this share of strokes that belong to each other on nothing else is looked for. */
    private static final double WELL = 0.88;
    private static final double BETTER = 0.08;

    @ParentCommand
    Countstave parent;

    @Parameters(index = "0", paramLabel = "SCORE", description = "A MusicXML score (.musicxml, .xml, .mxl).")
    String score;

    @Parameters(index = "1", paramLabel = "TAKE", description = "What was played: a WAV file, or a Standard MIDI file.")
    String take;

    @Mixin
    ListenOptions options;

    @Option(names = "--format", order = 32, paramLabel = "FORMAT", defaultValue = "text",
            description = "text, or json for other programs. Default: ${DEFAULT-VALUE}.")
    Format format;

    @Option(names = "--compare", order = 34, paramLabel = "EARLIER",
            description = "What an earlier run wrote with --format json: says what has got better since, and what worse.")
    String compare;

    @Option(names = "--ascii", order = 130, description = "Print with plain ASCII signs, for terminals without note symbols.")
    boolean ascii;

    @Mixin
    SharedOptions shared;

    @Override
    public Integer call() throws IOException {
        CountingOptions counting = shared.counting(false);
        ScoreList list = ScoreList.of(List.of(score));
        if (list.many()) {
            throw new ScoreException(score + " are several scores; a take is of one: name it");
        }
        Earlier earlier = compare == null ? null : earlier();
        Take heard = options.take(take);
        heard.remarks().forEach(remark -> parent.console.tell(remark));
        boolean done = new ScoreRun(parent.console, list, 1, false).run((named, file, console) -> {
            tell(named, file, counting, heard, earlier, console);
            return null;
        });
        return done ? 0 : Countstave.REFUSED;
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
        Heard best = listen(file, counted, counting, heard);
        StringWriter out = new StringWriter();
        if (format == Format.json) {
            ListenJson.write(counted.score().title(), counted.score().source(), best.part().part(), best.listening(), out);
        } else {
            TextOptions text = CountCommand.textOptions(ascii);
            List<String> better = earlier == null ? List.of()
                    : earlier.against(best.listening(), ascii ? NoteNames.WORDS : NoteNames.SYMBOLS);
            ListenText.write(counted.score().title(), score, best.listening(), better, text, out);
        }
        console.out().print(out);
        console.out().flush();
    }

    /** What was heard of a part. */
    private record Heard(PartCounts part, Listening listening) {
    }

    /** Of several parts the one that fits best: a take is of one player. */
    private Heard listen(ScoreFile file, CountedScore counted, CountingOptions counting, Take heard) {
        OtherTakeException refused = null;
        PartCounts nearest = null;
        Heard best = null;
        for (PartCounts part : counted.parts()) {
            try {
                Heard one = new Heard(part, Listener.listen(part, options.places(), heard, options.times()));
                best = best == null || one.listening().share() > best.listening().share() ? one : best;
            } catch (OtherTakeException e) {
                if (refused == null || e.share() > refused.share()) {
                    refused = e;
                    nearest = part;
                }
            } catch (ScoreException e) {
                // a part that rests is no reason while others play
                if (counted.parts().size() == 1) {
                    throw e;
                }
            }
        }
        if (best != null) {
            checkNoOtherBars(file, best.part(), counting, heard, best.listening());
            return best;
        }
        if (refused == null) {
            throw new ScoreException("no part has anything to play in these bars; check --part and --bars");
        }
        throw new ScoreException(refusal(heard, refused.bars(), refused.share(), guess(file, counting, heard, nearest)));
    }

    /** What fits only so so may fit other bars better. */
    private static void checkNoOtherBars(ScoreFile file, PartCounts own, CountingOptions counting, Take heard, Listening listening) {
        if (listening.share() >= WELL) {
            return;
        }
        BestGuess guess = guess(file, counting, heard, own);
        if (guess != null && guess.isLikely() && guess.share() > listening.share() + BETTER
                && !guess.bars().equals(listening.pass().stretch().numbers())) {
            throw new ScoreException(refusal(heard, listening.pass().stretch().numbers(), listening.share(), guess));
        }
    }

    private static BestGuess guess(ScoreFile file, CountingOptions counting, Take heard, PartCounts part) {
        CountedScore whole = CountedScore.of(file, counting.with(BarChoice.ALL));
        PartCounts same = whole.parts().stream().filter(p -> p.part().id().equals(part.part().id())).findFirst().orElseThrow();
        return BestGuess.of(same, part.bars().size(), heard);
    }

    private static String refusal(Take heard, String bars, double share, BestGuess guess) {
        String said = String.format(Locale.ROOT, "%s does not fit bars %s: %.0f %% of the strokes belong to each other", heard.name(),
                bars, 100 * share);
        if (guess == null || guess.bars().equals(bars) || !guess.isLikely()) {
            return said + ", and no other bars fit; check --bars, --part and --tempo (8 % either way are found)";
        }
        return said + String.format(Locale.ROOT, "; bars %s fit best, %.0f %%: give --bars %s", guess.bars(), 100 * guess.share(),
                guess.bars().replace('\u2013', '-'));
    }
}
