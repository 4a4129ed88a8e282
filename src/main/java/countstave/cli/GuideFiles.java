package countstave.cli;

import countstave.count.NoteNames;
import countstave.practice.Passage;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.practice.StepCount;
import countstave.practice.TempoLadder;
import countstave.sound.GuideOptions;
import countstave.sound.GuideTrack;
import countstave.sound.Leg;
import countstave.sound.MidiWriter;
import countstave.sound.WavWriter;
import countstave.time.Exact;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * The guide tracks of a passage: one climbs through the tempo steps, each with its count, one goes through the stages of
 * thinning at the slowest step.
 */
final class GuideFiles {

    /** Kinds of sound file. */
    enum Format { midi, wav }

    private final GuideOptions options;
    private final Set<Format> formats;
    private final int tracks;
    private final int wavTracks;
    private final int repeats;

    /**
     * @param tracks how many passages a part get guide tracks, the hardest first
     * @param wavTracks how many of these as WAV too
     */
    GuideFiles(GuideOptions options, Set<Format> formats, int tracks, int wavTracks, int repeats) {
        this.options = options;
        this.formats = formats;
        this.tracks = tracks;
        this.wavTracks = wavTracks;
        this.repeats = repeats;
    }

    /** A track and what to call it. {@code name}: of its files, without their ending. */
    private record Named(String name, String label, GuideTrack track) {
    }

    private List<Named> tracks(Passage passage, String prefix) {
        List<Leg> steps = new ArrayList<>();
        for (StepCount count : passage.counts()) {
            for (TempoLadder.Rung rung : count.steps()) {
                String label = tempo(rung) + (passage.counts().size() > 1 ? ", count " + count.number() : "");
                steps.add(new Leg(count.stretch(), passage.speed(rung), Stage.ALL, repeats, label));
            }
        }
        StepCount first = passage.counts().get(0);
        TempoLadder.Rung slowest = first.steps().get(0);
        List<Leg> stages = new ArrayList<>();
        for (Stage stage : Stage.values()) {
            stages.add(new Leg(first.stretch(), passage.speed(slowest), stage, repeats, stage.title()));
        }
        return List.of(new Named(prefix + "steps", "tempo steps", GuideTrack.of(steps, options)),
                new Named(prefix + "stages", "stages at " + tempo(slowest), GuideTrack.of(stages, options)));
    }

    private static String tempo(TempoLadder.Rung rung) {
        return NoteNames.SYMBOLS.tempo(rung.tempo());
    }

    /**
     * The files of a part's hardest passages.
     *
     * @param top how many passages are written out at all
     * @param prefix what their names begin with
     */
    List<FolderFile> files(PracticePlan plan, int top, String prefix) {
        List<FolderFile> files = new ArrayList<>();
        int written = 0;
        for (Passage passage : plan.different().stream().limit(Math.min(top, tracks)).toList()) {
            for (Named named : tracks(passage, prefix + name(passage))) {
                if (formats.contains(Format.midi)) {
                    files.add(midi(passage, named));
                }
                if (formats.contains(Format.wav) && written < wavTracks) {
                    files.add(wav(passage, named));
                }
            }
            written++;
        }
        return files;
    }

    private FolderFile midi(Passage passage, Named named) {
        return new FolderFile(named.name() + ".mid", named.label() + ", MIDI, " + minutes(named.track().seconds()),
                passage, 0, (out, progress) -> error(MidiWriter.write(named.track(), out)));
    }

    private FolderFile wav(Passage passage, Named named) {
        String name = named.name() + ".wav";
        long bytes = WavWriter.bytes(named.track());
        String label = String.format(Locale.ROOT, "%s, WAV, %s, %.1f MB", named.label(),
                minutes(named.track().seconds()), bytes / 1e6);
        return new FolderFile(name, label, passage, bytes, (out, progress) -> {
            WavWriter.write(named.track(), options.peakDecibels(), out, done -> progress.tell(name, done));
            return "";
        });
    }

    /** {@code 01-bars-9-16-}: letters, digits and hyphens only, whatever the bars are called. */
    private static String name(Passage passage) {
        String numbers = passage.stretch().numbers().replaceAll("[^A-Za-z0-9]+", "-");
        String safe = numbers.substring(0, Math.min(20, numbers.length()));
        return (passage.rank() < 10 ? "0" : "") + passage.rank() + "-bars-" + safe + "-";
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
