package countstave.voice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.CountingSystem;
import countstave.score.ScoreException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A person's own recordings; those of the tests are words of the bank, recorded anew. */
class RecordingsTest {

    @TempDir
    Path folder;

    /** Writes a sound as a WAV file: linear between the samples where the rate is another. */
    private static void write(Path file, float[] sound, double rate, int channels, int bits) throws IOException {
        int frames = (int) (sound.length * rate / Clip.RATE);
        byte[] bytes = new byte[frames * channels * bits / 8];
        int at = 0;
        for (int i = 0; i < frames; i++) {
            double place = (double) i * Clip.RATE / rate;
            int whole = (int) place;
            double next = whole + 1 < sound.length ? sound[whole + 1] : 0;
            double value = sound[whole] + (place - whole) * (next - sound[whole]);
            for (int channel = 0; channel < channels; channel++) {
                if (bits == 8) {
                    bytes[at++] = (byte) Math.round(128 + 127 * value);
                } else {
                    long scaled = Math.round(value * ((1L << bits - 1) - 1));
                    for (int b = 0; b < bits; b += 8) {
                        bytes[at++] = (byte) (scaled >> b);
                    }
                }
            }
        }
        AudioFormat format = new AudioFormat(bits == 8 ? AudioFormat.Encoding.PCM_UNSIGNED : AudioFormat.Encoding.PCM_SIGNED,
                (float) rate, bits, channels, channels * bits / 8, (float) rate, false);
        AudioSystem.write(new AudioInputStream(new ByteArrayInputStream(bytes), format, frames), AudioFileFormat.Type.WAVE,
                file.toFile());
    }

    /** A word in a room: with half a second before it, a third after it, and a little noise throughout. */
    private static float[] inARoom(Clip word, double gain) {
        float[] sound = new float[word.samples().length + Clip.RATE * 5 / 6];
        Random random = new Random(3);
        for (int i = 0; i < sound.length; i++) {
            int in = i - Clip.RATE / 2;
            sound[i] = (float) (0.0005 * random.nextGaussian()
                    + (in >= 0 && in < word.samples().length ? gain * word.samples()[in] : 0) + 0.01);
        }
        return sound;
    }

    /** Soft, with silence around, in another format: trimmed, levelled and centred, it is the word it was. */
    @ParameterizedTest
    @CsvSource({"22050, 1, 16", "44100, 2, 16", "192000, 2, 24", "48000, 1, 8", "8000, 1, 16", "96000, 6, 32"})
    void recordingsOfAnyKindBecomeAlike(double rate, int channels, int bits) throws IOException {
        SyllableBank bank = SyllableBank.of(Register.LOW);
        for (String word : List.of("1", "3", "trip")) {
            Clip original = bank.clip("en", word);
            write(folder.resolve(word + ".wav"), inARoom(original, 0.7), rate, channels, bits);
        }
        Recordings own = Recordings.in(folder);
        for (String word : List.of("1", "3", "trip")) {
            Clip original = bank.clip("en", word);
            Clip clip = own.clip(List.of(word));
            // eight bits hide the softest 30 ms of a hiss in their own noise, 8 kHz its upper half
            double slack = bits == 8 || rate == 8000 ? 0.035 : 0.012;
            assertEquals(original.seconds(), clip.seconds(), slack + 0.025, word);
            assertEquals(original.centre() / Clip.RATE, clip.centre() / Clip.RATE, slack, word);
            assertEquals(rms(original.samples()), rms(clip.samples()), 0.03, word);
        }
    }

    private static double rms(float[] sound) {
        double sum = 0;
        for (float sample : sound) {
            sum += sample * sample;
        }
        return Math.sqrt(sum / sound.length);
    }

