package countstave.spelling.rules;

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

/** {@code bar-overfull}. */
final class BarOverfull extends BarRule {

    BarOverfull() {
        super(new RuleInfo("bar-overfull", Severity.ERROR,
                "A voice lasts longer than the time signature has room for.",
                "The player runs past the barline and comes in late in the next bar.",
                "Take out what is too much, or change the time signature.",
                "4/4 with five quarters", "4/4 with four quarters, the last of which is tied over the barline",
                Sources.PRACTICE));
    }

    @Override
    void check(BarView bar, Findings findings) {
        for (Fact.VoiceOverfull fact : bar.facts(Fact.VoiceOverfull.class)) {
            Voice voice = bar.voice(fact.place().voice());
            if (!isWrittenToFit(bar, voice, fact.room()) && !MeterDisagrees.isBetween(bar, findings.part())) {
                findings.add(bar, voice.name(), crossing(voice, Offset.at(fact.room())), FactWords.barOverfull(fact), null);
            }
        }
    }

    /** Where the note begins that does not end in time. */
    private static Offset crossing(Voice voice, Offset end) {
        return BarView.timed(voice).stream().filter(e -> e.end().isAfter(end)).map(Event::start).findFirst().orElse(end);
    }

    /** Whether only durations that are not those of the written values make it too long: another rule's business. */
    private static boolean isWrittenToFit(BarView bar, Voice voice, Duration room) {
        Duration written = BarView.timed(voice).stream()
                .map(e -> e.written() == null || e.barRest() ? e.length() : e.written().length())
                .reduce(Duration.ZERO, Duration::plus);
        return bar.hasDiffering(voice) && (bar.has(Fact.LocalMeter.class) || !written.isLongerThan(room));
    }
}
