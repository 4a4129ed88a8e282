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
    private final NoteNames names;

    private PracticeText(PracticePlan plan, NoteNames names, Appendable out) {
        this.out = out;
        this.plan = plan;
        this.names = names;
    }

    /**
     * Writes one part's plan.
     *
     * @param title of the score
     * @param top how many passages are written out
     * @param days what is set for the plan of days, or null for none
     * @param names the language, and whether ♩, · and the like may be used, or words and ASCII only
     */
    public static void write(String title, PracticePlan plan, int top, DayOptions days, NoteNames names, Appendable out)
            throws IOException {
        new PracticeText(plan, names, out).write(title, top, days);
    }

    private void write(String title, int top, DayOptions days) throws IOException {
        line(SafeText.of(title) + " - " + SafeText.of(plan.counts().part().name()));
        line(phrase("plan.limits", names.phrases().decimal(plan.options().voiceLimit()), names.phrases().decimal(plan.options().breath())));
        if (plan.counts().timeline().tempoAssumed()) {
            line(phrase("plan.no-tempo", names.tempo(Tempo.ASSUMED)));
        }
        line(whole());
        line(phrase("plan.hardest"));
        line(phrase("plan.signs", felt(), Breath.SIGN));
        String atSight = DayWords.atSight(plan, names.phrases());
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
                line(phrase("plan.more", passages.size() - i));
                break;
            }
            passage(passage);
            written += passage.sameAs() == 0 ? 1 : 0;
        }
        line("");
        for (String caution : Cautions.in(names.phrases())) {
            line(caution);
        }
    }

    private void passage(Passage passage) throws IOException {
        Stretch stretch = passage.stretch();
        line("");
        line(passage.rank() + ". " + phrase("plan.passage", phrase("bars", stretch.size(), numbers(stretch)),
                names.tempo(passage.written()), names.phrases().decimal(passage.figures().difficulty(), 1)));
        if (passage.sameAs() > 0) {
            line("   " + phrase("plan.same", String.valueOf(passage.sameAs())));
            return;
        }
        for (String sentence : PassageWords.speed(passage, names)) {
            line("   " + safe(sentence));
        }
        line("   " + phrase("plan.steps", ladder(passage)));
        for (String note : PassageNotes.of(passage, plan.options().breath(), names)) {
            line("   " + plain(note));
        }
        for (Seam seam : passage.seams()) {
            line("   " + phrase("plan.seam", seam.name(), seam.loops().size(), names.tempo(seam.count().from()),
                    safe(SeamWords.of(seam, names))) + also(seam));
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
        return seam.also().isEmpty() ? ""
                : SafeText.of(" " + phrase("plan.also", seam.also().size(), String.join(", ", seam.also())));
    }

    /** How to work on a passage. */
    private void work() throws IOException {
        line("");
        line(phrase("plan.work", Arrays.stream(Seam.Size.values()).map(size -> size.title(names.phrases()))
                .collect(Collectors.joining(phrase("work.then")))));
        List<WorkStep> steps = WorkStep.of(plan);
        for (int i = 0; i < steps.size(); i++) {
            line("   " + (i + 1) + ". " + steps.get(i).line(names.phrases()));
        }
    }

    private void days(DayPlan days) throws IOException {
        line("");
        line(phrase("days", String.valueOf(days.options().days())));
        for (String rule : DayWords.rules(days, names.phrases())) {
            line("   " + plain(rule));
        }
        for (DayPlan.Day day : days.days()) {
            List<String> groups = new ArrayList<>();
            for (DayPlan.Kind kind : DayPlan.Kind.values()) {
                List<String> items = day.items().stream().filter(i -> i.kind() == kind).map(DayPlan.Item::name).toList();
                if (!items.isEmpty()) {
                    groups.add((DayWords.group(day, kind, names.phrases()) + ": " + String.join(" ", items)).replaceAll(": $", ""));
                }
            }
            line("   " + DayWords.day(day, names.phrases()) + ": "
                    + (day.isRest() ? DayWords.rest(names.phrases()) : String.join("; ", groups)));
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
            line("   " + stage.label(names.phrases()) + ": " + stage.title(names.phrases()));
            List<String> bars = stage == Stage.NONE ? List.of() : bars(count, stage);
            for (int bar = 0; bar < bars.size(); bar++) {
                String number = SafeText.of(count.stretch().timeline(bar).bar().called());
                line("      " + " ".repeat(width - number.length()) + number + " | " + bars.get(bar));
            }
        }
        if (left) {
            line("      " + phrase("plan.other-stages", String.valueOf(index)));
        }
    }

    private String whole() {
        Figures figures = plan.whole();
        Tempo tempo = Stretch.of(plan.counts()).tempo();
        String sayable = names.tempo(new Tempo(tempo.unit(), BigDecimal.valueOf(figures.sayable())));
        String key = figures.sayable() == 0 ? "plan.whole.never" : figures.isTooFastToSay() ? "plan.whole.too-fast" : "plan.whole";
        return phrase(key, figures.changes(), figures.bars(), names.phrases().decimal(figures.peak().toDouble(), 1), sayable);
    }

    private String phrase(String key, Object... places) {
        return names.phrase(key, places);
    }

    private String safe(String words) {
        return SafeText.of(words);
    }

    /** Without signs that a plain terminal does not have. */
    private String plain(String words) {
        return SafeText.of(names.symbols() ? words : words.replace('\u2013', '-'));
    }

    private String ladder(Passage passage) {
        StringBuilder ladder = new StringBuilder();
        for (StepTurn turn : StepTurn.of(passage, names.phrases())) {
            ladder.append(turn.words().isEmpty() ? "" : " " + turn.words() + ":").append(ladder.isEmpty() ? "" : " ")
                    .append(turn.rung().tempo().perMinute().stripTrailingZeros().toPlainString())
                    .append(" (").append(turn.rung().clean()).append(")");
        }
        return passage.counts().size() > 1 ? ladder.toString()
                : ladder + "; " + PassageWords.sayable(passage, passage.atWritten(), names);
    }

    private String numbers(Stretch stretch) {
        return SafeText.of(names.symbols() ? stretch.numbers() : stretch.numbers().replace('\u2013', '-'));
    }

    private String felt() {
        return names.symbols() ? "\u00b7" : ".";
    }

    /** The words of each bar at a stage, in the order of time; felt notes are never among those that are said. */
    private List<String> bars(StepCount count, Stage stage) {
        List<TreeMap<Offset, String>> bars = new ArrayList<>();
        for (BarCounts bar : count.stretch().bars()) {
            TreeMap<Offset, String> words = new TreeMap<>();
            bar.plan().segments().forEach(segment -> segment.felt().forEach(at -> words.put(at, felt())));
            bars.add(words);
        }
        for (Thinning.Thinned thinned : Thinning.of(count.stretch(), stage)) {
            Count here = thinned.count();
            boolean breath = count.breaths().stream().anyMatch(m -> m.bar() == thinned.bar() && m.at().equals(here.at()));
            String word = here.played() ? here.say() : "(" + here.say() + ")";
            bars.get(thinned.bar()).put(here.at(), !thinned.said() ? felt() : (breath ? Breath.SIGN : "") + word);
        }
        return bars.stream().map(words -> String.join(" ", words.values())).toList();
    }

    private void line(String text) throws IOException {
        out.append(text).append('\n');
    }
}
