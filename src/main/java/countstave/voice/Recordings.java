package countstave.voice;

import countstave.plain.SafeText;
import countstave.score.ScoreException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * A person's own voice: a folder of recordings, each named by its syllable ({@code 1.wav}, {@code and.wav},
 * {@code trip.wav}). They are trimmed, levelled and centred as the bank's words are. Capitals do not matter.
 */
public final class Recordings {

    private static final String ENDING = ".wav";
    private static final int MOST = 500;

    private final Map<String, Clip> clips = new TreeMap<>();
    private final String folder;

    private Recordings(String folder) {
        this.folder = folder;
    }

    /**
     * Reads a folder.
     *
     * @throws ScoreException if there is no recording in it, or one that is no spoken syllable
     */
    public static Recordings in(Path folder) {
        Recordings recordings = new Recordings(SafeText.of(folder.toString()));
        for (Path file : recordings.files(folder)) {
            String name = file.getFileName().toString();
            String shown = SafeText.of(file.toString());
            float[] sound = SoundFile.read(file, shown);
            if (CleanSound.isSilent(sound)) {
                throw new ScoreException(shown + ": is a recording of silence; record it anew, or take it out of the folder");
            }
            recordings.clips.put(key(name.substring(0, name.length() - ENDING.length())), Clip.of(CleanSound.of(sound)));
        }
        return recordings;
    }

    private List<Path> files(Path in) {
        if (!Files.isDirectory(in)) {
            throw new ScoreException(folder + ": is no folder; --voice-sounds names a folder with a recording of each syllable,"
                    + " such as 1.wav and and.wav");
        }
        List<Path> files;
        try (Stream<Path> all = Files.list(in)) {
            files = all.filter(file -> file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(ENDING)
                    && !file.getFileName().toString().startsWith(".")).sorted().limit(MOST + 1L).toList();
        } catch (IOException e) {
            throw new ScoreException(folder + ": this folder cannot be read; check its permissions", e);
        }
        if (files.isEmpty()) {
            throw new ScoreException(folder + ": there is no recording in this folder; name each by its syllable, such as 1.wav"
                    + " and and.wav");
        }
        if (files.size() > MOST) {
            throw new ScoreException(folder + ": there are more than " + MOST + " recordings in this folder; --voice-sounds"
                    + " names a folder with one of each syllable");
        }
        return files;
    }

    private static String key(String word) {
        return Normalizer.normalize(word, Normalizer.Form.NFC).toLowerCase(Locale.ROOT);
    }

    /** The recording of a word by one of its names, or null. */
    Clip clip(List<String> names) {
        for (String name : names) {
            Clip clip = clips.get(key(name));
            if (clip != null) {
                return clip;
            }
        }
        return null;
    }

    /** The folder, to be shown. */
    String folder() {
        return folder;
    }
}
