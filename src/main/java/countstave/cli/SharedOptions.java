package countstave.cli;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.batch.NamedScore;
import countstave.count.CountingSystem;
import countstave.count.FeltNotes;
import countstave.files.Console;
import countstave.grid.PlanOptions;
import countstave.grid.Weights;
import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.score.BarChoice;
import countstave.score.PartChoice;
import countstave.score.PulseChoice;
import countstave.score.Selection;
import countstave.score.Swing;
import countstave.score.Tempo;
import countstave.score.TimeOptions;
import countstave.score.Warning;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The options that say what is counted and how; the same for every command that counts. */
final class SharedOptions {

    private static final BigDecimal LOWEST_LIMIT = BigDecimal.ONE;
    private static final BigDecimal HIGHEST_LIMIT = BigDecimal.valueOf(30);

    enum Answer { YES, NO }

    enum Hidden { AUTO, COUNT }

    @Spec(Spec.Target.MIXEE)
    CommandSpec spec;

    @Mixin
    LanguageOption language;

    @Option(names = "--part", order = 10, paramLabel = "PART",
            description = "Count this part: its id, its name, its number from 1, or a pattern such as 'Violin*'; with commas"
                    + " between alternatives. May be repeated. Of many scores, those that have no such part are told and left"
                    + " out. Default: every part that has notes.")
    List<String> parts = new ArrayList<>();

    @Option(names = "--part-required", order = 100, description = "A score fails that does not have each --part.")
    boolean partRequired;

    @Option(names = "--voice", order = 11, paramLabel = "VOICE", description = "Count this voice only. May be repeated.")
    List<String> voices = new ArrayList<>();

    @Option(names = "--staff", order = 12, paramLabel = "STAFF",
            description = "Count this staff only (1 is the upper one). May be repeated.")
    List<Integer> staves = new ArrayList<>();

    @Option(names = "--bars", order = 13, paramLabel = "BARS",
            description = "Count these bars only, by their printed numbers: 9-16, or 5,9-16; 2:5-9 for those of the second"
                    + " movement, where the numbers start anew.")
    String bars;

    @Option(names = "--movement", order = 14, paramLabel = "N|all", converter = MovementConverter.class,
            description = "Of a score in which the bar numbers start anew, count this movement only, or take --bars from it; all"
                    + " takes --bars from each that has them. Default: every movement, and --bars from the first that has"
                    + " them.")
    Integer movement;

    @Option(names = "--system", order = 20, completionCandidates = Candidates.Systems.class, paramLabel = "SYSTEM", defaultValue = "numbers",
            description = "Counting system: a name that 'countstave systems' lists, or a file of your own."
                    + " Default: ${DEFAULT-VALUE}.")
    String system;

    @Option(names = "--and", order = 21, completionCandidates = Candidates.Languages.class, paramLabel = "WORD",
            description = "The word for the half beat: a language such as de, es or fr, or a word of your own. Default: that of"
                    + " --language.")
    String and;

    @Option(names = "--beat", order = 24, completionCandidates = Candidates.Beats.class, paramLabel = "BEAT", converter = BeatConverter.class, defaultValue = "meter",
            description = "What is counted as the beat: meter (by the time signature and its tempo mark), groups (the groups of an"
                    + " irregular meter as uneven beats), or a note value such as eighth or dotted-quarter."
                    + " Default: ${DEFAULT-VALUE}.")
    PulseChoice beat;

    @Option(names = "--tempo", order = 22, paramLabel = "TEMPO", converter = TempoConverter.class,
            description = "Use this tempo instead of the score's: 96 (quarters a minute) or dotted-quarter=72."
                    + " The tempo decides what can be said in time.")
    Tempo tempo;

    @Option(names = "--swing", order = 23, completionCandidates = Candidates.Swings.class, paramLabel = "SWING", converter = SwingConverter.class, defaultValue = "score",
            description = "How pairs of eighths are played and counted: score (as it says: swing, shuffle, straight),"
                    + " straight, or a ratio long:short such as 2:1, or 3:2@16th for pairs of 16ths."
                    + " Default: ${DEFAULT-VALUE}.")
    Swing swing;

    @Option(names = "--voice-limit", order = 26, paramLabel = "RATE", defaultValue = "6.5",
            description = "Syllables a second that you can say. Default: ${DEFAULT-VALUE}, the measured mean of the"
                    + " fastest repeated syllables of young adults.")
    BigDecimal voiceLimit;

