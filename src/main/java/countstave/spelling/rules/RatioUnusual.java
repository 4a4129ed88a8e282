package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.NoteValue;
import countstave.score.Tuplet;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.LengthWords;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.spelling.respell.Respeller;
import countstave.spelling.respell.ValueWords;
import java.util.List;

/** {@code ratio-unusual}. */
final class RatioUnusual extends TupletRule {

    RatioUnusual() {
        super(new RuleInfo("ratio-unusual", Severity.HINT,
                "A tuplet over a plain value has another ratio than the customary one, which would fit.",
                "Readers know a 7 over a quarter as 16ths; written as 32nds in the time of eight it looks twice as fast.",
                "Write the customary ratio.",
                "a 7:8 of 32nds over a quarter: customary is 7:4 of 16ths",
                "a 5:6 of 16ths over a dotted quarter: both 5:6 and 5:3 are in use",
                "textbooks on tuplets: n in the time of the largest power of two below n"));
    }

    @Override
    void check(BarView bar, Voice voice, Tuplet tuplet, List<Event> events, Findings findings) {
        if (tuplet.length().numerator() != 1) {
            return;
        }
        int actual = tuplet.ratio().actual();
        int normal = Respeller.customary(actual, tuplet.length());
        NoteValue unit = normal > 0 ? NoteValue.ofLength(tuplet.length().dividedBy(normal)) : null;
        if (unit != null && normal != tuplet.ratio().normal()) {
            findings.add(bar, voice.name(), events.get(0), p -> p.text("found.ratio-unusual", tuplet.ratio().toString(),
                    LengthWords.of(tuplet.length(), p), actual + ":" + normal, ValueWords.plural(unit, p)), null);
        }
    }
}
