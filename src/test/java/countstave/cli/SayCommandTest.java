package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.testing.Snippets;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The voice on the command line: {@code say}, and {@code practice --voice}. */
class SayCommandTest {

    private static final int RATE = 22_050;

    @TempDir
    Path folder;

    private Path score;

    @BeforeEach
    void score() throws IOException {
        score = folder.resolve("beat.musicxml");
        Files.writeString(score, Snippets.in("4/4").tempo(90).bar("4 4 4 4").bar("8 8 4 8 8 4").xml());
    }

    private static short[] samples(Path wav) throws IOException {
        byte[] bytes = Files.readAllBytes(wav);
        ByteBuffer buffer = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        short[] samples = new short[(bytes.length - 44) / 2];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = buffer.getShort(44 + 2 * i);
        }
        return samples;
    }

    private static int words(short[] samples) {
        int words = 0;
        int silent = 100;
        for (short sample : samples) {
            words += sample != 0 && silent >= 100 ? 1 : 0;
            silent = sample != 0 ? 0 : silent + 1;
        }
        return words;
    }

    @Test
    void saysTheBarsOnce() throws Exception {
        Path wav = folder.resolve("count.wav");
        Run run = Run.of("say", score.toString(), "--bars", "2", "-o", wav.toString());
        assertEquals(0, run.code(), run.err());
        assertEquals("", run.err());
        assertEquals("wrote " + wav + "\n", run.out());
        short[] samples = samples(wav);
        // a fifth of a second before, four beats of two thirds, half a second after
        assertEquals(0.2 + 4 * 60 / 90.0 + 0.5, (double) samples.length / RATE, 0.001);
        // 1 & 2 (&) 3 & 4 (&)
        assertEquals(8, words(samples));
        // at the tempo asked for, counted in, and with the beat
        Path slow = folder.resolve("slow.wav");
        run = Run.of("say", score.toString(), "--bars", "2", "--tempo", "60", "--count-in", "--layers", "voice,beat", "-o",
                slow.toString());
        assertEquals(0, run.code(), run.err());
        assertEquals(0.2 + 8 + 0.5, (double) samples(slow).length / RATE, 0.001);
    }

    @Test
    void liesBesideTheScoreWithoutOutput() throws Exception {
        Run run = Run.of("say", score.toString());
        assertEquals(0, run.code(), run.err());
        assertTrue(Files.exists(folder.resolve("beat-said.wav")));
        assertEquals(2, Run.of("say", score.toString()).code(), "it is there already");
    }

    private short[] said(String... more) throws Exception {
        Path wav = folder.resolve("said.wav");
        List<String> words = new java.util.ArrayList<>(List.of("say", score.toString(), "-o", wav.toString(), "--force"));
        words.addAll(List.of(more));
        Run run = Run.of(words.toArray(String[]::new));
        assertEquals(0, run.code(), run.err());
        return samples(wav);
    }

    private static boolean same(short[] one, short[] other) {
        return java.util.Arrays.equals(one, other);
    }

    /** The voice speaks the words' language unless another is asked for; --voice chooses among the score's voices as before. */
    @Test
    void whoSpeaks() throws Exception {
        short[] english = said();
        short[] german = said("--and", "de");
        assertFalse(same(english, german));
        // printed otherwise, said alike: fourths and halves of a beat have one place in both languages
        assertArrayEquals(german, said("--voice", "de"));
        assertArrayEquals(english, said("--and", "de", "--voice", "en"));
        assertArrayEquals(english, said("--voice", "low", "--voice", "1"));
        assertFalse(same(english, said("--voice", "high")));
        assertArrayEquals(said("--voice", "high", "--and", "de"), said("--voice", "de", "--voice", "high"));
        Run run = Run.of("say", score.toString(), "-o", folder.resolve("x.wav").toString(), "--voice", "7");
        assertEquals(2, run.code());
        assertTrue(run.err().contains("no note is in the chosen voice"), run.err());
    }

    @Test
    void whatContradictsIsToldInOneLine() throws Exception {
        String[][] wrong = {{"--voice", "none"}, {"--voice", "de", "--voice", "es"}, {"--voice", "low", "--voice", "high"},
            {"--layers", "beat"}, {"--voice", "klingon"}, {"--voice-softer", "41"}, {"--voice-softer", "NaN"}, {"--voice-sounds", "nowhere"}, {"--peak", "0"},
            {"--voice-sounds", folder.toString()}};
        for (String[] more : wrong) {
            Path wav = folder.resolve("none.wav");
            Run run = Run.of(Stream.concat(Stream.of("say", score.toString(), "-o", wav.toString()), Stream.of(more))
                    .toArray(String[]::new));
            assertEquals(2, run.code(), String.join(" ", more));
            assertEquals(1, run.err().lines().count(), run.err());
            assertFalse(Files.exists(wav));
        }
        assertEquals(1, Run.of("say", score.toString(), "-o", folder.resolve("x.mp3").toString()).err().lines().count());
    }

    /** One voice says one part, and which. */
    @Test
    void severalParts() throws Exception {
        Run run = Run.of("say", "scores/song.musicxml", "-o", folder.resolve("x.wav").toString(), "--bars", "1-4");
        assertEquals(0, run.code(), run.err());
        assertEquals(1, run.err().lines().filter(line -> line.contains("one voice says one part: this is ")).count(), run.err());
        assertEquals("", Run.of("say", "scores/song.musicxml", "-o", folder.resolve("y.wav").toString(), "--bars", "1-4", "--part", "1")
                .err());
    }

    /** Own recordings that are no syllables, each in one line, and nothing is written. */
    @Test
    void badRecordings() throws Exception {
        Path own = Files.createDirectory(folder.resolve("own"));
        for (int[] kind : new int[][] {{1, 0}, {10, 9000}}) {
            byte[] bytes = new byte[2 * RATE * kind[0]];
            for (int i = 0; i < bytes.length; i += 2) {
                bytes[i + 1] = (byte) (kind[1] == 0 ? 0 : 40 * Math.sin(i / 20.0));
            }
            AudioFormat format = new AudioFormat(RATE, 16, 1, true, false);
            AudioSystem.write(new AudioInputStream(new ByteArrayInputStream(bytes), format, bytes.length / 2),
                    AudioFileFormat.Type.WAVE, own.resolve("1.wav").toFile());
            for (String command : List.of("say", "practice")) {
                Path out = folder.resolve(command.equals("say") ? "x.wav" : "plan");
                Run run = Run.of(command, score.toString(), "-o", out.toString(), "--voice-sounds", own.toString());
                assertEquals(2, run.code());
                assertEquals(1, run.err().lines().count(), run.err());
                assertTrue(run.err().contains("1.wav: " + (kind[1] == 0 ? "is a recording of silence" : "lasts more than 3")), run.err());
                assertFalse(Files.exists(out));
            }
        }
    }

    /** A teacher's two words: they are said, and what is missing is named once. */
    @Test
    void ownRecordingsSpeak() throws Exception {
        Path own = Files.createDirectory(folder.resolve("teacher"));
        short[] bank = said();
        byte[] bytes = new byte[2 * 5000];
        for (int i = 0; i < 5000; i++) {
            short value = (short) (9000 * Math.sin(2 * Math.PI * 150 * i / RATE) * Math.min(1, (5000 - i) / 900.0));
            bytes[2 * i] = (byte) value;
            bytes[2 * i + 1] = (byte) (value >> 8);
        }
        AudioFormat format = new AudioFormat(RATE, 16, 1, true, false);
        AudioSystem.write(new AudioInputStream(new ByteArrayInputStream(bytes), format, 5000), AudioFileFormat.Type.WAVE,
                own.resolve("1.wav").toFile());
        Path wav = folder.resolve("own.wav");
        Run run = Run.of("say", score.toString(), "-o", wav.toString(), "--voice-sounds", own.toString());
        assertEquals(0, run.code());
        assertFalse(same(bank, samples(wav)));
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().contains("has no recording of and, four, three, two: said by the bank's voice"), run.err());
        run = Run.of("practice", score.toString(), "-o", folder.resolve("plan").toString(), "--voice-sounds", own.toString(),
                "--repeats", "1");
        assertEquals(0, run.code());
        assertEquals(1, run.err().lines().filter(line -> line.contains("said by the bank's voice")).count(), run.err());
    }

    /** WAV files of a practice folder speak unless told not to; MIDI files stay as they are. */
    @Test
    void practiceSpeaks() throws Exception {
        for (String voice : List.of("none", "de")) {
            Run run = Run.of("practice", score.toString(), "-o", folder.resolve(voice).toString(), "--voice", voice, "--repeats", "1");
            assertEquals(0, run.code(), run.err());
        }
        int spoken = 0;
        try (Stream<Path> files = Files.list(folder.resolve("none"))) {
            for (Path file : files.toList()) {
                byte[] silent = Files.readAllBytes(file);
                byte[] said = Files.readAllBytes(folder.resolve("de").resolve(file.getFileName()));
                if (file.toString().endsWith(".mid")) {
                    assertArrayEquals(silent, said);
                } else if (file.toString().endsWith(".wav")) {
                    // a fifth of a second before the track, in bytes
                    assertEquals(silent.length + 8820, said.length);
                    assertFalse(java.util.Arrays.equals(silent, said), file.toString());
                    spoken++;
                }
            }
        }
        assertTrue(spoken > 1);
        Run midi = Run.of("practice", score.toString(), "-o", folder.resolve("m").toString(), "--sound", "midi", "--layers", "voice");
        assertEquals(2, midi.code());
        assertTrue(midi.err().contains("MIDI files cannot speak"), midi.err());
    }

    /** Where more is asked for than the voice can say, it says so once. */
    @Test
    void tellsThatItLeavesOutWords() throws Exception {
        Files.writeString(score, Snippets.in("4/4").tempo(150).bar("16 8. 16 16 16 16 4 4").xml());
        Run run = Run.of("say", score.toString(), "-o", folder.resolve("x.wav").toString(), "--felt", "no");
        assertEquals(0, run.code(), run.err());
        assertTrue(run.err().contains("the voice leaves out words without a note"), run.err());
        assertEquals(1, run.err().lines().filter(line -> line.contains("leaves out")).count());
    }
}
