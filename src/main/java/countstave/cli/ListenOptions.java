package countstave.cli;

import countstave.batch.Inputs;
import countstave.score.ScoreException;
import countstave.sound.ClickSound;
import countstave.sound.Displacement;
import countstave.take.GuideFile;
import countstave.take.NoteChoice;
import countstave.take.Take;
import countstave.take.TakeReader;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** The options that say what a take is, and what was to be played. */
final class ListenOptions {

    private static final int MOST_REPEATS = 500;

    @Option(names = "--repeats", order = 47, paramLabel = "N",
            description = "How many times the bars were played, one after the other, 1 to 500. Default: as many"
                    + " times as they are heard.")
    Integer repeats;

    @Option(names = "--place", order = 48, paramLabel = "BEATS=WAY",
            description = "The notes on these beats were to be played late (+) or early (-): 2,4=+1/64 (a note value),"
                    + " 2,4=-15ms, all=+10ms. May be repeated.")
    List<String> places = new ArrayList<>();

    @Option(names = "--click", order = 49, paramLabel = "GUIDE",
            description = "The guide track (WAV) that was heard while the take was made: its clicks and words are told from strokes, and"
                    + " early and late are measured against them.")
    String click;

    @Option(names = "--notes", order = 45, paramLabel = "NOTES",
            description = "MIDI: hear these notes only, by their numbers: 36,38 or 35-40. Default: all.")
    String notes;

    @Option(names = "--channel", order = 46, paramLabel = "N", description = "MIDI: hear this channel only, 1 to 16. Default: all.")
    Integer channel;

    /** @throws ScoreException in one line if a value is out of range, or the take cannot be read */
    Take take(String file) {
        if (repeats != null && (repeats < 1 || repeats > MOST_REPEATS)) {
            throw new ScoreException("--repeats goes from 1 to " + MOST_REPEATS + ", not " + repeats);
        }
        places();
        return TakeReader.read(Inputs.path(file), file, NoteChoice.parse(channel, notes),
                click == null ? null : new GuideFile(Inputs.path(click), ClickSound::all));
    }

    /** 0 for as many as there are. */
    int times() {
        return repeats == null ? 0 : repeats;
    }

    List<Displacement> places() {
        return places.stream().map(Displacement::parse).toList();
    }
}
