package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.BarCounts;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.count.Unplayed;
import countstave.practice.Passage;
import countstave.practice.PracticePlan;
import countstave.practice.Seam;
import countstave.practice.Stage;
import countstave.practice.StageWords;
import countstave.practice.StepCount;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What stands below the notes of a passage: the counts of the slowest step with their ticks and marks, and under them one
 * row of words for each further stage. Another count has rows of its own, on those lines alone where it differs.
 */
final class StageRows {

    static final double LABEL_WIDTH = 8.5;
    private static final double LABEL = 1.6;
    private static final double ROW_GAP = 0.6;
    /** From row to row. */
    private static final double PITCH = 2.1;

    /**
     * A row of words.
     *
     * @param label what it is, left of the line
     * @param words for each bar, by its index in the score
     * @param bars indexes of the bars for which it is drawn, with the others of their line
     */
    private record Row(String label, Map<Integer, List<ShownCount>> words, Set<Integer> bars) {

        List<ShownCount> of(PlacedBar bar) {
            return words.getOrDefault(bar.bar().bar().index(), List.of());
        }
    }

    private final Measures measures;
    private final NoteNames names;
    private final Passage passage;
    private final CountsBelow counts;
    private final List<Row> rows = new ArrayList<>();

    StageRows(PracticePlan plan, Passage passage, Measures measures, NoteNames names) {
        this.measures = measures;
        this.names = names;
        this.passage = passage;
        this.counts = new CountsBelow(measures, names, this::name);
        for (StepCount count : passage.counts()) {
            StepCount before = count.number() == 1 ? null : passage.counts().get(count.number() - 2);
            for (Stage stage : count.stages()) {
                boolean drawn = stage != Stage.NONE && (before == null ? stage != Stage.ALL : !count.saysTheSame(before, stage));
                if (drawn) {
                    rows.add(row(plan, count, stage, before));
                }
            }
        }
    }

    private Row row(PracticePlan plan, StepCount count, Stage stage, StepCount before) {
        Map<Integer, List<ShownCount>> words = words(plan, count, stage);
        if (before == null) {
            return new Row(stage.label(names.phrases()), words, words.keySet());
        }
        Map<Integer, List<ShownCount>> old = words(plan, before, stage);
        Map<Integer, List<ShownCount>> changed = new HashMap<>(words);
        changed.entrySet().removeIf(bar -> said(bar.getValue()).equals(said(old.getOrDefault(bar.getKey(), List.of()))));
        String from = count.from().perMinute().stripTrailingZeros().toPlainString() + "+";
        return new Row(from + (stage == Stage.ALL ? "" : " " + stage.label(names.phrases())), words, Set.copyOf(changed.keySet()));
    }

    /** Where what is said, whether or not one breathes there. */
    private static List<String> said(List<ShownCount> words) {
        return words.stream().filter(w -> !w.felt()).map(w -> w.at() + " " + w.say() + " " + w.played()).toList();
    }

    private static Map<Integer, List<ShownCount>> words(PracticePlan plan, StepCount count, Stage stage) {
        PartCounts part = StageWords.of(plan, count, stage);
        Map<Integer, List<ShownCount>> words = new HashMap<>();
        for (BarCounts bar : part.bars()) {
            words.put(bar.plan().timeline().bar().index(), PrintedCounts.of(bar, part.system(), Unplayed.ALL, true).stream()
                    .filter(shown -> stage == Stage.ALL || !shown.felt())
                    .map(shown -> stage.compareTo(Stage.HALF) < 0 ? shown : shown.alone()).toList());
        }
        return words;
    }

    private String name(int bar, Offset at) {
        return passage.seamMarks().stream().filter(m -> m.count() == 1 && m.bar() == bar && m.at().equals(at))
                .map(Seam.Mark::name).findFirst().orElse("");
    }

    /** The further rows of a bar, for the measuring of its width. */
    List<List<ShownCount>> of(int bar) {
        return rows.stream().map(row -> row.words().getOrDefault(bar, List.of())).toList();
    }

    /** Draws the counts and the rows of a line; a row that says what the one above it says is left out. */
    void add(List<PlacedBar> placed, Skyline skyline, List<Shape> shapes) {
        label(Stage.ALL.label(names.phrases()), counts.add(placed, skyline, shapes), shapes);
        double y = skyline.bottom() - ROW_GAP - measures.text().capHeight(Sizes.SYLLABLE, Text.Style.BOLD);
        List<String> above = placed.stream().flatMap(bar -> said(bar.bar().shown()).stream()).toList();
        for (Row row : rows) {
            List<String> here = placed.stream().flatMap(bar -> said(row.of(bar)).stream()).toList();
            boolean differs = placed.stream().anyMatch(bar -> row.bars().contains(bar.bar().bar().index()));
            if (!differs || here.equals(above)) {
                continue;
            }
            above = here;
            List<Shape> added = new ArrayList<>();
            for (PlacedBar bar : placed) {
                if (!bar.bar().isRun()) {
                    counts.syllables(bar, row.of(bar), y, added);
                }
            }
            skyline.put(added, shapes, measures);
            label(row.label(), y, shapes);
            y -= PITCH;
        }
    }

    private void label(String words, double y, List<Shape> shapes) {
        shapes.add(new Text(words, -1, y, LABEL, Text.Style.ITALIC, Text.Anchor.END, Role.SHEET_TEXT, null));
    }
}
