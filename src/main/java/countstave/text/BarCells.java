package countstave.text;

import countstave.count.BarCounts;
import countstave.count.ChangeMark;
import countstave.count.Count;
import countstave.count.CountingSystem;
import countstave.count.SegmentCounts;
import countstave.count.ShownCounts;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Event;
import countstave.score.TempoChange;
import countstave.score.Voice;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Turns the counts of a bar into cells. */
final class BarCells {

    private final BarCounts bar;
    private final BarTimeline timeline;
    private final ShownCounts shown;
    private final List<ChangeMark> marks;
    private final boolean tempoNew;
    private final TextOptions options;
    private final List<Event> sounding;
    private int nextEvent;
    private Offset soundsUntil = Offset.ZERO;
    private int nextMark;
    private int nextTempo;

    /**
     * @param marks the bar's changes, in order
     * @param tempoNew whether the tempo at the bar's start differs from the one before and is shown
     */
    BarCells(BarCounts bar, CountingSystem system, List<ChangeMark> marks, boolean tempoNew, TextOptions options) {
        this.bar = bar;
        this.timeline = bar.plan().timeline();
        this.shown = ShownCounts.of(bar, system, options.unplayed());
        this.marks = marks;
        this.tempoNew = tempoNew;
        this.options = options;
        this.sounding = sounding();
    }

    List<Cell> cells() {
        List<Cell> cells = new ArrayList<>();
        for (int s = 0; s < bar.segments().size(); s++) {
            SegmentCounts segment = bar.segments().get(s);
            int part = 0;
            for (int k = 0; k < segment.counts().size(); k++) {
                Count count = segment.counts().get(k);
                Beat beat = timeline.beatAt(count.at());
                boolean opens = count.at().equals(beat.start()) && (!timeline.irregular() || beat.isGroupStart());
                part = opens ? 0 : part + 1;
                cells.add(Cell.of(count, shown.isShown(s, k), s, part, opens, !count.played() && isHeld(count.at()),
                        sign(count.at())));
            }
        }
        return cells;
    }

    /** New tempo and change of count, as they stand at this position; a tempo between two positions waits for the next. */
    private String sign(Offset at) {
        boolean noTempo = nextTempo >= timeline.tempi().size() || timeline.tempi().get(nextTempo).at().isAfter(at);
        if (noTempo && (nextMark >= marks.size() || marks.get(nextMark).at().isAfter(at))) {
            return "";
        }
        StringBuilder sign = new StringBuilder();
        List<TempoChange> tempi = timeline.tempi();
        while (nextTempo < tempi.size() && !tempi.get(nextTempo).at().isAfter(at)) {
            if (nextTempo > 0 || tempoNew) {
                sign.setLength(0);
                sign.append(options.names().tempo(tempi.get(nextTempo).tempo()));
            }
            nextTempo++;
        }
        while (nextMark < marks.size() && !marks.get(nextMark).at().isAfter(at)) {
            sign.append(sign.isEmpty() ? "" : ": ").append(marks.get(nextMark++).text(options.names()));
        }
        return sign.toString();
    }

    /** Pitched notes of the counted voices, in order of time: drums are struck, not held. */
    private List<Event> sounding() {
        Set<Offset> attacks = new HashSet<>(timeline.attacks());
        List<Event> notes = new ArrayList<>();
        for (Voice voice : timeline.bar().voices()) {
            for (Event event : voice.events()) {
                boolean counted = !event.isAttack() || attacks.contains(event.start());
                boolean sounds = event.isNote() && !event.isGrace() && !event.cue()
                        && event.heads().stream().anyMatch(h -> !h.unpitched() && !h.silent());
                if (counted && sounds) {
                    notes.add(event);
                }
            }
        }
        notes.sort(Comparator.comparing(Event::start));
        return notes;
    }

    private boolean isHeld(Offset at) {
        while (nextEvent < sounding.size() && !sounding.get(nextEvent).start().isAfter(at)) {
            Offset end = sounding.get(nextEvent++).end();
            soundsUntil = end.isAfter(soundsUntil) ? end : soundsUntil;
        }
        return at.isBefore(soundsUntil);
    }
}
