package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code --blank}, with and without a word behind it, and what it needs. */
class WorksheetOptionTest {

    private static final String SCORE = "scores/groove.musicxml";

    @TempDir
    Path folder;

    private String text(String... words) throws IOException {
        Path out = folder.resolve("sheet.pdf");
        List<String> all = new java.util.ArrayList<>(List.of("annotate"));
        all.addAll(List.of(words));
        all.addAll(List.of("-o", out.toString(), "--force"));
        Run run = Run.of(all.toArray(String[]::new));
        assertEquals(0, run.code(), run.err());
        try (PDDocument document = Loader.loadPDF(out.toFile())) {
            return new PDFTextStripper().getText(document);
        }
    }

    @Test
    void theScoreMayStandBehindIt() throws IOException {
        String whole = text("--blank", SCORE);
        assertTrue(whole.contains(": worksheet") && whole.contains(": answers"), whole);
        assertEquals(whole, text(SCORE, "--blank"));
        assertEquals(whole, text(SCORE, "--blank", "counts"));
        assertEquals(whole, text(SCORE, "--blank=counts"));
    }

    @Test
    void theWordChangesWhatIsLeftOut() throws IOException {
        String sheet = text("--blank", "changes", SCORE, "--no-answers");
        assertTrue(sheet.contains(": worksheet") && !sheet.contains(": answers"), sheet);
        assertTrue(sheet.contains("&"), "the counts are there");
        String blank = text("--blank", SCORE, "--no-answers");
        assertTrue(!blank.lines().filter(l -> !l.startsWith("Numbers")).anyMatch(l -> l.contains("&")), blank);
        assertTrue(text(SCORE, "--with-key").contains(": how it is counted"));
    }

    private void refused(String message, String... words) {
        Run run = Run.of(words);
        assertEquals(2, run.code());
        assertTrue(run.err().contains(message), run.err());
    }

    @Test
    void whatItCannotDoIsSaid() {
        String out = folder.resolve("x.pdf").toString();
        refused("'chnges' is neither counts nor changes", "annotate", SCORE, "--blank", "chnges", "-o", out);
        refused("--no-answers is for worksheets: add --blank", "annotate", SCORE, "--no-answers", "-o", out);
        refused("--blank is for the chart: end the output in .pdf or .svg", "annotate", SCORE, "--blank", "-o", folder.resolve("x.musicxml").toString());
        refused("--bars-of-rest is for the chart", "annotate", SCORE, "--bars-of-rest", "keep", "-o", folder.resolve("x.musicxml").toString());
    }
}