    @Test
    void missingWordsAreTakenFromTheBankAndNamedOnce() throws IOException {
        SyllableBank bank = SyllableBank.of(Register.LOW);
        write(folder.resolve("AND.wav"), bank.clip("en", "&").samples(), Clip.RATE, 1, 16);
        write(folder.resolve("sev.WAV"), bank.clip("en", "7").samples(), Clip.RATE, 1, 16);
        write(folder.resolve("2.wav"), bank.clip("en", "2").samples(), Clip.RATE, 1, 16);
        Files.writeString(folder.resolve("notes.txt"), "not a recording");
        Recordings own = Recordings.in(folder);
        Speaker speaker = new Speaker(new Speaker.Choice(Register.LOW, null, own, 6), CountingSystem.named("numbers"));
        for (String word : List.of("1", "2", "&", "7", "e", "1", "e", "&")) {
            speaker.clip(word);
        }
        assertSame(own.clip(List.of("and")), speaker.clip("&"));
        assertSame(own.clip(List.of("sev")), speaker.clip("7"));
        assertSame(bank.clip("en", "1"), speaker.clip("1"));
        assertEquals(List.of(folder + " has no recording of ee, one: said by the bank's voice"), speaker.notes());
        assertEquals(0.5, speaker.gain(), 0.01);
    }

    @Test
    void aWordOfOnesOwnSystemIsSaidFromTheFolder() throws IOException {
        write(folder.resolve("kix.wav"), SyllableBank.of(Register.LOW).clip("en", "6").samples(), Clip.RATE, 1, 16);
        CountingSystem own = CountingSystem.parse("own.system", "name = own\n1 = N\n3 = N kix zlom\n");
        Speaker speaker = new Speaker(new Speaker.Choice(Register.LOW, null, Recordings.in(folder), 0), own);
        speaker.clip("kix");
        assertEquals(List.of(), speaker.notes());
        speaker.clip("zlom");
        assertEquals(List.of(folder + " has no recording of zlom: said by the bank's voice",
                "the bank has no word for zlom (joe): said as in brackets"), speaker.notes());
    }

    private String refused(Path in) {
        ScoreException e = assertThrows(ScoreException.class, () -> Recordings.in(in));
        assertTrue(e.getMessage().lines().count() == 1 && e.getMessage().contains(in.toString()), e.getMessage());
        return e.getMessage().replace(in.toString(), "F");
    }

    @Test
    void whatIsNoRecordingIsToldInOneLine() throws IOException {
        assertEquals("F: there is no recording in this folder; name each by its syllable, such as 1.wav and and.wav",
                refused(folder));
        assertTrue(refused(folder.resolve("nowhere")).startsWith("F: is no folder; --voice-sounds names a folder"));
        Path one = folder.resolve("1.wav");
        write(one, new float[8000], Clip.RATE, 1, 16);
        assertEquals("F/1.wav: is a recording of silence; record it anew, or take it out of the folder", refused(folder));
        write(one, inARoom(SyllableBank.of(Register.LOW).clip("en", "1"), 0.002), Clip.RATE, 1, 8);
        assertTrue(refused(folder).contains("is a recording of silence"));
        float[] long10 = new float[10 * Clip.RATE];
        long10[5000] = 1;
        write(one, long10, Clip.RATE, 2, 16);
        assertEquals("F/1.wav: lasts more than 3 seconds; a recording holds one syllable: cut it", refused(folder));
        write(one, new float[0], Clip.RATE, 1, 16);
        assertTrue(refused(folder).contains("is a recording of silence"));
        Files.writeString(one, "RIFF and nothing more");
        assertEquals("F/1.wav: is no WAV recording that can be read; save it as WAV, PCM, 16 bits", refused(folder));
        Files.write(one, new byte[0]);
        assertEquals("F/1.wav: is no WAV recording that can be read; save it as WAV, PCM, 16 bits", refused(folder));
    }

    /** Spoiled files give a recording or one line, never anything else. */
    @Test
    void spoiledFilesAreRefusedOrRead() throws IOException {
        Path one = folder.resolve("1.wav");
        write(one, SyllableBank.of(Register.LOW).clip("en", "1").samples(), 44_100, 2, 16);
        byte[] good = Files.readAllBytes(one);
        Random random = new Random(11);
        int refused = 0;
        for (int i = 0; i < 400; i++) {
            byte[] bad = good.clone();
            for (int k = 0; k <= i % 4; k++) {
                bad[random.nextInt(48)] = (byte) random.nextInt(256);
            }
            Files.write(one, i % 5 == 0 ? java.util.Arrays.copyOf(bad, random.nextInt(200)) : bad);
            try {
                Recordings.in(folder);
            } catch (ScoreException e) {
                refused++;
            }
        }
        assertTrue(refused > 50 && refused < 400, refused + " refused");
    }
}
