package countstave.folder;

import countstave.count.NoteNames;
import countstave.files.Progress;
import countstave.plain.Phrases;
import countstave.practice.Passage;
import countstave.practice.PracticePlan;
import countstave.sound.GuideOptions;
import countstave.sound.GuideTrack;
import countstave.sound.Layer;
import countstave.sound.MidiWriter;
import countstave.sound.PassageTracks;
import countstave.sound.WavSound;
import countstave.sound.WavWriter;
import countstave.time.Exact;
import countstave.voice.Speaker;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Which guide tracks lie in a practice folder, and what their files are called.
 *
 * @param options how they sound
 * @param formats kinds of sound file
 * @param tracks how many passages of a part get guide tracks, the hardest first
 * @param wavTracks how many of these as WAV too
 * @param repeats how many times a passage sounds at each tempo and stage; 0 for as often as a step asks
 * @param voice who says the counts in WAV files
 */
public record GuideFiles(GuideOptions options, Set<Format> formats, int tracks, int wavTracks, int repeats,
        Speaker.Choice voice) {

    /** Kinds of sound file. */
    public enum Format { midi, wav }

    /**
     * The files of a part's hardest passages.
     *
     * @param top how many passages are written out at all
     * @param prefix what their names begin with
     * @param names the language of the labels
     */
    List<FolderFile> files(PracticePlan plan, int top, String prefix, NoteNames names, Progress progress) {
        List<FolderFile> files = new ArrayList<>();
        boolean speaks = formats.contains(Format.wav) && options.layers().contains(Layer.VOICE);
        WavSound sound = new WavSound(options.peakDecibels(), speaks ? new Speaker(voice, plan.counts().system()) : null);
        int written = 0;
        for (Passage passage : plan.worked(Math.min(top, tracks))) {
            String name = prefix + name(passage);
            boolean wav = formats.contains(Format.wav) && written < wavTracks;
            for (PassageTracks.Track track : PassageTracks.of(passage, repeats, options, names)) {
                // of the seams the hardest alone is worth its megabytes
                boolean asWav = wav && (track.seam() == null || track.seam() == passage.seams().get(0));
                add(track.track(), name + track.name(), track.label(), passage, asWav ? sound : null, names.phrases(), progress, files);
            }
            written++;
        }
        return files;
    }

    private void add(GuideTrack track, String name, String label, Passage passage, WavSound wav, Phrases phrases,
            Progress progress, List<FolderFile> files) {
        if (formats.contains(Format.midi) && options.clicks()) {
            files.add(new FolderFile(name + ".mid", label + ", MIDI, " + minutes(track.seconds()), passage, 0,
                    out -> error(MidiWriter.write(track, out), phrases)));
        }
        if (wav != null) {
            long bytes = WavWriter.bytes(track, wav);
            String kind = phrases.text(track.isSpoken() ? "track.wav.spoken" : "track.wav");
            String all = label + ", " + kind + ", " + minutes(track.seconds()) + ", " + phrases.decimal(bytes / 1e6, 1) + " MB";
            files.add(new FolderFile(name + ".wav", all, passage, bytes, out -> {
                WavWriter.write(track, wav, out, done -> progress.tell(name + ".wav", done));
                return track.leavesOutWords() ? ", " + phrases.text("track.left-out") : "";
            }));
        }
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
    private static String error(MidiWriter.Report report, Phrases phrases) {
        double millis = report.largestError().toDouble() * 1000;
        return millis < 0.02 ? "" : ", " + phrases.text("track.error", phrases.decimal(millis, 2));
    }
}
