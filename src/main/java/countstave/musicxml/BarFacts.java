package countstave.musicxml;

import countstave.score.Bar;
import countstave.score.Event;
import countstave.score.Fact;
import countstave.score.Voice;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.List;

/** Reports what a finished bar contradicts in itself and in its meter. */
final class BarFacts {

    private final BarDraft draft;
    private final Bar bar;
    private final FactList facts;
    private boolean localMeter;

    private BarFacts(BarDraft draft, Bar bar, FactList facts) {
        this.draft = draft;
        this.bar = bar;
        this.facts = facts;
    }

    static void report(BarDraft draft, Bar bar, FactList facts) {
        BarFacts found = new BarFacts(draft, bar, facts);
        // a voice that goes straight through a bar that fits cannot overlap itself or last too long: the sums are spared
        boolean straight = draft.fits && draft.barRest == null && draft.contradictions.wentBack.isEmpty();
        for (Voice voice : bar.voices()) {
            found.differing(voice);
            if (!straight) {
                found.overlap(voice);
                found.overfull(voice);
            }
        }
        found.rounded();
        found.length();
    }

    private void differing(Voice voice) {
        List<Event> differing = draft.contradictions.differing.get(voice.name());
        if (differing == null) {
            return;
        }
        Offset first = differing.get(0).start();
        boolean plain = differing.stream().anyMatch(event -> event.written().ratio().isPlain());
        if (plain && !localMeter && isInMeterOfItsOwn(voice)) {
            localMeter = true;
            facts.add(new Fact.LocalMeter(facts.place(draft, voice.name(), first)));
        }
        List<Event> printed = differing.stream().filter(Event::printed).toList();
        if (!printed.isEmpty()) {
            facts.add(new Fact.ValueDiffers(facts.place(draft, voice.name(), printed.get(0).start()), printed));
        }
    }

    /** Whether written values or durations go beyond the signature: some exporters write a voice in a meter of its own so. */
    private boolean isInMeterOfItsOwn(Voice voice) {
        if (bar.meter().isSenzaMisura()) {
            return false;
        }
        Duration written = Duration.ZERO;
        for (Event event : voice.events()) {
            written = written.plus(event.written() == null || event.isGrace() ? event.length() : event.written().length());
        }
        return written.isLongerThan(bar.meter().length()) || bar.length().isLongerThan(bar.meter().length());
    }

    private void overlap(Voice voice) {
        Event note = firstNoteOverAnother(voice);
        Offset back = draft.contradictions.wentBack.get(voice.name());
        if (note != null || back != null) {
            facts.add(new Fact.Overlap(facts.place(draft, voice.name(), note == null ? back : note.start()), note));
        }
    }

    /** Two rests over each other are a trace of deleted notes and harm nobody. */
    private static Event firstNoteOverAnother(Voice voice) {
        Offset noteEnd = Offset.ZERO;
        Offset restEnd = Offset.ZERO;
        for (Event event : voice.events()) {
            if (event.isGrace()) {
                continue;
            }
            boolean over = event.start().isBefore(noteEnd) || event.isNote() && event.start().isBefore(restEnd);
            if (over && event.length().isPositive()) {
                return event;
            }
            noteEnd = event.isNote() && event.end().isAfter(noteEnd) ? event.end() : noteEnd;
            restEnd = event.isRest() && event.printed() && event.end().isAfter(restEnd) ? event.end() : restEnd;
        }
        return null;
    }

    private void overfull(Voice voice) {
        if (bar.meter().isSenzaMisura() || isBarRest(voice)) {
            return;
        }
        Duration room = bar.meter().length().minus(bar.phase());
        Duration holds = voice.filled();
        if (holds.isLongerThan(room)) {
            facts.add(new Fact.VoiceOverfull(facts.place(draft, voice.name(), null), holds, room, bar.meter()));
        }
    }

    private static boolean isBarRest(Voice voice) {
        for (Event event : voice.events()) {
            if (!event.barRest()) {
                return false;
            }
        }
        return true;
    }

    private void rounded() {
        Contradictions found = draft.contradictions;
        if (found.roundedNotes > 0) {
            facts.add(new Fact.Rounded(facts.place(draft, found.voiceOfRounded, found.firstRounded.start()),
                    found.firstRounded, found.roundedNotes));
        }
    }

    private void length() {
        if (draft.fits) {
            return;
        }
        Fact.Place place = facts.place(draft, null, null);
        facts.add(bar.length().isLongerThan(bar.meter().length()) ? new Fact.Overfull(place, bar.length(), bar.meter())
                : new Fact.Short(place, bar.length(), bar.meter()));
    }
}
