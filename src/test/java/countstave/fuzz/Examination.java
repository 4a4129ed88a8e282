package countstave.fuzz;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.ChartOptions;
import countstave.chart.ChartWriter;
import countstave.count.BarCounts;
import countstave.count.Count;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.count.Unplayed;
import countstave.json.JsonWriter;
import countstave.musicxml.Annotator;
import countstave.musicxml.CountPart;
import countstave.musicxml.OwnMarks;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.Splice;
import countstave.plain.Phrases;
import countstave.practice.PracticeOptions;
import countstave.practice.PracticePlan;
import countstave.score.ScoreException;
import countstave.score.Selection;
import countstave.spelling.CheckedFile;
import countstave.spelling.RuleSettings;
import countstave.spelling.SpellingCheck;
import countstave.spelling.rules.AllRules;
import countstave.testing.PublishedSchemas;
import countstave.text.FindingsWriter;
import countstave.text.TextOptions;
import countstave.text.TextWriter;
import countstave.time.Offset;
import countstave.time.TimeOverflowException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.StringWriter;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * Sends one file down every way that a file can take, and fails where an answer is neither a score that keeps the
 * invariants of an annotated score nor one clear line.
 */
final class Examination {

    /** How a file fared. */
    enum Result { COUNTED, REFUSED }

    private Examination() {
    }

    /**
     * @param pages whether it is also drawn and made into practice, which takes longer than all the rest
     * @throws AssertionError or whatever escapes, where the program is wrong
     */
    static Result of(byte[] bytes, boolean pages) throws IOException {
        ScoreFile file;
        CountedScore counted;
        try {
            file = ScoreFile.of("fuzzed.musicxml", bytes);
            counted = CountedScore.of(file, CountingOptions.defaults());
        } catch (ScoreException refused) {
            line(refused.getMessage());
            return Result.REFUSED;
        }
        counted.warnings().forEach(warning -> line(warning.line()));
        attacksAreCounted(counted);
        printed(counted);
        annotated(counted);
        checked(counted);
        if (pages) {
            pages(counted);
        }
        return Result.COUNTED;
    }

    /** Every attack has a count that is played, or is felt, and every count that is played has an attack. */
    private static void attacksAreCounted(CountedScore counted) {
        for (PartCounts part : counted.parts()) {
            for (BarCounts bar : part.bars()) {
                List<Offset> played = Stream.concat(
                        bar.segments().stream().flatMap(s -> s.counts().stream()).filter(Count::played).map(Count::at),
                        bar.plan().segments().stream().flatMap(s -> s.felt().stream())).sorted().toList();
                List<Offset> attacks = bar.timeline().attacks();
                check(played.equals(attacks), "counted and felt " + played + " but attacks " + attacks);
            }
        }
    }

    private static void printed(CountedScore counted) throws IOException {
        StringBuilder text = new StringBuilder();
        for (PartCounts part : counted.parts()) {
            new TextWriter(text, TextOptions.DEFAULT).part(part);
        }
        harmless(text);
        StringWriter json = new StringWriter();
        JsonWriter.write(counted.score().title(), counted.score().source(), counted.parts(), json);
        harmless(json.getBuffer());
        List<String> wrong = PublishedSchemas.strictly(json.toString());
        check(wrong.isEmpty(), "the JSON is not as its schema says: " + wrong);
    }

    /** Spliced in and taken out again it is the same text, and what is in between can be read and annotated again. */
    private static void annotated(CountedScore counted) throws IOException {
        ScoreFile file = counted.file();
        Splice splice = Annotator.annotate(file.text(), counted.parts(), Selection.ALL, Unplayed.NEEDED);
        String text = splice.toString();
        check(OwnMarks.strip(text).equals(file.text()), "strip does not give back what annotate was given");
        CountedScore again = CountedScore.of(file.withText(text), CountingOptions.defaults());
        check(Annotator.annotate(again.file().text(), again.parts(), Selection.ALL, Unplayed.NEEDED).toString()
                .equals(text),
                "annotating twice is not annotating once");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        file.write(splice, file.isCompressed(), out);
        ScoreFile read = ScoreFile.of(file.name(), out.toByteArray());
        check(Arrays.equals(read.bytes(), file.withText(text).bytes()), "what is written is not read back");
        String asPart;
        try {
            asPart = CountPart.annotate(file.text(), counted.score().parts(), counted.parts(), NoteNames.SYMBOLS).toString();
        } catch (ScoreException refused) {
            // a grid that note values cannot write
            line(refused.getMessage());
            return;
        }
        check(OwnMarks.strip(asPart).equals(file.text()), "strip leaves something of the count part");
        CountedScore.of(file.withText(asPart), CountingOptions.defaults());
    }

    private static void checked(CountedScore counted) throws IOException {
        CheckedFile file = new CheckedFile("fuzzed.musicxml",
                SpellingCheck.check(counted.score(), AllRules.list(), RuleSettings.DEFAULT), null);
        for (boolean all : new boolean[] {false, true}) {
            StringBuilder found = new StringBuilder();
            new FindingsWriter(found, all, Phrases.ENGLISH).file(file);
            harmless(found);
        }
    }

    private static void pages(CountedScore counted) throws IOException {
        ChartWriter.write(counted.parts(), counted.score(), ChartOptions.standard(), OutputStream.nullOutputStream())
                .forEach(Examination::line);
        for (PartCounts part : counted.parts()) {
            try {
                PracticePlan.of(part, PracticeOptions.DEFAULT);
            } catch (ScoreException refused) {
                line(refused.getMessage());
            } catch (TimeOverflowException refused) {
                // the command says so in a line of its own
                line(refused.getMessage());
            }
        }
    }

    private static void line(String message) {
        check(message != null && !message.isBlank(), "an empty message");
        check(message.length() < 1_000, "a message of " + message.length() + " characters");
        check(message.indexOf('\n') < 0, "a message of several lines");
        harmless(message);
    }

    /** Nothing in it is a command to a terminal. */
    private static void harmless(CharSequence text) {
        int bad = text.chars().filter(c -> c < ' ' && c != '\n' || c >= 0x7F && c <= 0x9F || c >= 0x202A && c <= 0x202E
                || c >= 0x2066 && c <= 0x2069).findFirst().orElse(-1);
        check(bad < 0, "character " + bad + " reaches the terminal");
    }

    private static void check(boolean holds, String what) {
        if (!holds) {
            throw new AssertionError(what);
        }
    }
}
