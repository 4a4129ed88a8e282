package countstave.cli;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.batch.NamedScore;
import countstave.batch.OutputNames;
import countstave.batch.ScoreList;
import countstave.batch.Targets;
import countstave.count.PartCounts;
import countstave.files.Console;
import countstave.files.FileNames;
import countstave.files.SafeFile;
import countstave.musicxml.ScoreFile;
import countstave.plain.SafeText;
import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.score.ScoreException;
import countstave.score.Warning;
import countstave.sound.GuideOptions;
import countstave.sound.GuideTrack;
import countstave.sound.Layer;
import countstave.sound.Leg;
import countstave.sound.WavSound;
import countstave.sound.WavWriter;
import countstave.time.Exact;
import countstave.voice.Speaker;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

/** {@code countstave say}: the counts, spoken, once through. */
@Command(name = "say", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = {
            "Writes the counts as sound: a voice says them once through, in time, as a WAV file. The quickest way to hear a bar.",
            "Of several parts it says the first that has notes, unless --part names another.",
            "--voice also chooses who speaks: a language such as de, es or fr, and low or high. Without a language it is that of"
                    + " the words.",
            "Without -o the file lies beside the score, with -said in its name. It begins with a fifth of a second of silence,"
                    + " so that the first word can begin before its beat."},
        footer = {
            "",
            "Examples:",
            "  countstave say chart.musicxml --bars 9-16 -o count.wav",
            "  countstave say chart.musicxml --bars 9 --tempo 60 --layers voice,beat --count-in -o bar9.wav",
            "  countstave say chart.mxl --and de --voice high -o zaehlen.wav",
            "",
            "Begin with a low volume in headphones."})
final class SayCommand implements Callable<Integer> {

    @ParentCommand
    Countstave parent;

    @Mixin
    OutputOptions files;

    @Option(names = "--layers", order = 40, completionCandidates = Candidates.Layers.class, paramLabel = "LAYER", split = ",",
            converter = LayerConverter.class, defaultValue = "voice",
            description = "What is heard: voice, and clicks with it: bar (bar starts), beat, grid (counted positions), rhythm (what"
                    + " is played). Default: ${DEFAULT-VALUE}.")
    List<Layer> layers = new ArrayList<>();

    @Option(names = "--count-in", order = 41, description = "Count in first: one bar, two below 60 beats a minute.")
    boolean countIn;

    @Option(names = "--peak", order = 125, paramLabel = "DB", defaultValue = "-12",
            description = "Highest level of the file, in decibels below full scale, -60 to -3. Default: ${DEFAULT-VALUE}.")
    double peak;

    @Mixin
    VoiceOptions voice;

    @Mixin
    SharedOptions shared;

    @Override
    public Integer call() throws IOException {
        files.check();
        ScoreList list = files.list();
        Speaker.Choice choice = voice.choice(shared.voices);
        CountingOptions counting = shared.counting(list.many());
        if (voice.isSilent() || !layers.contains(Layer.VOICE)) {
            throw new ScoreException("say speaks: leave the voice in --layers, and --voice none out");
        }
        GuideOptions options = new GuideOptions(EnumSet.copyOf(layers), countIn, true, List.of(), peak)
                .withVoiceLimit(shared.planOptions().voiceLimit());
        Targets targets = Targets.of(list, files.output, new OutputNames("-said", ".wav"), parent.console);
        return files.run(parent.console, list, targets.work(files.skipExisting,
                (score, file, console) -> say(score, file, console, targets, counting, options, choice)));
    }

    private void say(NamedScore score, ScoreFile file, Console console, Targets targets, CountingOptions counting,
            GuideOptions options, Speaker.Choice choice) {
        Path target = targets.of(score);
        if (!target.toString().toLowerCase(Locale.ROOT).endsWith(".wav")) {
            throw new ScoreException("what is said is a WAV file: end the output in .wav, not " + FileNames.shown(target));
        }
        SafeFile.checkFree(target, files.force);
        CountedScore counted = SharedOptions.count(score, file, console, counting);
        List<PartCounts> parts = parts(counted);
        PartCounts part = parts.get(0);
        GuideTrack track = GuideTrack.of(List.of(new Leg(Stretch.of(part), Exact.ONE, Stage.ALL, 1, part.part().name())), options);
        Speaker speaker = new Speaker(choice, part.system());
        WavSound sound = new WavSound(options.peakDecibels(), speaker);
        targets.write(score, files.force, out -> WavWriter.write(track, sound, out, done -> { }), console);
        if (parts.size() > 1) {
            score.warn(console, Warning.of("one voice says one part: this is " + SafeText.line(part.part().name())
                    + "; choose another with --part"));
        }
        if (track.leavesOutWords()) {
            score.warn(console, Warning.of(LEFT_OUT));
        }
        speaker.notes().forEach(note -> score.warn(console, Warning.of(note)));
    }

    /** What is told where the voice cannot say all that is asked of it. */
    static final String LEFT_OUT = "more has to be said than the voice limit allows: the voice leaves out words without a note"
            + " (--voice-limit, --tempo)";

    /** The parts that could be said. */
    private static List<PartCounts> parts(CountedScore counted) {
        List<PartCounts> parts = counted.playing();
        if (parts.isEmpty() || parts.get(0).bars().isEmpty()) {
            throw new ScoreException("there is no bar to be said; check --part and --bars");
        }
        return parts;
    }
}
