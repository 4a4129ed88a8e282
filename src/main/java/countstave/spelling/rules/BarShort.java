package countstave.spelling.rules;

import countstave.score.BarStyle;
import countstave.score.Event;
import countstave.score.Fact;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.FactWords;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** {@code bar-short}. */
final class BarShort extends BarRule {

    BarShort() {
        super(new RuleInfo("bar-short", Severity.ERROR,
                "A bar, or its leading voice, or the only voice of a staff, ends before the time signature is filled.",
                "Whoever counts the bar out comes in late; whoever plays what is written comes in early.",
                "Add the notes or rests that are missing, or change the time signature.",
                "4/4 with three quarters in the middle of a piece",
                "a pickup; the two parts of a bar that a repeat sign splits; a last bar that leaves room for the pickup;"
                        + " a further voice that comes and goes",
                Sources.PRACTICE));
    }

    @Override
    void check(BarView bar, Findings findings) {
        boolean counted = !bar.bar().meter().isSenzaMisura() && !bar.bar().name().implicit()
                && bar.bar().look().style().kind() == BarStyle.Kind.NONE;
        if (counted && !MeterDisagrees.isBetween(bar, findings.part()) && !Closings.completesPickup(bar, findings.part())) {
            voices(bar, findings);
        }
    }

    private static void voices(BarView bar, Findings findings) {
        if (bar.has(Fact.Short.class)) {
            // where written values and durations contradict each other, that is the finding
            boolean sound = bar.bar().voices().stream().noneMatch(bar::hasDiffering);
            bar.bar().voices().stream().max(Comparator.comparing(Voice::filled)).filter(v -> sound)
                    .ifPresent(voice -> tell(bar, voice, findings));
            return;
        }
        if (bar.bar().voices().size() > 1 && bar.bar().length().equals(bar.meterLength())) {
            for (Voice voice : bar.bar().voices()) {
                if (isShort(voice, bar.meterLength()) && isLeading(bar, voice) && !bar.hasDiffering(voice)) {
                    tell(bar, voice, findings);
                }
            }
        }
    }

    private static boolean isShort(Voice voice, Duration room) {
        boolean fromTheStart = voice.events().stream().filter(e -> !e.isGrace()).findFirst()
                .map(e -> e.start().equals(Offset.ZERO)).orElse(false);
        boolean notes = voice.events().stream().anyMatch(Event::isNote);
        return notes && fromTheStart && voice.filled().isPositive() && voice.filled().isShorterThan(room);
    }

    /**
     * The leading voice of the part is written out in full; further voices may come and go. On a further staff a voice
     * must be full where nothing else fills the gap.
     */
    private static boolean isLeading(BarView bar, Voice voice) {
        List<Voice> voices = bar.bar().voices();
        if (voice == voices.get(0)) {
            return true;
        }
        Set<Integer> staves = staves(voice);
        return staves.size() == 1 && !staves(voices.get(0)).containsAll(staves)
                && voices.stream().allMatch(v -> v == voice || Collections.disjoint(staves(v), staves));
    }

    private static Set<Integer> staves(Voice voice) {
        return voice.events().stream().map(Event::staff).collect(Collectors.toSet());
    }

    private static void tell(BarView bar, Voice voice, Findings findings) {
        findings.add(bar, voice.name(), Offset.at(voice.filled()), FactWords.barShort(voice.filled(), bar.bar().meter()), null);
    }
}
