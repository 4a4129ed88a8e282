package countstave.cli;

import countstave.files.Console;
import countstave.score.ScoreException;
import countstave.voice.Register;
import countstave.voice.Recordings;
import countstave.voice.Speaker;
import countstave.voice.SyllableBank;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/**
 * Who says the counts. {@code --voice} is an option of the score's voices too: there a voice is called by a number, here by
 * a language or a word.
 */
final class VoiceOptions {

    private static final String NONE = "none";
    private static final double SOFTEST = 40;

    @Option(names = "--voice-sounds", order = 54, paramLabel = "FOLDER",
            description = "A folder of your own recordings, each named by its syllable: 1.wav, and.wav, trip.wav. What is missing is"
                    + " said by the voice of --voice.")
    String sounds;

    @Option(names = "--voice-softer", order = 128, paramLabel = "DB", defaultValue = "0",
            description = "By how many decibels the voice is softer beside the clicks, 0 to 40. Default: ${DEFAULT-VALUE}.")
    double softer;

    private boolean silent;
    /** The first word of {@code --voice} that chose a speaker; null where none did. */
    private String chosen;

    /** Whether nobody is to speak; known once {@link #choice} was asked for. */
    boolean isSilent() {
        return silent;
    }

    /**
     * Who speaks. The words that choose a speaker are taken out of {@code voices}; those of the score stay.
     *
     * @throws ScoreException if they contradict each other, or something is wrong with the recordings
     */
    Speaker.Choice choice(List<String> voices) {
        if (!(softer >= 0 && softer <= SOFTEST)) {
            throw new ScoreException("--voice-softer goes from 0 to 40 decibels, not " + softer);
        }
        Register register = null;
        String language = null;
        for (String voice : List.copyOf(voices)) {
            Register asked = register(voice);
            boolean spoken = asked == null && SyllableBank.of(Register.LOW).speaks(voice);
            if (asked == null && !spoken && !voice.equals(NONE)) {
                if (voice.matches("[a-z]{2,}")) {
                    throw new ScoreException("--voice " + voice + " is neither a voice of a score, such as 1, nor one that"
                            + " speaks: " + String.join(", ", speakers()));
                }
                continue;
            }
            voices.remove(voice);
            chosen = chosen == null ? voice : chosen;
            silent |= voice.equals(NONE);
            if (asked != null && register != null && asked != register || spoken && language != null && !voice.equals(language)) {
                throw new ScoreException("--voice " + voice + " and --voice " + (spoken ? language : register.id())
                        + " cannot both speak: leave out one");
            }
            register = asked != null ? asked : register;
            language = spoken ? voice : language;
        }
        if (silent && (register != null || language != null || sounds != null)) {
            throw new ScoreException("--voice none says that nobody speaks: leave it out, or the other voices");
        }
        return new Speaker.Choice(register == null ? Register.LOW : register, language, recordings(), softer);
    }

    /**
     * For a run in which nobody speaks; to be asked for once {@link #choice} was.
     *
     * @throws ScoreException if a speaker was chosen, or something is said of how it speaks
     */
    void refuse(CommandSpec command, String purpose, String instead) {
        GivenOptions.refuse(command, VoiceOptions.class, purpose, instead);
        // who wants nobody to speak gets that anyway
        if (chosen != null && !silent) {
            throw new ScoreException("--voice " + chosen + " is for " + purpose + ": " + instead);
        }
    }

    private Recordings recordings() {
        try {
            return sounds == null ? null : Recordings.in(Path.of(sounds));
        } catch (InvalidPathException e) {
            throw new ScoreException(Console.clean(sounds) + ": is no name of a folder", e);
        }
    }

    private static Register register(String voice) {
        for (Register register : Register.values()) {
            if (register.id().equals(voice)) {
                return register;
            }
        }
        return null;
    }

    /** What can speak. */
    private static List<String> speakers() {
        List<String> speakers = new ArrayList<>();
        for (String section : SyllableBank.of(Register.LOW).sections()) {
            if (SyllableBank.of(Register.LOW).speaks(section)) {
                speakers.add(section);
            }
        }
        speakers.addAll(List.of(Register.LOW.id(), Register.HIGH.id(), NONE));
        return speakers;
    }
}
