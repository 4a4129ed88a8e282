package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.chart.SheetReader.Run;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.Count;
import countstave.plain.Phrases;
import countstave.practice.Cautions;
import countstave.practice.DayOptions;
import countstave.practice.DayPlan;
import countstave.practice.DayWords;
import countstave.practice.Passage;
import countstave.practice.Plans;
import countstave.practice.PracticePlan;
import countstave.practice.Seam;
import countstave.practice.Stage;
import countstave.practice.StepCount;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The practice sheet, as laid out and as read back with PDFBox, held against the plan. */
class SheetPdfTest {

    private static final ChartOptions OPTIONS = ChartOptions.standard().withSizes(15, ChartOptions.SHEET_STAFF_MM);
    private static final double POINTS = OPTIONS.spaceMm() * 72 / 25.4;
    private static final int TOP = 10;
    private static final Pattern HEADING = Pattern.compile("([0-9]+)\\. +Bars? ([^, ]+).*");

    /** The sheets with the usual options, each planned, laid out, drawn and read back once. */
    private static final Map<String, Sheet> SHEETS = new ConcurrentHashMap<>();

    private record Sheet(CountedScore counted, List<PracticePlan> plans, Chart chart, byte[] pdf, List<Run> runs) {
    }

    private static Sheet sheet(String score) {
        return SHEETS.computeIfAbsent(score, name -> {
            try {
                CountedScore counted = Plans.counted(name);
                List<PracticePlan> plans = Plans.of(counted);
                byte[] pdf = pdf(counted, plans);
                return new Sheet(counted, plans, SheetWriter.layout(plans, counted.score(), TOP, DayOptions.DEFAULT, OPTIONS), pdf,
                        List.copyOf(SheetReader.read(pdf)));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    private static byte[] pdf(CountedScore counted, List<PracticePlan> plans) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        SheetWriter.write(plans, counted.score(), TOP, DayOptions.DEFAULT, OPTIONS, out);
        return out.toByteArray();
    }

    private static List<Passage> passages(PracticePlan plan) {
        return plan.different().stream().limit(TOP).toList();
    }

    /** A row of words below a line of music. */
    private record Row(String label, List<Text> words) {
    }

    /** A passage as it is drawn: its lines of music with their rows, each line beginning with the row "all". */
    private record Drawn(int part, int rank, String bars, int page, List<List<Row>> lines, List<Integer> pages) {
    }

    private static List<Drawn> drawn(Chart sheet) {
        List<Drawn> passages = new ArrayList<>();
        int part = 0;
        List<Text> words = new ArrayList<>();
        for (int page = 0; page < sheet.pages().size(); page++) {
            for (Shape shape : sheet.pages().get(page).shapes()) {
                if (!(shape instanceof Text text)) {
                    continue;
                }
                Matcher heading = HEADING.matcher(text.string());
                if (text.role() == Role.SHEET_HEADING && text.string().startsWith("Order of work")) {
                    part++;
                } else if (text.role() == Role.SHEET_HEADING && heading.matches()) {
                    passages.add(new Drawn(part, Integer.parseInt(heading.group(1)), heading.group(2), page, new ArrayList<>(),
                            new ArrayList<>()));
                } else if (text.role() == Role.SYLLABLE_PLAYED || text.role() == Role.SYLLABLE_UNPLAYED) {
                    words.add(text);
                } else if (text.role() == Role.SHEET_TEXT && text.anchor() == Text.Anchor.END) {
                    Drawn passage = passages.get(passages.size() - 1);
                    if (text.string().equals("all")) {
                        passage.lines().add(new ArrayList<>());
                        passage.pages().add(page);
                    }
                    passage.lines().get(passage.lines().size() - 1).add(new Row(text.string(), List.copyOf(words)));
                    words.clear();
                }
            }
        }
        return passages;
    }

    private static List<String> said(StepCount count, Stage stage) {
        return Plans.said(count, stage).stream().map(w -> w.replace("^", "")).toList();
    }

    private static List<String> strings(List<Text> words) {
        return words.stream().map(Text::string).toList();
    }

    /** Every stage of every passage: what is said, in order; a row that is left out is said as the one above it. */
    @ParameterizedTest
    @ValueSource(strings = {"dense", "polyrhythms", "groove", "song", "meters"})
    void eachStageShowsWhatIsSaid(String score) {
        List<PracticePlan> plans = sheet(score).plans();
        int compared = 0;
        for (Drawn drawn : drawn(sheet(score).chart())) {
            Passage passage = passages(plans.get(drawn.part() - 1)).stream().filter(p -> p.rank() == drawn.rank()).findFirst()
                    .orElseThrow();
            StepCount first = passage.counts().get(0);
            for (Stage stage : Stage.values()) {
                List<String> shown = new ArrayList<>();
                for (List<Row> line : drawn.lines()) {
                    Row row = line.get(0);
                    for (Row other : line) {
                        boolean upTo = Stream.of(Stage.values()).anyMatch(s -> s.compareTo(stage) <= 0
                                && s.label(Phrases.ENGLISH).equals(other.label()));
                        row = upTo ? other : row;
                    }
                    shown.addAll(strings(row.words()));
                }
                if (stage != Stage.NONE) {
                    assertEquals(said(first, stage), shown, score + " " + drawn.bars() + " " + stage);
                    compared += shown.size();
                }
            }
            for (StepCount count : passage.counts().subList(1, passage.counts().size())) {
                later(count, passage.counts().get(count.number() - 2), drawn);
            }
        }
        assertTrue(compared > 100, "only " + compared);
    }

    /** The rows of a later count: what the plan of its tempo says, on the lines where it differs. */
    private static void later(StepCount count, StepCount before, Drawn drawn) {
        String from = count.from().perMinute().stripTrailingZeros().toPlainString() + "+";
        int rows = 0;
        for (List<Row> line : drawn.lines()) {
            for (Row row : line) {
                if (row.label().startsWith(from)) {
                    Stage stage = Stream.of(Stage.values()).filter(s -> row.label().equals(from + " " + s.label(Phrases.ENGLISH))).findFirst()
                            .orElse(Stage.ALL);
                    assertTrue(Collections.indexOfSubList(said(count, stage), strings(row.words())) >= 0, row.toString());
                    rows++;
                }
            }
        }
        assertEquals(!said(count, Stage.ALL).equals(said(before, Stage.ALL)), rows > 0, drawn.bars() + " " + from);
    }

    /** Bold are the counts that are played; the breath signs stand where the plan has them. */
    @ParameterizedTest
    @ValueSource(strings = {"dense", "meters"})
    void boldIsPlayedAndSignsAreBreaths(String score) {
        List<PracticePlan> plans = sheet(score).plans();
        Chart chart = sheet(score).chart();
        for (Drawn drawn : drawn(chart)) {
            Passage passage = passages(plans.get(drawn.part() - 1)).stream().filter(p -> p.rank() == drawn.rank()).findFirst()
                    .orElseThrow();
            List<Count> counts = passage.counts().get(0).stretch().bars().stream().flatMap(b -> b.segments().stream())
                    .flatMap(s -> s.counts().stream()).toList();
            List<Text> words = drawn.lines().stream().flatMap(line -> line.get(0).words().stream()).toList();
            assertEquals(counts.stream().map(c -> c.say() + c.played()).toList(),
                    words.stream().map(w -> w.string() + (w.style() == Text.Style.BOLD)).toList());
        }
        long signs = chart.pages().stream().flatMap(p -> p.shapes().stream()).filter(s -> s.role() == Role.BREATH).count();
        assertEquals(plans.stream().flatMap(p -> passages(p).stream()).mapToInt(p -> p.counts().get(0).breaths().size()).sum(),
                signs);
    }

    /** Each passage once, whole on one page where it fits one; each bar of it engraved once. */
    @ParameterizedTest
    @ValueSource(strings = {"dense", "polyrhythms", "groove", "song", "meters"})
    void onePassageOnePage(String score) {
        List<PracticePlan> plans = sheet(score).plans();
        List<Drawn> drawn = drawn(sheet(score).chart());
        List<String> headings = drawn.stream().map(d -> d.part() + " " + d.rank() + " " + d.bars()).sorted().toList();
        List<String> planned = new ArrayList<>();
        for (int part = 0; part < plans.size(); part++) {
            for (Passage passage : passages(plans.get(part))) {
                planned.add(part + 1 + " " + passage.rank() + " " + passage.stretch().numbers());
            }
        }
        assertEquals(planned.stream().sorted().toList(), headings);
        for (Drawn passage : drawn) {
            assertEquals(List.of(passage.page()), passage.pages().stream().distinct().toList(), passage.bars());
        }
    }

    /** The whole dense part, with its plan of days, on six pages at most. */
    @Test
    void theDensePartTakesSixPages() {
        int pages = sheet("dense").chart().pages().size();
        assertTrue(pages <= 6, pages + " pages");
    }

    /** Each tempo stands once, in order, followed on its row by a box for each clean repeat; each seam by one for each piece. */
    @ParameterizedTest
    @ValueSource(strings = {"dense", "meters", "groove"})
    void everyTempoAndEverySeamHasItsBoxes(String score) {
        Map<String, Integer> boxes = new LinkedHashMap<>();
        String heading = "";
        String row = "";
        int part = 0;
        for (Chart.Page page : sheet(score).chart().pages()) {
            for (Shape shape : page.shapes()) {
                if (shape instanceof Text text) {
                    Matcher passage = HEADING.matcher(text.string());
                    part += text.string().startsWith("Order of work") ? 1 : 0;
                    // the tempo in a heading is a text of its own, behind its note
                    boolean head = text.role() == Role.SHEET_HEADING && !text.string().contains("=");
                    heading = head ? passage.matches() ? passage.group(1) : "" : heading;
                    row = text.role() == Role.SHEET_TEXT && !heading.isEmpty()
                            ? part + "/" + heading + "/" + text.string().replaceAll(".*= *", "").replaceAll(" .*", "") : row;
                } else if (shape.role() == Role.TICK_BOX && !heading.isEmpty()) {
                    boxes.merge(row, 1, Integer::sum);
                }
            }
        }
        Map<String, Integer> expected = new LinkedHashMap<>();
        List<PracticePlan> plans = sheet(score).plans();
        for (int i = 0; i < plans.size(); i++) {
            for (Passage passage : passages(plans.get(i))) {
                String prefix = i + 1 + "/" + passage.rank() + "/";
                passage.seams().forEach(seam -> expected.put(prefix + seam.name(), 4 * seam.loops().size()));
                passage.ladder().forEach(rung -> expected.put(
                        prefix + rung.tempo().perMinute().stripTrailingZeros().toPlainString(), 4 * rung.clean()));
            }
        }
        assertEquals(new TreeMap<>(expected), new TreeMap<>(boxes));
    }

    /** Where a seam of the first count is, its letter stands before the words of the mark. */
    @Test
    void seamsAreNamedInTheMusic() {
        String score = "dense";
        List<String> marks = sheet(score).chart().pages().stream().flatMap(p -> p.shapes().stream())
                .filter(s -> s.role() == Role.CHANGE_WORDS).map(s -> s instanceof Text t ? t.string() : "").toList();
        for (Passage passage : passages(sheet(score).plans().get(0))) {
            for (Seam seam : passage.seams()) {
                if (seam.count().number() == 1) {
                    String letter = seam.name().replaceAll("[0-9]", "");
                    assertTrue(marks.stream().anyMatch(m -> m.startsWith(letter + ") ")), seam.name());
                }
            }
        }
    }

    /** The days stand on the first page of a part, each once, with a box for each thing to do. */
    @Test
    void theDaysStandOnTheFirstPage() {
        String score = "dense";
        DayPlan plan = DayPlan.of(sheet(score).plans().get(0), TOP, DayOptions.DEFAULT);
        List<Text> texts = sheet(score).chart().pages().get(0).shapes().stream().filter(Text.class::isInstance).map(Text.class::cast)
                .toList();
        for (DayPlan.Day day : plan.days()) {
            assertEquals(1, texts.stream().filter(t -> t.string().equals("Day " + day.number())).count());
        }
        assertTrue(texts.stream().anyMatch(t -> t.string().equals(DayWords.rest(Phrases.ENGLISH))));
        for (PracticePlan each : List.of(sheet(score).plans().get(0))) {
            for (Passage passage : passages(each)) {
                passage.seams().forEach(seam -> assertTrue(texts.stream().anyMatch(t -> t.string().equals(seam.name()))));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"dense", "song", "meters"})
    void nothingIsOutsideThePage(String score) throws IOException {
        double margin = OPTIONS.marginMm() * 72 / 25.4 - 8 * POINTS / 10;
        for (Run run : sheet(score).runs()) {
            assertTrue(run.x() > margin - 0.1 && run.right() < OPTIONS.pageWidthMm() * 72 / 25.4 - margin + 0.1, run::toString);
            assertTrue(run.y() > margin && run.y() < OPTIONS.pageHeightMm() * 72 / 25.4 - margin, run::toString);
        }
        double width = OPTIONS.pageWidthMm() / OPTIONS.spaceMm();
        double height = OPTIONS.pageHeightMm() / OPTIONS.spaceMm();
        for (Chart.Page page : sheet(score).chart().pages()) {
            for (Shape shape : page.shapes()) {
                if (shape instanceof Line line) {
                    assertTrue(Math.min(line.x1(), line.x2()) > 0 && Math.max(line.x1(), line.x2()) < width, line::toString);
                    assertTrue(Math.min(line.y1(), line.y2()) > 0 && Math.max(line.y1(), line.y2()) < height, line::toString);
                }
            }
        }
    }

    /** No word of the counts runs into another, into its label or a breath sign. */
    @ParameterizedTest
    @ValueSource(strings = {"dense", "polyrhythms", "groove", "meters", "song"})
    void wordsDoNotMeet(String score) throws IOException {
        List<Run> words = sheet(score).runs().stream().filter(r -> isSyllable(r)
                || r.text().matches("[·^]|all|played|half|beats|strong|[0-9]+[+].*")).toList();
        assertTrue(words.size() > 200);
        for (int i = 0; i < words.size(); i++) {
            for (int j = i + 1; j < words.size(); j++) {
                Run a = words.get(i);
                Run b = words.get(j);
                boolean sameRow = a.page() == b.page() && Math.abs(a.y() - b.y()) < 0.5;
                assertTrue(!sameRow || a.right() <= b.x() + 0.01 || b.right() <= a.x() + 0.01, () -> a + " meets " + b);
            }
        }
    }

    private static boolean isSyllable(Run run) {
        return Math.abs(run.size() - 2.0 * POINTS) < 0.02 && !run.text().matches("[()]");
    }

    @Test
    void cautionsStandOnTheFirstPageOfEachPart() throws IOException {
        String score = "song";
        Chart chart = sheet(score).chart();
        try (PDDocument document = Loader.loadPDF(sheet(score).pdf())) {
            assertEquals(2, chart.bookmarks().size());
            for (Chart.Bookmark part : chart.bookmarks()) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(part.page() + 1);
                stripper.setEndPage(part.page() + 1);
                String text = stripper.getText(document).replaceAll("\\s+", " ");
                for (String caution : Cautions.in(Phrases.ENGLISH)) {
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
        String score = "meters";
        Chart chart = sheet(score).chart();
        List<Run> runs = sheet(score).runs();
        for (Chart.Bookmark part : chart.bookmarks()) {
            assertTrue(part.inner().size() > 1);
            for (Chart.Bookmark passage : part.inner()) {
                String onPage = runs.stream().filter(r -> r.page() == passage.page() + 1)
                        .map(Run::text).collect(Collectors.joining(" ")).replaceAll("\\s+", " ");
                String numbers = passage.text().replace("Bars ", "");
                assertTrue(onPage.matches(".*[0-9]+\\. Bars? " + numbers + ".*"), passage + ": " + onPage);
            }
        }
    }

    /** In any format a page never ends with a heading. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void headingsStayWithWhatTheyHead(boolean large) throws IOException {
        for (String score : List.of("groove", "dense", "song", "polyrhythms")) {
            CountedScore counted = sheet(score).counted();
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            SheetWriter.write(sheet(score).plans(), counted.score(), TOP, DayOptions.DEFAULT, OPTIONS.withLarge(large), out);
            Map<Integer, Run> lowest = new LinkedHashMap<>();
            for (Run run : SheetReader.read(out.toByteArray())) {
                if (!run.text().isBlank() && run.y() < OPTIONS.pageHeightMm() * 72 / 25.4 * 0.9) {
                    lowest.merge(run.page(), run, (a, b) -> a.y() > b.y() ? a : b);
                }
            }
            for (Run last : lowest.values()) {
                assertFalse(last.text().matches("[0-9]+\\. +Bars? .*|Seams:|14 days|Order of work.*"), score + ": " + last);
            }
        }
    }

    @Test
    void theSamePlanGivesTheSameBytes() throws IOException {
        CountedScore counted = Plans.counted("polyrhythms");
        assertArrayEquals(sheet("polyrhythms").pdf(), pdf(counted, Plans.of(counted)));
    }
}
