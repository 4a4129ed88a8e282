package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Remark;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.LengthWords;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Duration;
import countstave.time.Offset;

/** {@code bar-overfull}. */
final class BarOverfull extends VoiceRule {

    BarOverfull() {
        super(new RuleInfo("bar-overfull", Severity.ERROR,
                "A voice lasts longer than the time signature has room for.",
                "The player runs past the barline and comes in late in the next bar.",
                "4/4 with five quarters", "4/4 with four quarters, the last of which is tied over the barline",
                Sources.PRACTICE));
    }

    @Override
    void check(BarView bar, Voice voice, Findings findings) {
        Duration room = bar.meterLength().minus(bar.bar().phase());
        Duration filled = voice.filled();
        if (bar.bar().meter().isSenzaMisura() || !filled.isLongerThan(room) || BarView.isBarRest(voice)
                || isWrittenToFit(bar, voice, room) || MeterDisagrees.isBetween(bar, findings.part())) {
            return;
        }
        Offset end = Offset.at(room);
        Offset crossing = BarView.timed(voice).stream().filter(e -> e.end().isAfter(end)).map(Event::start)
                .findFirst().orElse(end);
        findings.add(bar, voice.name(), crossing, "The bar is over-full by " + LengthWords.of(filled.minus(room))
                + ": the voice holds " + LengthWords.of(filled) + ", " + bar.bar().meter() + " has room for "
                + LengthWords.of(room) + ".", null);
    }

    /** Whether only durations that are not those of the written values make it too long: another rule's business. */
    private static boolean isWrittenToFit(BarView bar, Voice voice, Duration room) {
        Duration written = BarView.timed(voice).stream()
                .map(e -> e.written() == null || e.barRest() ? e.length() : e.written().length())
                .reduce(Duration.ZERO, Duration::plus);
        return BarView.hasDiffering(voice) && (bar.has(Remark.Kind.LOCAL_METER) || !written.isLongerThan(room));
    }
}
