package countstave.take;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;

/**
 * Takes of drums whose strokes are known, made into sound by FluidSynth with the open General MIDI sound font of Debian's
 * {@code fluid-soundfont-gm}: sounds that this project has not made.
 */
public final class DrumTake {

    static final Path FONT = Path.of("/usr/share/sounds/sf2/FluidR3_GM.sf2");
    public static final int RATE = 44_100;
    /**
     * Kick, snare, closed hi-hat, ride, two toms: the key, the velocity at which it is 30 dB weaker than an accent on the
     * snare, and how many milliseconds after its note it begins in this font ({@code DrumLatencyTest} measures both).
     */
    private static final double[][] DRUMS = {{36, 28, 4.25}, {38, 23, 4.05}, {42, 53, 2.25}, {51, 38, 2.65}, {45, 24, 2.3}, {48, 24, 2.4}};
    private static final int DRUM_CHANNEL = 9;
    private static final int TICKS = 1000;

    /** A stroke: key and velocity of General MIDI. */
    public record Hit(double second, int key, int velocity) {

        /** When it begins to sound. */
        public double sounds() {
            for (double[] drum : DRUMS) {
                if (drum[0] == key) {
                    return second + drum[2] / 1000;
                }
            }
            throw new IllegalArgumentException("no drum of ours: " + key);
        }
    }

    private DrumTake() {
    }

    /** Whether the program and the font are there; both come with Debian's packages. */
    public static boolean isPossible() {
        return Files.exists(FONT) && Aubio.isThere("fluidsynth");
    }

    public static final String MISSING = "needs fluidsynth and fluid-soundfont-gm (Debian), which are not installed";

    /**
     * Strokes at times from 0.08 to 0.45 s after each other: accents, middling ones, and ghost notes 30 dB below the
     * accents. A General MIDI velocity v sounds 40 log10(127/v) dB below the loudest (SoundFont 2.01, 9.5.2, from memory).
     */
    public static List<Hit> strokes(long seed, double seconds, boolean ghosts) {
        Random random = new Random(seed);
        List<Hit> hits = new ArrayList<>();
        for (double at = 0.5; at < seconds - 0.5; at += 0.08 + 0.37 * random.nextDouble() * random.nextDouble()) {
            int loud = random.nextInt(ghosts ? 3 : 2);
            double[] drum = DRUMS[random.nextInt(DRUMS.length)];
            int velocity = loud == 0 ? 120 + random.nextInt(8) : loud == 1 ? 70 + random.nextInt(30) : (int) drum[1];
            hits.add(new Hit(Math.round(at * TICKS) / (double) TICKS, (int) drum[0], velocity));
        }
        return hits;
    }

    /** A Standard MIDI file of these strokes, a tick a millisecond. */
    public static Path midi(Path file, List<Hit> hits) throws IOException {
        try {
            Sequence sequence = new Sequence(Sequence.PPQ, TICKS);
            Track track = sequence.createTrack();
            // one quarter a second
            track.add(new MidiEvent(new MetaMessage(0x51, new byte[] {0x0F, 0x42, 0x40}, 3), 0));
            for (Hit hit : hits) {
                long tick = Math.round(hit.second * TICKS);
                track.add(new MidiEvent(new ShortMessage(ShortMessage.NOTE_ON, DRUM_CHANNEL, hit.key, hit.velocity), tick));
                track.add(new MidiEvent(new ShortMessage(ShortMessage.NOTE_OFF, DRUM_CHANNEL, hit.key, 0), tick + 50));
            }
            MidiSystem.write(sequence, 1, file.toFile());
            return file;
        } catch (InvalidMidiDataException e) {
            throw new IllegalArgumentException(e);
        }
    }

    /** The sound of these strokes, dry. */
    public static float[] sound(Path folder, List<Hit> hits) throws IOException {
        Path midi = midi(folder.resolve("strokes.mid"), hits);
        Path wav = folder.resolve("strokes.wav");
        try {
            Process process = new ProcessBuilder("fluidsynth", "-ni", "-q", "-R", "0", "-C", "0", "-g", "0.8", "-r", "" + RATE, "-O",
                    "s16", "-T", "wav", "-F", wav.toString(), FONT.toString(), midi.toString()).redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
            if (!process.waitFor(60, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IOException("fluidsynth did not end");
            }
            return SoundFiles.read(wav);
        } catch (InterruptedException e) {
            throw new IOException(e);
        }
    }

    /** White noise {@code decibels} below the sound's own mean power. */
    public static float[] noisy(float[] sound, double decibels, long seed) {
        Random random = new Random(seed);
        double power = 0;
        for (float sample : sound) {
            power += sample * sample;
        }
        double size = Math.sqrt(power / sound.length * Math.pow(10, -decibels / 10));
        float[] noisy = new float[sound.length];
        for (int i = 0; i < sound.length; i++) {
            noisy[i] = (float) (0.7 * (sound[i] + size * random.nextGaussian()));
        }
        return noisy;
    }

    /**
     * The sound in a room: the direct sound, some early reflections, and noise that dies away by 60 dB in
     * {@code seconds}, 6 dB below the direct sound in all; generated, so that nobody's recording is needed.
     */
    public static float[] inRoom(float[] sound, double seconds, long seed) {
        Random random = new Random(seed);
        int length = (int) (seconds * RATE);
        float[] answer = new float[length];
        answer[0] = 1;
        double energy = 0;
        for (int i = RATE / 200; i < length; i++) {
            answer[i] = (float) (random.nextGaussian() * Math.pow(10, -3.0 * i / length));
            energy += answer[i] * answer[i];
        }
        double size = Math.sqrt(Math.pow(10, -6 / 10.0) / energy);
        for (int i = RATE / 200; i < length; i++) {
            answer[i] *= (float) size;
        }
        return Convolution.of(sound, answer);
    }
}
