package countstave.text;

import countstave.count.Count;
import countstave.count.NoteNames;
import countstave.practice.Breath;
import countstave.practice.Cautions;
import countstave.practice.Figures;
import countstave.practice.Passage;
import countstave.practice.PassageNotes;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.practice.TempoLadder;
import countstave.practice.Thinning;
import countstave.score.Tempo;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A practice plan as plain text: the passages in order of difficulty, each with its figures, tempo steps, and its counts
 * at every stage.
 *
 * <p>A count that is said but not played stands in parentheses, a felt one is a dot in the middle of the line,
 * {@value Breath#SIGN} before a count that is said means: breathe first.
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
     * @param symbols whether ♩, · and the like may be used, or words and ASCII only
     */
    public static void write(String title, PracticePlan plan, int top, boolean symbols, Appendable out) throws IOException {
        new PracticeText(plan, symbols, out).write(title, top);
    }

    private void write(String title, int top) throws IOException {
        line(SafeText.of(title) + " - " + SafeText.of(plan.counts().plan().timeline().part().name()));
        line("Voice limit " + plan.options().voiceLimit().toPlainString()
                + " syllables a second (yours: --voice-limit; how to find it: --my-limit). A breath at most every "
                + plan.options().breath().toPlainString() + " s.");
        if (plan.counts().plan().timeline().tempoAssumed()) {
            line("The score gives no tempo: " + names.tempo(Tempo.ASSUMED) + " is assumed.");
        }
        line("Whole part: " + figures(plan.whole(), Stretch.of(plan.counts()).tempo()));
        line("Difficulty is a heuristic: changes a bar + 3 x fastest second / voice limit + rarity + distance / 2.");
        line("( ) said, not played   " + felt(symbols) + " felt   " + Breath.SIGN + " breathe before this count");
        int written = 0;
        for (Passage passage : plan.passages()) {
            if (written == top) {
                line("");
                line("... and " + (plan.passages().size() - passage.rank() + 1) + " easier passages; --top shows more.");
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
        line("   " + figures(passage.figures(), passage.written()));
        line("   Tempo steps (clean repeats): " + ladder(passage));
        for (String note : PassageNotes.of(passage, plan.options().breath(), names)) {
            line("   " + SafeText.of(note));
        }
        int width = 0;
        for (int bar = 0; bar < stretch.size(); bar++) {
            width = Math.max(width, stretch.timeline(bar).bar().number().length());
        }
        for (Stage stage : Stage.values()) {
            line("   " + (stage.ordinal() + 1) + ") " + stage.title());
            List<String> bars = stage == Stage.NONE ? List.of() : bars(passage, stage, symbols);
            for (int bar = 0; bar < bars.size(); bar++) {
                String number = SafeText.of(stretch.timeline(bar).bar().number());
                line("      " + " ".repeat(width - number.length()) + number + " | " + bars.get(bar));
            }
        }
    }

    private String figures(Figures figures, Tempo tempo) {
        String sayable = figures.sayable() == 0 ? "too many counts to be said at any tempo"
                : "can be said up to "
                        + names.tempo(new Tempo(tempo.unit(), BigDecimal.valueOf(figures.sayable())))
                        + (figures.isTooFastToSay() ? ", less than written" : "");
        return "changes a bar " + places(figures.changesPerBar(), 1) + ", fastest second "
                + places(figures.peak().toDouble(), 1) + " syllables, fastest count "
                + places(figures.fastest().toDouble(), 1) + " /s, rarity " + figures.rarity() + " of 4, distance "
                + places(figures.distance(), 1) + "; " + sayable;
    }

    private String ladder(Passage passage) {
        StringBuilder ladder = new StringBuilder();
        Stage said = Stage.ALL;
        for (TempoLadder.Rung rung : passage.ladder()) {
            Stage stage = passage.sayableStage(rung);
            ladder.append(stage == said ? "" : " stage " + (stage.ordinal() + 1) + ":").append(ladder.isEmpty() ? "" : " ")
                    .append(rung.tempo().perMinute().stripTrailingZeros().toPlainString())
                    .append(" (").append(rung.clean()).append(")");
            said = stage;
        }
        return ladder.toString();
    }

    private String numbers(Stretch stretch) {
        return SafeText.of(symbols ? stretch.numbers() : stretch.numbers().replace('\u2013', '-'));
    }

    private static String felt(boolean symbols) {
        return symbols ? "\u00b7" : ".";
    }

    /** The counts of each bar at a stage. */
    public static List<String> bars(Passage passage, Stage stage, boolean symbols) {
        List<StringBuilder> bars = new ArrayList<>();
        for (int bar = 0; bar < passage.stretch().size(); bar++) {
            bars.add(new StringBuilder());
        }
        for (Thinning.Thinned thinned : Thinning.of(passage.stretch(), stage)) {
            StringBuilder bar = bars.get(thinned.bar());
            Count count = thinned.count();
            boolean breath = passage.breaths().stream()
                    .anyMatch(m -> m.bar() == thinned.bar() && m.at().equals(count.at()));
            bar.append(bar.isEmpty() ? "" : " ").append(breath && thinned.said() ? Breath.SIGN : "")
                    .append(!thinned.said() ? felt(symbols) : count.played() ? count.say() : "(" + count.say() + ")");
        }
        return bars.stream().map(StringBuilder::toString).toList();
    }

    private static String places(double value, int places) {
        return String.format(Locale.ROOT, "%." + places + "f", value);
    }

    private void line(String text) throws IOException {
        out.append(text).append('\n');
    }
}
