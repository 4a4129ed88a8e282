package countstave.chart.layout;

import countstave.chart.ChartOptions;
import countstave.chart.engrave.BarEngraver;
import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Text;
import countstave.plain.Phrases;
import countstave.practice.Breath;
import countstave.practice.Cautions;
import countstave.practice.DayOptions;
import countstave.practice.DayPlan;
import countstave.practice.DayWords;
import countstave.practice.Passage;
import countstave.practice.PracticePlan;
import countstave.practice.Seam;
import countstave.practice.StepCount;
import countstave.practice.WorkStep;
import countstave.score.Score;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Lays a practice plan out on pages: how to work and the plan of days first, then the passages, the hardest first, each
 * on one page where it fits.
 */
public final class SheetLayout {

    private static final double HEADING = SheetPassage.HEADING;
    private static final double WORDS = 1.7;
    private static final double CAUTION = 1.5;
    private static final double GAP = 1.2;
    private static final double PASSAGE_GAP = 2.5;

    private final BarEngraver engraver;
    private final Measures measures = Measures.standard();
    private final ChartOptions options;
    private final Phrases phrases;
    private final DayOptions days;
    private final PageList pages = new PageList();

    /** @param days what is set for the plan of days, or null for none */
    public SheetLayout(BarEngraver engraver, ChartOptions options, DayOptions days) {
        this.engraver = engraver;
        this.options = options;
        this.phrases = options.phrases();
        this.days = days;
    }

    /**
     * @param plans one for each part, each from a new page
     * @param top how many passages a part are written out
     */
    public Chart layout(List<PracticePlan> plans, Score score, int top) {
        List<Chart.Bookmark> bookmarks = new ArrayList<>();
        for (PracticePlan plan : plans) {
            bookmarks.add(part(plan, score, top));
        }
        Letters letters = new Letters(measures);
        List<Chart.Page> framed = pages.framed(letters);
        return new Chart(new Chart.About(phrases.text("practice.title", score.title()), score.composer(), phrases.text("practice.subject"),
                options.phrases().code()), new Chart.Paper(options.spaceMm(), options.pageWidthMm(), options.pageHeightMm()),
                framed, bookmarks, letters.notes());
    }

    private Chart.Bookmark part(PracticePlan plan, Score score, int top) {
        String name = plan.counts().part().name();
        String spoken = plan.counts().key(phrases);
        String felt = hasFelt(plan, top) ? phrases.text("sheet.key.felt") + " " : "";
        PageFrame frame = new PageFrame(options, measures, score.title(), score.composer(), phrases.text("sheet.heading", name),
                (spoken.isEmpty() ? "" : spoken + ". ") + phrases.text("sheet.key", felt, Breath.SIGN));
        SheetPages sheet = new SheetPages(frame);
        List<Passage> passages = plan.worked(top);
        opening(plan, top, frame, sheet);
        List<Chart.Bookmark> marks = passages(plan, passages, frame, sheet);
        int firstPage = pages.size();
        pages.addAll(sheet.finished(), frame);
        return new Chart.Bookmark(name, firstPage, frame.top, marks);
    }

    /** A passage and its blocks. */
    private record Blocks(Passage passage, List<SheetBlock> blocks) {

        boolean fits(double room) {
            return blocks.size() == 1 && PASSAGE_GAP + blocks.get(0).height() <= room;
        }
    }

    /** The hardest first; where the next one does not fit what is left of a page, the hardest that does. */
    private List<Chart.Bookmark> passages(PracticePlan plan, List<Passage> passages, PageFrame frame, SheetPages sheet) {
        double room = frame.musicTop(false) - frame.musicBottom();
        List<Blocks> left = new ArrayList<>();
        for (Passage passage : passages) {
            left.add(new Blocks(passage, new SheetPassage(plan, passage, frame, measures, options, engraver).blocks(room)));
        }
        List<Chart.Bookmark> marks = new ArrayList<>();
        while (!left.isEmpty()) {
            Blocks next = left.stream().filter(b -> b.fits(sheet.room())).findFirst().orElse(left.get(0));
            left.remove(next);
            sheet.add(SheetBlock.gap(PASSAGE_GAP));
            sheet.heading(next.blocks().get(0));
            next.blocks().subList(1, next.blocks().size()).forEach(sheet::add);
            marks.add(new Chart.Bookmark(phrases.text("bars", 2, next.passage().stretch().numbers()), pages.size() + sheet.lastHeading(),
                    sheet.lastHeadingTop(), List.of()));
        }
        return marks;
    }

    private static boolean hasFelt(PracticePlan plan, int top) {
        return plan.worked(top).stream().anyMatch(p -> p.counts().stream().anyMatch(StepCount::hasFelt));
    }

    /** How to work, with care, and the plan of days. */
    private void opening(PracticePlan plan, int top, PageFrame frame, SheetPages sheet) {
        for (String caution : Cautions.in(phrases)) {
            sheet.add(words(caution, CAUTION, Text.Style.ITALIC, frame));
        }
        sheet.add(SheetBlock.gap(GAP));
        heading(phrases.text("work.heading"), frame, sheet);
        String pieces = Arrays.stream(Seam.Size.values()).map(size -> size.title(phrases))
                .collect(Collectors.joining(phrases.text("work.then")));
        sheet.add(words(phrases.text("work.seams", pieces), WORDS, Text.Style.REGULAR, frame));
        List<WorkStep> steps = WorkStep.of(plan);
        for (int i = 0; i < steps.size(); i++) {
            sheet.add(words(i + 1 + ". " + steps.get(i).line(phrases), WORDS, Text.Style.REGULAR, frame));
        }
        sheet.add(words(phrases.text("work.boxes"), WORDS, Text.Style.REGULAR, frame));
        String atSight = DayWords.atSight(plan, phrases);
        if (!atSight.isEmpty()) {
            sheet.add(words(atSight, WORDS, Text.Style.REGULAR, frame));
        }
        if (days != null) {
            DayPlan dayPlan = DayPlan.of(plan, top, days);
            sheet.add(SheetBlock.gap(GAP));
            heading(phrases.text("days", String.valueOf(days.days())), frame, sheet);
            DayWords.rules(dayPlan, phrases).forEach(rule -> sheet.add(words(rule, WORDS, Text.Style.REGULAR, frame)));
            sheet.add(SheetBlock.gap(GAP / 2));
            SheetDays.of(dayPlan, frame.width(), measures, phrases).forEach(sheet::add);
        }
    }

    private void heading(String text, PageFrame frame, SheetPages sheet) {
        sheet.add(SheetBlock.words(text, HEADING, Text.Style.BOLD, Role.SHEET_HEADING, frame.width(), true, measures));
    }

    private SheetBlock words(String text, double size, Text.Style style, PageFrame frame) {
        return SheetBlock.words(text, size, style, Role.SHEET_TEXT, frame.width(), false, measures);
    }
}
