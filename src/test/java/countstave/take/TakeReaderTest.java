package countstave.take;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.ScoreException;
import countstave.take.SoundFiles.Form;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What takes are read, and in what words others are refused. */
class TakeReaderTest {

    private static final double[] AT = {0.5, 0.83, 1.0, 1.21, 1.7, 2.1};
    private static final double[] LEVELS = {0.5, 0.3, 0.5, 0.1, 0.5, 0.2};

    @TempDir
    Path folder;

    static List<Form> forms() {
        return List.of(new Form(8, false, 1), new Form(16, false, 1), new Form(16, false, 2), new Form(24, false, 2), new Form(32, false, 1),
                new Form(32, true, 2), new Form(64, true, 1));
    }

    private Take read(Path file) {
        return TakeReader.read(file, file.getFileName().toString(), NoteChoice.ALL, null);
    }

    private String refused(Path file) {
        String line = assertThrows(ScoreException.class, () -> read(file)).getMessage();
        assertTrue(line.startsWith(file.getFileName().toString()), line);
        assertEquals(1, line.lines().count());
        return line;
    }

    private static void strokes(Take take, double within) {
        assertEquals(AT.length, take.onsets().size(), take.onsets().toString());
        for (int i = 0; i < AT.length; i++) {
            assertEquals(AT[i], take.onsets().get(i).second(), within);
        }
    }

    @ParameterizedTest
    @MethodSource("forms")
    void everyFormOfWav(Form form) throws IOException {
        strokes(read(SoundFiles.write(folder.resolve("take.wav"), Bursts.of(AT, LEVELS, 44_100, 3), 44_100, form)), 0.001);
    }

    static Stream<Integer> rates() {
        return Stream.of(8_000, 11_025, 22_050, 32_000, 48_000, 88_200, 96_000, 176_400, 192_000);
    }

    @ParameterizedTest
    @MethodSource("rates")
    void everyRate(int rate) throws IOException {
        strokes(read(SoundFiles.write(folder.resolve("take.wav"), Bursts.of(AT, LEVELS, rate, 3), rate)), 0.002);
    }

    /** A sine through every form and back: decoded to what was written, and not to its own mirror image. */
    @ParameterizedTest
    @MethodSource("forms")
    void samplesAreWhatWasWritten(Form form) throws IOException {
        float[] sine = new float[3000];
        for (int i = 0; i < sine.length; i++) {
            sine[i] = (float) (0.7 * Math.sin(i / 30.0));
        }
        float[] read = SoundFiles.read(SoundFiles.write(folder.resolve("sine.wav"), sine, 44_100, form));
        assertEquals(sine.length, read.length);
        for (int i = 0; i < sine.length; i++) {
            assertEquals(sine[i], read[i], form.bits() == 8 ? 0.01 : 0.0002);
        }
    }

    @Test
    void thinningLosesNoTimeAndFoldsNothingDown() throws IOException {
        float[] high = new float[96_000];
        for (int i = 0; i < high.length; i++) {
            high[i] = (float) (0.5 * Math.sin(2 * Math.PI * 40_000 * i / 96_000) + 0.25 * Math.sin(2 * Math.PI * 1000 * i / 96_000));
        }
        float[] read = SoundFiles.read(SoundFiles.write(folder.resolve("high.wav"), high, 96_000));
        assertEquals(48_000, read.length, 20);
        for (int i = 1000; i < 2000; i++) {
            assertEquals(0.25 * Math.sin(2 * Math.PI * 1000 * i / 48_000), read[i], 0.01);
        }
    }

    @Test
    void aGhostNote30DecibelsBelowIsHeard() throws IOException {
        double[] levels = {0.8, 0.025, 0.8, 0.025, 0.8, 0.025};
        strokes(read(SoundFiles.write(folder.resolve("ghosts.wav"), Bursts.of(AT, levels, 44_100, 3), 44_100)), 0.001);
    }

