package countstave.musicxml;

import countstave.score.Bar;
import countstave.score.Event;
import countstave.score.Fact;
import countstave.score.Voice;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/** What the notes of a finished bar contradict in each other and in its meter. */
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
        for (Voice voice : bar.voices()) {
            found.differing(voice);
            found.overlap(voice);
            found.overfull(voice);
        }
        found.rounded();
        found.length();
    }

    private void differing(Voice voice) {
        List<Event> printed = null;
        Event first = null;
        boolean plain = false;
        for (Event event : voice.events()) {
            if (event.differs()) {
                first = first == null ? event : first;
                plain |= event.written().ratio().isPlain();
                if (event.printed()) {
                    printed = printed == null ? new ArrayList<>() : printed;
                    printed.add(event);
                }
            }
        }
        if (plain && !localMeter && isInMeterOfItsOwn(voice)) {
            localMeter = true;
            facts.add(new Fact.LocalMeter(facts.place(draft, voice.name(), first.start())));
        }
        if (printed != null) {
            facts.add(new Fact.ValueDiffers(facts.place(draft, voice.name(), printed.get(0).start()), List.copyOf(printed)));
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
        Offset back = draft.wentBack.get(voice.name());
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
        Duration room = bar.meter().length().minus(bar.phase());
        Duration holds = voice.filled();
        if (!bar.meter().isSenzaMisura() && holds.isLongerThan(room) && !isBarRest(voice)) {
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
        Event first = null;
        String voiceOfFirst = null;
        int notes = 0;
        for (Voice voice : bar.voices()) {
            for (Event event : voice.events()) {
                if (event.isRounded()) {
                    notes++;
                    voiceOfFirst = first == null ? voice.name() : voiceOfFirst;
                    first = first == null ? event : first;
                }
            }
        }
        if (first != null) {
            facts.add(new Fact.Rounded(facts.place(draft, voiceOfFirst, first.start()), first, notes));
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