    @Option(names = "--steadiness", order = 25, completionCandidates = Candidates.Steadiness.class, paramLabel = "HOW", converter = SteadinessConverter.class,
            defaultValue = "" + Weights.DEFAULT_STEADINESS,
            description = "How hard to hold on to one count, from 0 to 10: few-words (0) changes it for every word that is"
                    + " saved, one-count (10) changes it only where nothing else is possible, even (5) weighs the two."
                    + " Default: ${DEFAULT-VALUE}.")
    int steadiness;

    @Option(names = "--felt", order = 27, paramLabel = "yes|no|dot", defaultValue = "yes",
            description = "What becomes of notes too quick to be said. yes: they are felt between the counts, and the counts"
                    + " stay sayable. no: every note is said, however fast. dot: as yes, and annotate writes a dot under each"
                    + " felt note. Default: ${DEFAULT-VALUE}.")
    FeltNotes felt;

    @Option(names = "--against", order = 101, paramLabel = "yes|no",
            description = "Where two voices go against each other and both together cannot be said: yes counts one and feels"
                    + " the other against it, no never does. Default: yes.")
    Answer against;

    @Option(names = "--hidden", order = 102, paramLabel = "auto|count", defaultValue = "auto",
            description = "What becomes of notes that are not printed. auto: they are left out where something printed stands"
                    + " for their time on their staff, and counted where nothing does. count: they are counted like all"
                    + " others. Default: ${DEFAULT-VALUE}.")
    Hidden hidden;

    @Option(names = "--open-tremolo", order = 103,
            description = "Count single-note tremolos of one and two strokes as the repeated notes they stand for.")
    boolean openTremolo;

    /**
     * @param many whether a part may be missing in a score, since there are others
     * @throws ScoreException if an option names something that is not there or out of range
     */
    CountingOptions counting(boolean many) {
        if (partRequired && parts.isEmpty()) {
            throw new ParameterException(spec.commandLine(), "--part-required says that each --part must be there: name one"
                    + " with --part");
        }
        CountingSystem found = CountingSystem.find(system);
        CountingSystem words = and == null ? found.spokenIn(language.phrases()) : found.withAnd(and);
        return new CountingOptions(new PartChoice(parts, partRequired || !many), selection(), bars(), words, new TimeOptions(beat, tempo, swing),
                planOptions(), felt, new ReadOptions(openTremolo, hidden == Hidden.COUNT));
    }

    /** The score with its counts; what the user is to be told of it is told. */
    static CountedScore count(NamedScore score, ScoreFile file, Console console, CountingOptions counting) {
        CountedScore counted = CountedScore.of(file, counting);
        counted.warnings().forEach(warning -> score.warn(console, warning));
        counted.parts().stream().map(part -> counting.bars().elsewhere(part.part())).filter(Objects::nonNull).findFirst()
                .ifPresent(line -> score.warn(console, new Warning(line, "bar numbers start anew in " + Warning.SCORES
                        + ": --bars is taken from the first movement that has them; --movement takes another")));
        return counted;
    }

    private BarChoice bars() {
        BarChoice choice = bars == null ? BarChoice.ALL : BarChoice.parse(bars);
        return movement == null ? choice : choice.in(movement);
    }

    private Selection selection() {
        return new Selection(Set.copyOf(voices), Set.copyOf(staves));
    }

    PlanOptions planOptions() {
        if (felt == FeltNotes.NO && against == Answer.YES) {
            throw new ParameterException(spec.commandLine(), "--felt no says every note, so that none is felt against"
                    + " another: leave out --against yes, or --felt no");
        }
        if (voiceLimit.compareTo(LOWEST_LIMIT) < 0 || voiceLimit.compareTo(HIGHEST_LIMIT) > 0) {
            throw new ParameterException(spec.commandLine(), "--voice-limit goes from " + LOWEST_LIMIT + " to "
                    + HIGHEST_LIMIT + " syllables a second, not " + voiceLimit.toPlainString());
        }
        return new PlanOptions(Weights.steadiness(steadiness), voiceLimit, felt != FeltNotes.NO,
                felt != FeltNotes.NO && against != Answer.NO);
    }
}
