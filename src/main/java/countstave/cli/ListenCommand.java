package countstave.cli;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.batch.NamedScore;
import countstave.batch.ScoreList;
import countstave.batch.ScoreRun;
import countstave.count.PartCounts;
import countstave.files.Console;
import countstave.listen.BestGuess;
import countstave.listen.Listener;
import countstave.listen.Listening;
import countstave.listen.OtherTakeException;
import countstave.musicxml.ScoreFile;
import countstave.score.BarChoice;
import countstave.score.ScoreException;
import countstave.score.Warning;
import countstave.take.Take;
import countstave.text.ListenText;
import java.io.IOException;
import java.io.StringWriter;
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
            "  countstave listen chart.musicxml take.wav --bars 9-16 --click step-54.wav"})
final class ListenCommand implements Callable<Integer> {

    enum Format { text, json }

    /** From this share of strokes that belong to each other on nothing else is looked for. */
    private static final double WELL = 0.88;
    private static final double BETTER = 0.08;

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
        Take heard = options.take(take);
        heard.remarks().forEach(remark -> parent.console.tell(remark));
        boolean done = new ScoreRun(parent.console, list, 1, false).run((named, file, console) -> {
            print(named, file, counting, heard, console);
            return null;
        });
        return done ? 0 : Countstave.REFUSED;
    }

    private void print(NamedScore named, ScoreFile file, CountingOptions counting, Take heard, Console console)
            throws IOException {
        CountedScore counted = SharedOptions.count(named, file, console, counting);
        Listening listening = listen(file, counted, counting, heard);
        StringWriter out = new StringWriter();
        ListenText.write(counted.score().title(), score, listening, List.of(), CountCommand.textOptions(ascii), out);
        console.out().print(out);
        console.out().flush();
    }

    /** Of several parts the one that fits best: a take is of one player. */
    private Listening listen(ScoreFile file, CountedScore counted, CountingOptions counting, Take heard) {
        OtherTakeException refused = null;
        PartCounts nearest = null;
        Listening best = null;
        PartCounts own = null;
        for (PartCounts part : counted.parts()) {
            try {
                Listening one = Listener.listen(part, options.places(), heard, options.times());
                if (best == null || one.share() > best.share()) {
                    best = one;
                    own = part;
                }
            } catch (OtherTakeException e) {
                if (refused == null || e.share() > refused.share()) {
                    refused = e;
                    nearest = part;
                }
            }
        }
        if (best != null) {
            checkNoOtherBars(file, own, counting, heard, best);
            return best;
        }
        if (refused == null) {
            throw new ScoreException("no part has anything to play; check --part");
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