    @Test
    void aToneThatWaversIsOneStroke() throws IOException {
        float[] tone = new float[3 * 44_100];
        for (int i = 22_050; i < tone.length; i++) {
            double t = (i - 22_050) / 44_100.0;
            double phase = 2 * Math.PI * 220 * t + 0.4 * Math.sin(2 * Math.PI * 6 * t);
            tone[i] = (float) (0.3 * Math.exp(-t) * (Math.sin(phase) + 0.5 * Math.sin(2 * phase) + 0.3 * Math.sin(3 * phase)));
        }
        Take take = read(SoundFiles.write(folder.resolve("bass.wav"), tone, 44_100));
        assertEquals(1, take.onsets().size(), take.onsets().toString());
        assertEquals(0.5, take.onsets().get(0).second(), 0.003);
    }

    @Test
    void whatIsNoTakeIsRefusedInOneLine() throws IOException {
        assertTrue(refused(folder.resolve("none.wav")).contains("no such file"));
        assertTrue(refused(folder.resolve(".").normalize()).contains("folder"));
        assertTrue(refused(Files.write(folder.resolve("empty.wav"), new byte[0])).contains("is empty"));
        assertTrue(refused(Files.writeString(folder.resolve("words.wav"), "not a sound")).contains("no sound"));
        assertTrue(refused(Files.writeString(folder.resolve("short.wav"), "RIFF\0\0\0\0WAVE")).contains("WAV"));
        assertTrue(refused(Files.writeString(folder.resolve("song.mp3"), "ID3 and so on")).contains("MP3"));
        assertTrue(refused(Files.writeString(folder.resolve("song.flac"), "fLaC and so on")).contains("not read"));
        assertTrue(refused(SoundFiles.write(folder.resolve("silent.wav"), new float[44_100], 44_100)).contains("silent"));
        assertTrue(refused(SoundFiles.write(folder.resolve("none.wav"), new float[0], 44_100)).contains("no sound"));
        float[] loud = Bursts.of(AT, new double[] {90, 90, 90, 90, 90, 90}, 44_100, 3);
        assertTrue(refused(SoundFiles.write(folder.resolve("loud.wav"), loud, 44_100)).contains("clipped"));
        float[] sound = Bursts.of(AT, LEVELS, 44_100, 3);
        assertTrue(refused(SoundFiles.write(folder.resolve("slow.wav"), sound, 4_000)).contains("4000 samples a second"));
        assertTrue(refused(SoundFiles.write(folder.resolve("fast.wav"), sound, 384_000)).contains("384000"));
        byte[] whole = Files.readAllBytes(SoundFiles.write(folder.resolve("whole.wav"), sound, 44_100));
        assertTrue(refused(Files.write(folder.resolve("cut.wav"), Arrays.copyOf(whole, whole.length / 2))).contains("cut off"));
        assertTrue(refused(SoundFiles.write(folder.resolve("four.wav"), sound, 44_100, new Form(16, false, 4))).contains("4 channels"));
        byte[] adpcm = whole.clone();
        adpcm[20] = 2;
        assertTrue(refused(Files.write(folder.resolve("adpcm.wav"), adpcm)).contains("not read"));
    }

    @Test
    void aSpoiledFileNeverBreaksTheRun() throws IOException {
        byte[] whole = Files.readAllBytes(SoundFiles.write(folder.resolve("whole.wav"), Bursts.of(AT, LEVELS, 22_050, 3), 22_050));
        java.util.Random random = new java.util.Random(1);
        int refused = 0;
        for (int i = 0; i < 60; i++) {
            byte[] spoiled = whole.clone();
            for (int k = 0; k < 3; k++) {
                spoiled[12 + random.nextInt(32)] = (byte) random.nextInt(256);
            }
            try {
                read(Files.write(folder.resolve("spoiled.wav"), spoiled));
            } catch (ScoreException e) {
                refused++;
            }
        }
        assertTrue(refused > 15, refused + " refused");
    }

