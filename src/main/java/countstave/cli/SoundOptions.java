package countstave.cli;

import countstave.folder.GuideFiles;
import countstave.score.ScoreException;
import countstave.sound.ClickRule;
import countstave.sound.Displacement;
import countstave.sound.GuideOptions;
import countstave.sound.Layer;
import countstave.sound.Leg;
import countstave.voice.Speaker;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import picocli.CommandLine.Option;

/** The options of the guide tracks. */
final class SoundOptions {

    @Option(names = "--sound", order = 45, paramLabel = "FORMAT", split = ",", defaultValue = "midi,wav",
            description = "Formats of the guide tracks: midi, wav. Default: ${DEFAULT-VALUE}.")
    List<GuideFiles.Format> formats = new ArrayList<>();

    @Option(names = "--tracks", order = 46, paramLabel = "N", defaultValue = "3",
            description = "How many passages of a part get guide tracks, the hardest first; 0 for none."
                    + " Default: ${DEFAULT-VALUE}.")
    int tracks;

    @Option(names = "--wav-tracks", order = 120, paramLabel = "N", defaultValue = "1",
            description = "How many of these passages get their tracks as WAV too; a minute has 2.6 MB."
                    + " Default: ${DEFAULT-VALUE}, the hardest passage.")
    int wavTracks;

    @Option(names = "--repeats", order = 47, paramLabel = "N",
            description = "How many times everything sounds, 1 to 100. Default: the clean repeats that a tempo step asks"
                    + " for, of a seam's pieces 4, of a stage 3.")
    Integer repeats;

    @Option(names = "--at", order = 48, paramLabel = "TEMPO", split = ",",
            description = "Tracks of all stages at these tempi, in the unit of the written one: 40,50,63. Default: the"
                    + " slowest step.")
    List<BigDecimal> at = new ArrayList<>();

    @Option(names = "--click", order = 49, paramLabel = "BEATS",
            description = "Click on these beats of each bar only: 2,4. The count-in has all. The counts sound as before,"
                    + " unless --layers beat,rhythm leaves them out.")
    String click;

    @Option(names = "--silent", order = 126, paramLabel = "N/M",
            description = "Nothing sounds in the last N of every M bars: 1/4. The count-in is always heard.")
    String silent;

    @Option(names = "--endless", order = 127,
            description = "Every loop in a file of its own that says where it is to be looped: WAV files by a loop, MIDI"
                    + " files, whose format has none, by two markers.")
    boolean endless;

    @Option(names = "--layers", order = 121, completionCandidates = Candidates.Layers.class, paramLabel = "LAYER", split = ",", converter = LayerConverter.class,
            defaultValue = "voice,bar,beat,grid,rhythm",
            description = "What is heard: voice (the counts, spoken; in WAV only), bar (bar starts), beat, grid (counted"
                    + " positions), rhythm (what is played)."
                    + " Default: ${DEFAULT-VALUE}.")
    List<Layer> layers = new ArrayList<>();

    @Option(names = "--no-count-in", order = 122, description = "Leave out the count-in: one bar, two below 60 beats a minute.")
    boolean noCountIn;

    @Option(names = "--whole-grid", order = 123, description = "Sound every counted position at every stage, not only the said ones.")
    boolean wholeGrid;

    @Option(names = "--place", order = 124, paramLabel = "BEATS=WAY",
            description = "Play the notes on these beats late (+) or early (-) against the steady click: 2,4=+1/64 (a"
                    + " note value), 2,4=-15ms, all=+10ms. May be repeated.")
    List<String> places = new ArrayList<>();

    @Option(names = "--peak", order = 125, paramLabel = "DB", defaultValue = "-12",
            description = "Highest level of WAV files, in decibels below full scale, -60 to -3."
                    + " Default: ${DEFAULT-VALUE}. Begin with a low volume, above all in headphones.")
    double peak;

    /**
     * @param voice who speaks
     * @param silent whether nobody does
     * @param voiceLimit syllables a second
     * @throws ScoreException if a value is out of range
     */
    GuideFiles files(Speaker.Choice voice, boolean silent, BigDecimal voiceLimit) {
        if (tracks < 0) {
            throw new ScoreException("--tracks goes from 0 up, not " + tracks);
        }
        if (wavTracks < 0) {
            throw new ScoreException("--wav-tracks goes from 0 up, not " + wavTracks);
        }
        if (repeats != null && (repeats < 1 || repeats > Leg.MOST_REPEATS)) {
            throw new ScoreException("--repeats goes from 1 to " + Leg.MOST_REPEATS + ", not " + repeats);
        }
        Set<Layer> heard = EnumSet.copyOf(layers);
        if (silent) {
            heard.remove(Layer.VOICE);
        }
        if (!formats.contains(GuideFiles.Format.wav) && heard.equals(Set.of(Layer.VOICE))) {
            throw new ScoreException("MIDI files cannot speak: add a click to --layers, or wav to --sound");
        }
        GuideOptions options = new GuideOptions(heard, !noCountIn, !wholeGrid,
                places.stream().map(Displacement::parse).toList(), peak).with(ClickRule.parse(click, this.silent), endless)
                .withVoiceLimit(voiceLimit);
        return new GuideFiles(options, EnumSet.copyOf(formats), tracks, wavTracks, repeats == null ? 0 : repeats, voice);
    }
}
