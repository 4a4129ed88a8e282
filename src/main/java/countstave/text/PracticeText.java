package countstave.text;

import countstave.count.BarCounts;
import countstave.count.Count;
import countstave.count.NoteNames;
import countstave.plain.SafeText;
import countstave.practice.Breath;
import countstave.practice.Cautions;
import countstave.practice.DayOptions;
import countstave.practice.DayPlan;
import countstave.practice.DayWords;
import countstave.practice.Figures;
import countstave.practice.Passage;
import countstave.practice.PassageNotes;
import countstave.practice.PassageWords;
import countstave.practice.PracticePlan;
import countstave.practice.Seam;
import countstave.practice.SeamWords;
import countstave.practice.Stage;
import countstave.practice.StepCount;
import countstave.practice.StepTurn;
import countstave.practice.Stretch;
import countstave.practice.Thinning;
import countstave.practice.WorkStep;
import countstave.score.Tempo;
import countstave.time.Offset;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * A practice plan as plain text: the passages in order of difficulty, each with its figures, tempo steps, and its counts
 * at every stage; where the count changes with the tempo, of each count those stages that differ.
 *
 * <p>A count that is said but not played stands in parentheses, what is felt, count or note, is a dot in the middle of the
 * line, {@value Breath#SIGN} before a count that is said means: breathe first.
 */
public final class PracticeText {

    private final Appendable out;
    private final PracticePlan plan;
    private final boolean symbols;
    private final NoteNames names;

    private PracticeText(PracticePlan plan, boolean symbols, Appendable out) {
        this.out = out;
        this.plan = plan;
        this.symbols = symbols;
        this.names = symbols ? NoteNames.SYMBOLS : NoteNames.WORDS;
    }

    /**
     * Writes one part's plan.
     *
     * @param title of the score
     * @param top how many passages are written out
     * @param days what is set for the plan of days, or null for none
     * @param symbols whether ♩, · and the like may be used, or words and ASCII only
     */
    public static void write(String title, PracticePlan plan, int top, DayOptions days, boolean symbols, Appendable out)
            throws IOException {
        new PracticeText(plan, symbols, out).write(title, top, days);
    }

    private void write(String title, int top, DayOptions days) throws IOException {
        line(SafeText.of(title) + " - " + SafeText.of(plan.counts().part().name()));
        line("Voice limit " + plan.options().voiceLimit().toPlainString()
                + " syllables a second (yours: --voice-limit; how to find it: --my-limit). A breath at most every "
                + plan.options().breath().toPlainString() + " s.");
        if (plan.counts().timeline().tempoAssumed()) {
            line("The score gives no tempo: " + names.tempo(Tempo.ASSUMED) + " is assumed.");
        }
        line("Whole part: " + whole());
        line("The hardest passage comes first; its difficulty is a heuristic, explained in docs/practice.md.");
        line("( ) said, not played   " + felt(symbols) + " felt   " + Breath.SIGN + " breathe before this count");
        String atSight = DayWords.atSight(plan);
        if (!atSight.isEmpty()) {
            line(plain(atSight));
        }
        work();
        if (days != null) {
            days(DayPlan.of(plan, top, days));
        }
        int written = 0;
        List<Passage> passages = plan.passages().stream().filter(p -> !plan.isLeft(p)).toList();
        for (int i = 0; i < passages.size(); i++) {
            Passage passage = passages.get(i);
            if (written == top) {
                line("");
                line("... and " + (passages.size() - i) + " easier passages; --top shows more.");
                break;
            }
            passage(passage);
            written += passage.sameAs() == 0 ? 1 : 0;
        }
        line("");
        for (String caution : Cautions.ALL) {
            line(caution);
        }
    }

    private void passage(Passage passage) throws IOException {
        Stretch stretch = passage.stretch();
        line("");
        line(passage.rank() + ". " + (stretch.size() == 1 ? "Bar " : "Bars ") + numbers(stretch) + ", "
                + names.tempo(passage.written()) + ", difficulty " + places(passage.figures().difficulty(), 1));
        if (passage.sameAs() > 0) {
            line("   Counted and played like passage " + passage.sameAs() + ".");
            return;
        }
        for (String sentence : PassageWords.speed(passage, names)) {
            line("   " + safe(sentence));
        }
        line("   Tempo steps (clean repeats): " + ladder(passage));
        for (String note : PassageNotes.of(passage, plan.options().breath(), names)) {
            line("   " + SafeText.of(note));
        }
        for (Seam seam : passage.seams()) {
            line("   Seam " + seam.name() + ", " + seam.loops().size() + " loops at " + names.tempo(seam.count().from()) + ": "
                    + safe(SeamWords.of(seam, names)) + also(seam));
        }
        int width = 0;
        for (int bar = 0; bar < stretch.size(); bar++) {
            width = Math.max(width, stretch.timeline(bar).bar().called().length());
        }
        for (StepCount count : passage.counts()) {
            count(passage, count, width);
        }
    }

    private String also(Seam seam) {
        return seam.also().isEmpty() ? "" : SafeText.of(" Also in bar" + (seam.also().size() == 1 ? " " : "s ")
                + String.join(", ", seam.also()) + ".");
    }

    /** How to work on a passage. */
    private void work() throws IOException {
        line("");
        line("Order of work on a passage: first its seams, each looped: "
                + Arrays.stream(Seam.Size.values()).map(Seam.Size::title).collect(Collectors.joining("; then ")) + ". Then:");
        List<WorkStep> steps = WorkStep.of(plan);
        for (int i = 0; i < steps.size(); i++) {
            line("   " + (i + 1) + ". " + steps.get(i).line());
        }
    }

    private void days(DayPlan days) throws IOException {
        line("");
        line(days.options().days() + " days");
        for (String rule : DayWords.rules(days)) {
            line("   " + plain(rule));
        }
        for (DayPlan.Day day : days.days()) {
            List<String> groups = new ArrayList<>();
            for (DayPlan.Kind kind : DayPlan.Kind.values()) {
                List<String> items = day.items().stream().filter(i -> i.kind() == kind).map(DayPlan.Item::name).toList();
                if (!items.isEmpty()) {
                    groups.add((DayWords.group(day, kind) + ": " + String.join(" ", items)).replaceAll(": $", ""));
                }
            }
            line("   " + DayWords.day(day) + ": " + (day.isRest() ? DayWords.REST : String.join("; ", groups)));
        }
    }

    /** The stages of a count; of a further one only those at which something else is said. */
    private void count(Passage passage, StepCount count, int width) throws IOException {
        int index = count.number() - 1;
        if (passage.counts().size() > 1) {
            line("   " + count.title(names) + " (" + PassageWords.sayable(passage, count, names) + "):");
        }
        boolean left = false;
        for (Stage stage : Stage.values()) {
            if (index > 0 && count.saysTheSame(passage.counts().get(index - 1), stage)) {
                left = true;
                continue;
            }
            if (!count.stages().contains(stage)) {
                continue;
            }
            line("   " + stage.label() + ": " + stage.title());
            List<String> bars = stage == Stage.NONE ? List.of() : bars(count, stage, symbols);
            for (int bar = 0; bar < bars.size(); bar++) {
                String number = SafeText.of(count.stretch().timeline(bar).bar().called());
                line("      " + " ".repeat(width - number.length()) + number + " | " + bars.get(bar));
            }
        }
        if (left) {
            line("      the other stages as with count " + index);
        }
    }

    private String whole() {
        Figures figures = plan.whole();
        Tempo tempo = Stretch.of(plan.counts()).tempo();
        return figures.changes() + (figures.changes() == 1 ? " change" : " changes") + " in " + figures.bars()
                + (figures.bars() == 1 ? " bar" : " bars") + "; its fastest second asks for "
                + places(figures.peak().toDouble(), 1) + " words; " + (figures.sayable() == 0
                ? "too many to be said at any tempo" : "all of it can be said up to "
                        + names.tempo(new Tempo(tempo.unit(), BigDecimal.valueOf(figures.sayable())))
                        + (figures.isTooFastToSay() ? ", less than written" : "")) + ".";
    }

    private String safe(String words) {
        return SafeText.of(words);
    }

    /** Without signs that a plain terminal does not have. */
    private String plain(String words) {
        return SafeText.of(symbols ? words : words.replace('\u2013', '-'));
    }

    private String ladder(Passage passage) {
        StringBuilder ladder = new StringBuilder();
        for (StepTurn turn : StepTurn.of(passage)) {
            ladder.append(turn.words().isEmpty() ? "" : " " + turn.words() + ":").append(ladder.isEmpty() ? "" : " ")
                    .append(turn.rung().tempo().perMinute().stripTrailingZeros().toPlainString())
                    .append(" (").append(turn.rung().clean()).append(")");
        }
        return passage.counts().size() > 1 ? ladder.toString()
                : ladder + "; " + PassageWords.sayable(passage, passage.atWritten(), names);
    }

    private String numbers(Stretch stretch) {
        return SafeText.of(symbols ? stretch.numbers() : stretch.numbers().replace('\u2013', '-'));
    }

    private static String felt(boolean symbols) {
        return symbols ? "\u00b7" : ".";
    }

    /** The words of each bar at a stage, in the order of time; felt notes are never among those that are said. */
    private static List<String> bars(StepCount count, Stage stage, boolean symbols) {
        List<TreeMap<Offset, String>> bars = new ArrayList<>();
        for (BarCounts bar : count.stretch().bars()) {
            TreeMap<Offset, String> words = new TreeMap<>();
            bar.plan().segments().forEach(segment -> segment.felt().forEach(at -> words.put(at, felt(symbols))));
            bars.add(words);
        }
        for (Thinning.Thinned thinned : Thinning.of(count.stretch(), stage)) {
            Count here = thinned.count();
            boolean breath = count.breaths().stream().anyMatch(m -> m.bar() == thinned.bar() && m.at().equals(here.at()));
            String word = here.played() ? here.say() : "(" + here.say() + ")";
            bars.get(thinned.bar()).put(here.at(), !thinned.said() ? felt(symbols) : (breath ? Breath.SIGN : "") + word);
        }
        return bars.stream().map(words -> String.join(" ", words.values())).toList();
    }

    private static String places(double value, int places) {
        return String.format(Locale.ROOT, "%." + places + "f", value);
    }

    private void line(String text) throws IOException {
        out.append(text).append('\n');
    }
}
