package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Tuplet;
import countstave.score.TupletMark;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Sounds;
import countstave.spelling.respell.Sound;
import countstave.time.Offset;
import java.util.List;
import java.util.TreeSet;

/** A rule that looks at one complete outer tuplet at a time. */
abstract class TupletRule extends VoiceRule {

    TupletRule(RuleInfo info) {
        super(info);
    }

    @Override
    final void check(BarView bar, Voice voice, Findings findings) {
        if (!bar.isReadable()) {
            return;
        }
        for (Tuplet tuplet : bar.bar().tuplets()) {
            // where neither number nor bracket is printed, the file uses a tuplet to write a local meter
            boolean unseen = tuplet.mark() != null && tuplet.mark().showNumber() == TupletMark.Show.NONE
                    && !Boolean.TRUE.equals(tuplet.mark().bracket());
            boolean whole = !unseen && tuplet.events().voice().equals(voice.name()) && tuplet.depth() == 0 && tuplet.complete()
                    && !tuplet.end().isAfter(bar.bar().end()) && tuplet.events().last() < voice.events().size();
            if (!whole) {
                continue;
            }
            List<Event> events = voice.events().subList(tuplet.events().first(), tuplet.events().last() + 1).stream()
                    .filter(e -> !e.isGrace()).toList();
            // under a tremolo sign a tuplet says how many strokes there are, not how the notes are to be counted
            boolean strokes = events.stream().anyMatch(e -> e.look().tremolo() != null);
            if (!strokes && events.stream().allMatch(BarView::isOrdinary) && events.stream().anyMatch(Event::isNote)) {
                check(bar, voice, tuplet, events, findings);
            }
        }
    }

    abstract void check(BarView bar, Voice voice, Tuplet tuplet, List<Event> events, Findings findings);

    /** Where sounds begin or end inside a stretch; null where the voice has gaps there. */
    static TreeSet<Offset> edges(Voice voice, Offset from, Offset to) {
        List<Sound> sounds = Sounds.of(voice, from, to);
        if (sounds == null) {
            return null;
        }
        TreeSet<Offset> edges = new TreeSet<>();
        for (Sound sound : sounds) {
            edges.add(sound.start());
            edges.add(sound.end());
        }
        edges.remove(from);
        edges.remove(to);
        return edges;
    }
}