    private Path midi(int format, int... keys) throws IOException {
        try {
            Sequence sequence = new Sequence(Sequence.PPQ, 480);
            Track conductor = sequence.createTrack();
            // 0.5 s a quarter, from the third quarter on 0.25 s
            conductor.add(new MidiEvent(new MetaMessage(0x51, new byte[] {0x07, (byte) 0xA1, 0x20}, 3), 0));
            conductor.add(new MidiEvent(new MetaMessage(0x51, new byte[] {0x03, (byte) 0xD0, (byte) 0x90}, 3), 960));
            Track track = format == 0 ? conductor : sequence.createTrack();
            for (int i = 0; i < keys.length; i++) {
                track.add(new MidiEvent(new ShortMessage(ShortMessage.NOTE_ON, 9, keys[i], 100), 480L * i));
                track.add(new MidiEvent(new ShortMessage(ShortMessage.NOTE_ON, 9, keys[i], 0), 480L * i + 60));
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            MidiSystem.write(sequence, format, out);
            return Files.write(folder.resolve("take" + format + ".mid"), out.toByteArray());
        } catch (InvalidMidiDataException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void midiIsReadByItsTempoMap() throws IOException {
        for (int format : new int[] {0, 1}) {
            Take take = read(midi(format, 36, 38, 36, 42, 36));
            assertEquals(List.of(0.0, 0.5, 1.0, 1.25, 1.5), take.onsets().stream().map(Onset::second).toList());
            assertEquals(Take.Kind.MIDI, take.kind());
            Take kick = TakeReader.read(folder.resolve("take" + format + ".mid"), "take", NoteChoice.parse(10, "35-36"), null);
            assertEquals(List.of(0.0, 1.0, 1.5), kick.onsets().stream().map(Onset::second).toList());
        }
    }

    @Test
    void midiThatCannotBeTaken() throws IOException {
        Path take = midi(1, 36, 38);
        byte[] bytes = Files.readAllBytes(take);
        assertTrue(refused(Files.write(folder.resolve("cut.mid"), Arrays.copyOf(bytes, 20))).contains("MIDI"));
        byte[] two = bytes.clone();
        two[9] = 2;
        assertTrue(refused(Files.write(folder.resolve("two.mid"), two)).contains("format 2"));
        assertTrue(refused(midi(0)).contains("no note"));
        assertTrue(assertThrows(ScoreException.class, () -> TakeReader.read(take, "take.mid", NoteChoice.parse(3, null), null)).getMessage()
                .contains("--channel"));
        for (String notes : List.of("x", "40-30", "128", "1-2-3", "")) {
            assertThrows(ScoreException.class, () -> NoteChoice.parse(null, notes));
        }
        assertThrows(ScoreException.class, () -> NoteChoice.parse(17, null));
        Path wav = Files.write(folder.resolve("take.wav"), "RIFF....WAVE".getBytes(StandardCharsets.US_ASCII));
        assertThrows(ScoreException.class, () -> TakeReader.read(wav, "take.wav", NoteChoice.parse(null, "36"), null));
    }

    @Test
    void spoiledMidiNeverBreaksTheRun() throws IOException {
        byte[] whole = Files.readAllBytes(midi(1, 36, 38, 36, 42, 36, 38));
        java.util.Random random = new java.util.Random(2);
        int refused = 0;
        for (int i = 0; i < 150; i++) {
            byte[] spoiled = whole.clone();
            for (int k = 0; k < 3; k++) {
                spoiled[4 + random.nextInt(whole.length - 4)] = (byte) random.nextInt(256);
            }
            Path file = Files.write(folder.resolve("spoiled.mid"), spoiled);
            try {
                org.junit.jupiter.api.Assertions.assertTimeout(java.time.Duration.ofSeconds(5), () -> read(file));
            } catch (ScoreException e) {
                refused++;
            }
        }
        assertTrue(refused > 8, refused + " refused");
    }
}
