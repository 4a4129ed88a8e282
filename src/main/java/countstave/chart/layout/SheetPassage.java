package countstave.chart.layout;

import countstave.chart.ChartOptions;
import countstave.chart.engrave.BarEngraver;
import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Text;
import countstave.practice.Passage;
import countstave.practice.PassageNotes;
import countstave.practice.PassageWords;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.practice.StageWords;
import java.util.ArrayList;
import java.util.List;

/**
 * A passage on the sheet: why it is hard, its seams, and its notes, engraved once, with a row of words for each stage; the
 * tempo steps stand beside them. It is one block where that fits a page, else one a line.
 */
final class SheetPassage {

    static final double HEADING = 2.4;
    private static final double WORDS = 1.7;
    private static final double LINE_GAP = 1;
    private static final double COLUMN_GAP = 1.5;

    private final PracticePlan plan;
    private final Passage passage;
    private final PageFrame frame;
    private final Measures measures;
    private final ChartOptions options;
    private final BarEngraver engraver;

    SheetPassage(PracticePlan plan, Passage passage, PageFrame frame, Measures measures, ChartOptions options,
            BarEngraver engraver) {
        this.plan = plan;
        this.passage = passage;
        this.frame = frame;
        this.measures = measures;
        this.options = options;
        this.engraver = engraver;
    }

    /** @param room height of a page */
    List<SheetBlock> blocks(double room) {
        SheetBlock head = SheetBlock.under(head());
        List<SheetBlock> lines = music(room);
        SheetBlock ladder = SheetLadder.of(passage, measures, options.names());
        double left = frame.width() - SheetLadder.WIDTH;
        double all = lines.stream().mapToDouble(SheetBlock::height).sum();
        if (head.height() + Math.max(all, ladder.height()) <= room) {
            SheetBlock music = SheetBlock.under(lines);
            return List.of(SheetBlock.under(List.of(head, SheetBlock.beside(music, ladder, left))));
        }
        // as many lines as go on a page with the heading, beside the tempo steps; the others follow
        List<SheetBlock> first = new ArrayList<>();
        double used = head.height();
        int next = 0;
        while (next < lines.size() && (next == 0 || used + lines.get(next).height() <= room)) {
            used += lines.get(next).height();
            first.add(lines.get(next++));
        }
        List<SheetBlock> blocks = new ArrayList<>();
        blocks.add(SheetBlock.under(List.of(head, SheetBlock.beside(SheetBlock.under(first), ladder, left))));
        blocks.addAll(lines.subList(next, lines.size()));
        return blocks;
    }

    private List<SheetBlock> head() {
        List<SheetBlock> head = new ArrayList<>();
        head.add(words(heading(), HEADING, Text.Style.BOLD, Role.SHEET_HEADING));
        List<String> sentences = new ArrayList<>(PassageWords.of(passage, options.names()));
        sentences.addAll(PassageNotes.besideSteps(passage, plan.options().breath(), options.names()));
        if (!sentences.isEmpty()) {
            head.add(words(String.join(" ", sentences), WORDS, Text.Style.REGULAR, Role.SHEET_TEXT));
        }
        head.add(SheetSeams.of(passage, frame.width(), measures, options.phrases()));
        return head;
    }

    private String heading() {
        StringBuilder heading = new StringBuilder(passage.rank() + ".  "
                + options.phrases().text("bars", passage.stretch().size(), passage.stretch().numbers()));
        String separator = ", " + options.phrases().text("alike") + " ";
        for (Passage other : plan.alike(passage)) {
            heading.append(separator).append(other.stretch().numbers());
            separator = ", ";
        }
        return heading.append(",  ").append(options.names().tempo(passage.written())).toString();
    }

    private SheetBlock words(String text, double size, Text.Style style, Role role) {
        return SheetBlock.words(text, size, style, role, frame.width(), false, measures);
    }

    /** The lines of music, each with its rows, right of their labels. */
    private List<SheetBlock> music(double room) {
        StageRows rows = new StageRows(plan, passage, measures, options.names());
        List<MeasuredBar> bars = new BarMeasurer(engraver, measures, options, true).with(rows::of)
                .measure(StageWords.of(plan, passage.counts().get(0), Stage.ALL));
        double width = frame.width() - StageRows.LABEL_WIDTH - SheetLadder.WIDTH - COLUMN_GAP;
        return SheetBlock.lines(new SystemBuilder(measures, rows::add), bars, width, room, StageRows.LABEL_WIDTH, LINE_GAP);
    }
}
