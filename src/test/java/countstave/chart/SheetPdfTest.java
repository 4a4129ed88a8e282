package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.chart.SheetReader.Run;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.practice.Cautions;
import countstave.practice.Passage;
import countstave.practice.Plans;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.practice.StepCount;
import countstave.practice.TempoLadder;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The practice sheet, read back with PDFBox and held against the plan. */
class SheetPdfTest {

    private static final ChartOptions OPTIONS = ChartOptions.standard();
    private static final double POINTS = OPTIONS.spaceMm() * 72 / 25.4;
    private static final int TOP = 6;

    /** The sheets with the usual options, each drawn and read back once. */
    private static final Map<String, Drawn> DRAWN = new ConcurrentHashMap<>();

    private record Drawn(CountedScore counted, byte[] pdf, List<Run> runs) {
    }

    private static Drawn drawn(String score) {
        return DRAWN.computeIfAbsent(score, name -> {
            try {
                CountedScore counted = Plans.counted(name);
                byte[] pdf = pdf(counted);
                return new Drawn(counted, pdf, List.copyOf(SheetReader.read(pdf)));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    private static byte[] pdf(CountedScore counted) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        SheetWriter.write(Plans.of(counted), counted.score(), TOP, OPTIONS, out);
        return out.toByteArray();
    }

    private static List<Passage> passages(PracticePlan plan) {
        return plan.different().stream().limit(TOP).toList();
    }

    /** What stands between the headings of the stages: a list of drawn texts for each stage of each count of each passage. */
    private static Map<String, List<Run>> byStage(List<Run> runs) {
        Map<String, List<Run>> stages = new LinkedHashMap<>();
        String heading = "";
        String key = "";
        int part = 0;
        String count = "1";
        for (Run run : runs) {
            String number = run.text().split("\\.", -1)[0];
            if (Math.abs(run.size() - 2.6 * POINTS) < 0.05 && run.bold() && number.matches("[0-9]+")) {
                part += number.equals("1") ? 1 : 0;
                heading = part + "/" + number;
                key = heading;
                count = "1";
            } else if (run.bold() && run.text().matches("Count [0-9]+, (up to|from) .*")) {
                count = run.text().replaceAll("Count ([0-9]+),.*", "$1");
                key = heading + "/" + count;
            } else if (run.bold() && run.text().startsWith("Stage ")) {
                key = heading + "/" + count + "/" + run.text().charAt("Stage ".length());
            }
            stages.computeIfAbsent(key, k -> new ArrayList<>()).add(run);
        }
        return stages;
    }

    /** Every stage of every passage: what is said, in order, bold where it is played, the breath signs where the plan has them. */
    @ParameterizedTest
    @ValueSource(strings = {"dense", "polyrhythms", "groove", "song", "meters"})
    void eachStageShowsWhatIsSaid(String score) throws IOException {
        CountedScore counted = drawn(score).counted();
        Map<String, List<Run>> stages = byStage(drawn(score).runs());
        List<PracticePlan> plans = Plans.of(counted);
        int compared = 0;
        for (int part = 0; part < plans.size(); part++) {
            for (Passage passage : passages(plans.get(part))) {
                for (StepCount count : passage.counts()) {
                    compared += compare(count, part + 1 + "/" + passage.rank() + "/" + count.number() + "/", stages,
                            count.number() == 1 ? null : passage.counts().get(count.number() - 2));
                }
            }
        }
        assertTrue(compared > 100, "only " + compared);
    }

    /** @param before the count before it: stages at which the same is said are not drawn again */
    private static int compare(StepCount count, String prefix, Map<String, List<Run>> stages, StepCount before) {
        int compared = 0;
        for (Stage stage : Stage.values()) {
            String key = prefix + (stage.ordinal() + 1);
            List<Run> drawn = stages.get(key);
            if (before != null && count.saysTheSame(before, stage)) {
                assertNull(drawn, key);
                continue;
            }
            assertNotNull(drawn, key + " is missing");
            assertEquals(Plans.said(count, stage).stream().filter(s -> !s.startsWith("^")).sorted().toList(),
                    syllables(drawn, false), key);
            assertEquals(Plans.said(count, stage).stream().filter(s -> s.startsWith("^")).map(s -> s.substring(1)).sorted()
                    .toList(), syllables(drawn, true), key);
            compared += drawn.size();
        }
        return compared;
    }

    /**
     * The words of a stage, sorted, either those with a breath sign just before their tick or those without. They are
     * told by their size and by their own beginning; a sign belongs to the word whose middle is nearest to its right.
     */
    private static List<String> syllables(List<Run> drawn, boolean breathing) {
        List<Run> words = drawn.stream().filter(SheetPdfTest::isSyllable).toList();
        List<Run> signs = drawn.stream().filter(r -> r.text().equals("^")).toList();
        List<Run> breathed = new ArrayList<>();
        for (Run sign : signs) {
            breathed.add(words.stream().filter(w -> w.page() == sign.page() && w.y() > sign.y() && w.y() < sign.y() + 3 * POINTS)
                    .min(Comparator.comparingDouble(w -> Math.abs((w.x() + w.right()) / 2 - sign.right())))
                    .orElseThrow(() -> new AssertionError("a sign without a word: " + sign)));
        }
        assertEquals(signs.size(), breathed.stream().distinct().count());
        return words.stream().filter(w -> breathed.contains(w) == breathing).map(Run::text).sorted().toList();
    }

    private static boolean isSyllable(Run run) {
        return Math.abs(run.size() - 2.0 * POINTS) < 0.02 && !run.text().matches("[()·]");
    }

    /** In reading order the words of the first stage are the plan's counts; bold are those that are played. */
    @Test
    void countsStandInPlayingOrder() throws IOException {
        CountedScore counted = drawn("dense").counted();
        Map<String, List<Run>> stages = byStage(drawn("dense").runs());
        for (Passage passage : passages(Plans.of(counted).get(0))) {
            List<Run> words = stages.get("1/" + passage.rank() + "/1/1").stream().filter(SheetPdfTest::isSyllable).toList();
            List<countstave.count.Count> counts = passage.counts().get(0).stretch().bars().stream()
                    .flatMap(b -> b.segments().stream())
                    .flatMap(s -> s.counts().stream()).toList();
            assertEquals(counts.stream().map(c -> c.say() + c.played()).toList(),
                    words.stream().map(w -> w.text() + w.bold()).toList());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"dense", "song"})
    void passagesStandInOrderOfDifficulty(String score) throws IOException {
        CountedScore counted = drawn(score).counted();
        List<String> headings = drawn(score).runs().stream()
                .filter(r -> Math.abs(r.size() - 2.6 * POINTS) < 0.05).map(r -> r.text().replaceAll("\\s+", " ")
                        .replaceAll(", and.*", "")).filter(t -> t.matches("[0-9]+\\. Bars? .*")).toList();
        List<String> planned = new ArrayList<>();
        for (PracticePlan plan : Plans.of(counted)) {
            double before = Double.MAX_VALUE;
            for (Passage passage : passages(plan)) {
                assertTrue(passage.figures().difficulty() <= before);
                before = passage.figures().difficulty();
                planned.add(passage.rank() + ". " + (passage.stretch().size() == 1 ? "Bar " : "Bars ")
                        + passage.stretch().numbers());
            }
        }
        assertEquals(planned, headings);
    }

    /** Each tempo stands once, in order, followed on its row by a box for each clean repeat. */
    @ParameterizedTest
    @ValueSource(strings = {"dense", "meters"})
    void everyTempoHasItsBoxes(String score) throws IOException {
        CountedScore counted = drawn(score).counted();
        List<PracticePlan> plans = Plans.of(counted);
        Chart sheet = SheetWriter.layout(plans, counted.score(), TOP, OPTIONS);
        List<Integer> drawn = new ArrayList<>();
        List<String> tempi = new ArrayList<>();
        int lines = 0;
        for (Chart.Page page : sheet.pages()) {
            for (Shape shape : page.shapes()) {
                if (shape.role() == Role.TICK_BOX) {
                    lines++;
                } else if (shape instanceof Text text && shape.role() == Role.SHEET_TEXT && text.size() == 2.0
                        && text.style() == Text.Style.BOLD) {
                    finish(drawn, lines);
                    lines = 0;
                    String number = text.string().replaceAll(".*[=: ]", "");
                    if (!number.isEmpty()) {
                        tempi.add(number);
                        drawn.add(0);
                    }
                }
            }
        }
        finish(drawn, lines);
        List<TempoLadder.Rung> rungs = plans.stream().flatMap(p -> passages(p).stream())
                .flatMap(p -> p.ladder().stream()).toList();
        assertEquals(rungs.stream().map(r -> r.tempo().perMinute().stripTrailingZeros().toPlainString()).toList(), tempi);
        assertEquals(rungs.stream().map(TempoLadder.Rung::clean).toList(), drawn);
    }

    /** A box has four sides. */
    private static void finish(List<Integer> boxes, int lines) {
        assertEquals(0, lines % 4);
        if (lines > 0) {
            boxes.set(boxes.size() - 1, lines / 4);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"dense", "song", "meters"})
    void nothingIsOutsideThePage(String score) throws IOException {
        CountedScore counted = drawn(score).counted();
        double margin = OPTIONS.marginMm() * 72 / 25.4 - 8 * POINTS / 10;
        for (Run run : drawn(score).runs()) {
            assertTrue(run.x() > margin - 0.1 && run.right() < OPTIONS.pageWidthMm() * 72 / 25.4 - margin + 0.1, run::toString);
            assertTrue(run.y() > margin && run.y() < OPTIONS.pageHeightMm() * 72 / 25.4 - margin, run::toString);
        }
        double width = OPTIONS.pageWidthMm() / OPTIONS.spaceMm();
        double height = OPTIONS.pageHeightMm() / OPTIONS.spaceMm();
        for (Chart.Page page : SheetWriter.layout(Plans.of(counted), counted.score(), TOP, OPTIONS).pages()) {
            for (Shape shape : page.shapes()) {
                if (shape instanceof Line line) {
                    assertTrue(Math.min(line.x1(), line.x2()) > 0 && Math.max(line.x1(), line.x2()) < width, line::toString);
                    assertTrue(Math.min(line.y1(), line.y2()) > 0 && Math.max(line.y1(), line.y2()) < height, line::toString);
                }
            }
        }
    }

    /** No word of the counts runs into another, and no breath sign into anything that is written. */
    @ParameterizedTest
    @ValueSource(strings = {"dense", "polyrhythms", "meters", "song"})
    void wordsDoNotMeet(String score) throws IOException {
        List<Run> runs = drawn(score).runs();
        List<Run> words = runs.stream().filter(r -> isSyllable(r) || r.text().matches("[·^]")).toList();
        for (int i = 0; i < words.size(); i++) {
            for (int j = i + 1; j < words.size(); j++) {
                Run a = words.get(i);
                Run b = words.get(j);
                boolean sameRow = a.page() == b.page() && Math.abs(a.y() - b.y()) < 0.5;
                assertTrue(!sameRow || a.right() <= b.x() + 0.01 || b.right() <= a.x() + 0.01, () -> a + " meets " + b);
            }
        }
    }

    @Test
    void cautionsStandOnTheFirstPageOfEachPart() throws IOException {
        CountedScore counted = drawn("song").counted();
        Chart sheet = SheetWriter.layout(Plans.of(counted), counted.score(), TOP, OPTIONS);
        try (PDDocument document = Loader.loadPDF(drawn("song").pdf())) {
            assertEquals(2, sheet.bookmarks().size());
            for (Chart.Bookmark part : sheet.bookmarks()) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(part.page() + 1);
                stripper.setEndPage(part.page() + 1);
                String text = stripper.getText(document).replaceAll("\\s+", " ");
                for (String caution : Cautions.ALL) {
                    assertTrue(text.contains(caution), text);
                }
                assertTrue(text.contains("A box is ticked for a repeat without a mistake"), text);
                assertTrue(text.contains(part.text() + ": practice plan"), text);
            }
        }
    }

    /** Bookmarks lead to the page on which the heading of their passage stands. */
    @Test
    void bookmarksLeadToThePassages() throws IOException {
        CountedScore counted = drawn("meters").counted();
        Chart sheet = SheetWriter.layout(Plans.of(counted), counted.score(), TOP, OPTIONS);
        List<Run> runs = drawn("meters").runs();
        for (Chart.Bookmark part : sheet.bookmarks()) {
            assertTrue(part.inner().size() > 1);
            for (Chart.Bookmark passage : part.inner()) {
                String onPage = runs.stream().filter(r -> r.page() == passage.page() + 1)
                        .map(Run::text).collect(Collectors.joining(" ")).replaceAll("\\s+", " ");
                String numbers = passage.text().replace("Bars ", "");
                assertTrue(onPage.matches(".*[0-9]+\\. Bars? " + numbers + ".*"), passage + ": " + onPage);
            }
        }
    }

    /** In any format: a page never ends with a heading, and the stage without music never stands alone on its page. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void headingsStayWithWhatTheyHead(boolean large) throws IOException {
        for (String score : List.of("groove", "dense", "song", "polyrhythms")) {
            CountedScore counted = drawn(score).counted();
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            SheetWriter.write(Plans.of(counted), counted.score(), TOP, OPTIONS.withLarge(large), out);
            Map<Integer, Run> lowest = new LinkedHashMap<>();
            for (Run run : SheetReader.read(out.toByteArray())) {
                if (!run.text().isBlank() && run.y() < OPTIONS.pageHeightMm() * 72 / 25.4 * 0.9) {
                    lowest.merge(run.page(), run, (a, b) -> a.y() > b.y() ? a : b);
                }
            }
            for (Run last : lowest.values()) {
                assertTrue(!last.text().matches("Stage [1-4]: .*|[0-9]+\\. +Bars? .*"), score + ": " + last);
                boolean alone = last.text().startsWith("Stage 5") && last.y() < OPTIONS.pageHeightMm() * 72 / 25.4 * 0.15;
                assertTrue(!alone, score + ": " + last);
            }
        }
    }

    @Test
    void theSamePlanGivesTheSameBytes() throws IOException {
        assertArrayEquals(drawn("polyrhythms").pdf(), pdf(Plans.counted("polyrhythms")));
    }
}
