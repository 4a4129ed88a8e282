package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run whose count changes with the tempo step: 16ths at ♩ = 152, of which a player says eighths (the bars to agree with). */
class PracticeStepsTest {

    private static final String SIXTEENTHS = "16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16";

    @TempDir
    Path folder;

    private Path practise(String... options) throws Exception {
        Path score = Files.writeString(folder.resolve("fast.musicxml"),
                Snippets.in("4/4").tempo(152).bar(SIXTEENTHS).bar(SIXTEENTHS).xml());
        Path plan = folder.resolve("plan");
        List<String> words = new java.util.ArrayList<>(List.of("practice", score.toString(), "-o", plan.toString(), "--sound",
                "midi", "--layers", "grid", "--no-count-in"));
        words.addAll(List.of(options));
        Run run = Run.of(words.toArray(String[]::new));
        assertEquals(0, run.code(), run.err());
        return plan;
    }

    /** By hand: each step is a file of its own in which all of its words click, 32 on the slow ones, 16 on the fast. */
    @Test
    void theGuideTrackClicksTheCountOfEachStep() throws Exception {
        Path plan = practise("--repeats", "1");
        int slow = 0;
        int fast = 0;
        List<Path> files;
        try (java.util.stream.Stream<Path> all = Files.list(plan)) {
            files = all.filter(f -> f.getFileName().toString().matches("01-bars-1-2-step-\\d+\\.mid")).toList();
        }
        for (Path file : files) {
            int clicks = 0;
            String label = "";
            for (Track track : MidiSystem.getSequence(file.toFile()).getTracks()) {
                for (int i = 0; i < track.size(); i++) {
                    MidiEvent event = track.get(i);
                    if (event.getMessage() instanceof MetaMessage meta && meta.getType() == 0x06) {
                        label = new String(meta.getData(), StandardCharsets.UTF_8);
                    } else if (event.getMessage() instanceof ShortMessage note && note.getCommand() == ShortMessage.NOTE_ON
                            && note.getData2() > 0) {
                        clicks++;
                    }
                }
            }
            boolean first = label.contains(", count 1");
            slow += first ? 1 : 0;
            fast += label.contains(", count 2") ? 1 : 0;
            // where 16ths outrun the voice before the other count begins, half of them are said
            assertEquals(first && !label.contains("half the grid") ? 32 : 16, clicks, label);
        }
        assertTrue(slow > 0 && fast > 0, slow + " and " + fast);
        assertEquals(files.size(), slow + fast);
    }

    /** The score at a stage is counted as at the written tempo: a word under every second 16th, a dot on demand. */
    @Test
    void theStagedScoresAreCountedAsWritten() throws Exception {
        String stage = Files.readString(practise().resolve("stage-1-all.musicxml"));
        assertEquals(16, stage.split("<lyric ", -1).length - 1);
        assertFalse(stage.contains("<text>\u00b7</text>"));
        String dotted = Files.readString(practise("--felt", "dot", "--force").resolve("stage-1-all.musicxml"));
        assertEquals(32, dotted.split("<lyric ", -1).length - 1);
        assertEquals(16, dotted.split("<text>\u00b7</text>", -1).length - 1);
    }

    /** Where every note is to be said the count is the same on every step, and the thinned stages take over. */
    @Test
    void everyNoteSaidIsOneCount() throws Exception {
        String text = Files.readString(practise("--felt", "no").resolve("practice.txt"));
        assertFalse(text.contains("count takes over"), text);
        assertTrue(text.contains("it is too fast to be said in full: half the grid is said"), text);
    }

    /** {@code annotate --felt dot}: a dot under each felt note; without it nothing; {@code no}: a word. */
    @Test
    void annotateWritesDotsOnDemand() throws Exception {
        Path score = Files.writeString(folder.resolve("fast.musicxml"),
                Snippets.in("4/4").tempo(152).bar(SIXTEENTHS).bar(SIXTEENTHS).xml());
        for (String felt : List.of("yes", "dot", "no")) {
            Path out = folder.resolve(felt + ".musicxml");
            assertEquals(0, Run.of("annotate", score.toString(), "--felt", felt, "-o", out.toString()).code());
            String text = Files.readString(out);
            assertEquals(felt.equals("yes") ? 16 : 32, text.split("<lyric ", -1).length - 1, felt);
            assertEquals(felt.equals("dot") ? 16 : 0, text.split("<text>\u00b7</text>", -1).length - 1, felt);
            Path back = folder.resolve("back.musicxml");
            assertEquals(0, Run.of("strip", out.toString(), "-o", back.toString(), "--force").code());
            assertEquals(Files.readString(score), Files.readString(back));
        }
    }

    /** At the same place the sextuplets of the first count are 8ths in the second, in which all can be said again. */
    @Test
    void aLaterCountIsNamedWhereItDiffers() {
        Run run = Run.of("practice", "scores/groove.musicxml", "--bars", "20-21");
        assertTrue(run.out().contains("half the grid is said; from ♩ = 85 on everything is said again, in count 2.\n"), run.out());
        assertTrue(run.out().contains(": Bar 21, beat 3: the sextuplets come right after the 16ths, ×3/2 faster."), run.out());
        assertTrue(run.out().contains(": Bar 21, beat 3: the 8ths come right after the 16ths, ×1/2, slower (count 2)."), run.out());
    }
}
