package countstave.cli;

import countstave.count.NoteNames;
import countstave.practice.Passage;
import countstave.practice.Stage;
import countstave.practice.TempoLadder;
import countstave.sound.GuideOptions;
import countstave.sound.GuideTrack;
import countstave.sound.Leg;
import countstave.sound.MidiWriter;
import countstave.sound.WavWriter;
import countstave.text.PracticeIndex;
import countstave.time.Exact;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * The guide tracks of a passage: one climbs through the tempo steps, one goes through the stages of thinning at the
 * slowest step.
 */
final class GuideFiles {

    /** Kinds of sound file. */
    enum Format { midi, wav }

    private final GuideOptions options;
    private final Set<Format> formats;
    private final int repeats;
    private final boolean force;

    GuideFiles(GuideOptions options, Set<Format> formats, int repeats, boolean force) {
        this.options = options;
        this.formats = formats;
        this.repeats = repeats;
        this.force = force;
    }

    /** A track and what to call it. {@code name}: of its files, without their ending. */
    private record Named(String name, String label, GuideTrack track) {
    }

    private List<Named> tracks(Passage passage, String prefix) {
        List<Leg> steps = new ArrayList<>();
        for (TempoLadder.Rung rung : passage.ladder()) {
            steps.add(new Leg(passage.stretch(), passage.speed(rung), Stage.ALL, repeats, tempo(rung)));
        }
        TempoLadder.Rung slowest = passage.ladder().get(0);
        List<Leg> stages = new ArrayList<>();
        for (Stage stage : Stage.values()) {
            stages.add(new Leg(passage.stretch(), passage.speed(slowest), stage, repeats, stage.title()));
        }
        return List.of(new Named(prefix + "steps", "tempo steps", GuideTrack.of(steps, options)),
                new Named(prefix + "stages", "stages at " + tempo(slowest), GuideTrack.of(stages, options)));
    }

    private static String tempo(TempoLadder.Rung rung) {
        return NoteNames.SYMBOLS.tempo(rung.tempo());
    }

    /** How many bytes of sound the files of a passage need; MIDI files are small. */
    long bytes(Passage passage) {
        if (!formats.contains(Format.wav)) {
            return 0;
        }
        return tracks(passage, "").stream().mapToLong(named -> WavWriter.bytes(named.track())).sum();
    }

    /** Writes the files of a passage and says which they are. */
    List<PracticeIndex.Entry> write(Passage passage, Path folder, String prefix, Progress progress) {
        List<PracticeIndex.Entry> files = new ArrayList<>();
        for (Named named : tracks(passage, prefix)) {
            String lasts = minutes(named.track().seconds());
            if (formats.contains(Format.midi)) {
                String name = named.name() + ".mid";
                MidiWriter.Report[] report = new MidiWriter.Report[1];
                progress.tell(name);
                SafeFile.write(folder.resolve(name), force, out -> report[0] = MidiWriter.write(named.track(), out));
                files.add(new PracticeIndex.Entry(name, named.label() + ", MIDI, " + lasts + error(report[0]), passage));
            }
            if (formats.contains(Format.wav)) {
                String name = named.name() + ".wav";
                SafeFile.write(folder.resolve(name), force, out -> WavWriter.write(named.track(),
                        options.peakDecibels(), out, done -> progress.tell(name, done)));
                files.add(new PracticeIndex.Entry(name, named.label() + ", WAV, " + lasts, passage));
            }
        }
        return files;
    }

    private static String minutes(Exact seconds) {
        long whole = seconds.round();
        return whole / 60 + ":" + (whole % 60 < 10 ? "0" : "") + whole % 60 + " min";
    }

    /** A click that is off by more than a sample of sound is worth a word; a millionth of a second is not. */
    private static String error(MidiWriter.Report report) {
        double millis = report.largestError().toDouble() * 1000;
        return millis < 0.02 ? "" : String.format(Locale.ROOT, ", clicks within %.2f ms", millis);
    }
}
