package countstave.spelling.rules;

import countstave.score.BarStyle;
import countstave.score.Event;
import countstave.score.Remark;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.LengthWords;
import countstave.spelling.PartView;
import countstave.spelling.Rule;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.Comparator;

/** {@code bar-short}. */
final class BarShort implements Rule {

    private static final RuleInfo INFO = new RuleInfo("bar-short", Severity.ERROR,
            "A bar, or its leading voice, ends before the time signature is filled.",
            "Whoever counts the bar out comes in late; whoever plays what is written comes in early.",
            "4/4 with three quarters in the middle of a piece",
            "a pickup; the two parts of a bar that a repeat sign splits; a last bar that leaves room for the pickup",
            Sources.PRACTICE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(PartView part, Findings findings) {
        for (BarView bar : part.bars()) {
            boolean counted = !bar.bar().meter().isSenzaMisura() && !bar.bar().implicit()
                    && bar.bar().style().kind() == BarStyle.Kind.NONE;
            if (counted && !MeterDisagrees.isBetween(bar, part) && !Closings.completesPickup(bar, part)) {
                check(bar, findings);
            }
        }
    }

    private static void check(BarView bar, Findings findings) {
        if (bar.has(Remark.Kind.SHORT)) {
            bar.bar().voices().stream().max(Comparator.comparing(Voice::filled))
                    .ifPresent(voice -> tell(bar, voice, bar.meterLength(), findings));
            return;
        }
        // the leading voice is written out in full; further voices may come and go
        if (bar.bar().voices().size() > 1 && bar.bar().length().equals(bar.meterLength())) {
            Voice leading = bar.bar().voices().get(0);
            if (isShort(leading, bar.meterLength())) {
                tell(bar, leading, bar.meterLength(), findings);
            }
        }
    }

    private static boolean isShort(Voice voice, Duration room) {
        boolean fromTheStart = voice.events().stream().filter(e -> !e.isGrace()).findFirst()
                .map(e -> e.start().equals(Offset.ZERO)).orElse(false);
        boolean notes = voice.events().stream().anyMatch(Event::isNote);
        return notes && fromTheStart && voice.filled().isPositive() && voice.filled().isShorterThan(room);
    }

    private static void tell(BarView bar, Voice voice, Duration room, Findings findings) {
        Duration filled = voice.filled();
        String holds = filled.isPositive() ? "the voice holds " + LengthWords.of(filled) : "the voice is empty";
        findings.add(bar, voice.name(), Offset.at(filled), "The bar is short by " + LengthWords.of(room.minus(filled))
                + ": " + holds + ", " + bar.bar().meter() + " asks for " + LengthWords.of(room) + ".", null);
    }
}
