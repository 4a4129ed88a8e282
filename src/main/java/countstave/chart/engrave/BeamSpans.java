package countstave.chart.engrave;

import countstave.score.BeamMark;
import countstave.score.Beat;
import countstave.score.Event;
import countstave.score.Tuplet;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * The beams of the second level and finer inside one group.
 *
 * <p>As the file says where every note of the group carries all its levels; else by these rules (common practice):
 * the finer beams break where a tuplet begins or ends, at each quarter of a longer group, and, where there are
 * thirty-seconds or shorter, at each eighth. A note that stands alone at its level gets a partial beam that points to
 * the note it completes a larger unit with: back in dotted eighth + sixteenth, forward in sixteenth + dotted eighth.
 */
final class BeamSpans {

    private static final Duration EIGHTH = Duration.of(1, 8);

    private final List<Event> events;
    private final List<Tuplet> tuplets;
    private final List<Beat> beats;
    private final List<Integer> members;
    private final boolean marked;

    BeamSpans(List<Event> events, List<Tuplet> tuplets, List<Beat> beats, List<Integer> members, boolean marked) {
        this.events = events;
        this.tuplets = tuplets;
        this.beats = beats;
        this.members = members;
        this.marked = marked;
    }

    List<BeamGroup.Span> spans() {
        List<BeamGroup.Span> spans = new ArrayList<>();
        int finest = 0;
        boolean allMarked = marked;
        for (int index : members) {
            Event event = events.get(index);
            if (event.isNote()) {
                finest = Math.max(finest, flags(event));
                allMarked &= event.look().beams().size() >= flags(event);
            }
        }
        for (int level = 2; level <= finest; level++) {
            if (allMarked) {
                markedLevel(level, spans);
            } else {
                computedLevel(level, finest, spans);
            }
        }
        return List.copyOf(spans);
    }

    private static int flags(Event event) {
        return event.written() == null ? 0 : event.written().value().flags();
    }

    private Event member(int m) {
        return events.get(members.get(m));
    }

    private void markedLevel(int level, List<BeamGroup.Span> spans) {
        int open = -1;
        int last = -1;
        for (int m = 0; m < members.size(); m++) {
            BeamMark.Kind kind = kind(member(m), level);
            if (kind == null) {
                if (member(m).isNote()) {
                    close(level, open, last, spans);
                    open = -1;
                }
                continue;
            }
            switch (kind) {
                case BEGIN -> {
                    close(level, open, last, spans);
                    open = m;
                }
                case CONTINUE -> open = open < 0 ? m : open;
                case END -> {
                    close(level, open < 0 ? m : open, m, spans);
                    open = -1;
                }
                case FORWARD_HOOK -> spans.add(new BeamGroup.Span(level, m, m, true));
                case BACKWARD_HOOK -> spans.add(new BeamGroup.Span(level, m, m, false));
            }
            last = m;
        }
        close(level, open, last, spans);
    }

    /** Ends a beam at {@code last}; one that would hold a single note becomes a partial beam. */
    private void close(int level, int open, int last, List<BeamGroup.Span> spans) {
        if (open >= 0) {
            spans.add(new BeamGroup.Span(level, open, last, open == last && pointsForward(open, open, last)));
        }
    }

    private static BeamMark.Kind kind(Event event, int level) {
        for (BeamMark mark : event.look().beams()) {
            if (mark.level() == level) {
                return mark.kind();
            }
        }
        return null;
    }

    private void computedLevel(int level, int finest, List<BeamGroup.Span> spans) {
        int stretchFrom = 0;
        for (int m = 1; m <= members.size(); m++) {
            if (m == members.size() || breaksBefore(m, finest)) {
                runs(level, stretchFrom, m - 1, spans);
                stretchFrom = m;
            }
        }
    }

    private void runs(int level, int from, int to, List<BeamGroup.Span> spans) {
        int open = -1;
        int last = -1;
        for (int m = from; m <= to + 1; m++) {
            boolean in = m <= to && flags(member(m)) >= level;
            if (in && member(m).isNote()) {
                open = open < 0 ? m : open;
                last = m;
            } else if (!in && open >= 0) {
                spans.add(new BeamGroup.Span(level, open, last, open == last && pointsForward(open, from, to)));
                open = -1;
            }
        }
    }

    private boolean breaksBefore(int m, int finest) {
        Event event = member(m);
        Event before = member(m - 1);
        if (event.isGrace()) {
            return false;
        }
        Tuplet here = innermost(members.get(m));
        Tuplet there = innermost(members.get(m - 1));
        if (here != there) {
            return true;
        }
        if (here != null) {
            return false;
        }
        Duration in = event.start().minus(beatStart(event.start()));
        if (in.isZero() && !beats.get(0).length().isShorterThan(Duration.QUARTER)) {
            return true;
        }
        boolean longGroup = member(members.size() - 1).end().minus(member(0).start()).isLongerThan(Duration.of(3, 8));
        if (longGroup && in.isMultipleOf(Duration.QUARTER)) {
            return true;
        }
        return finest >= 3 && in.isMultipleOf(EIGHTH) && Math.max(flags(event), flags(before)) >= 2;
    }

    private Tuplet innermost(int index) {
        Tuplet found = null;
        for (Tuplet tuplet : tuplets) {
            if (tuplet.events().holds(index) && (found == null || tuplet.depth() > found.depth())) {
                found = tuplet;
            }
        }
        return found;
    }

    private Offset beatStart(Offset at) {
        Offset found = Offset.ZERO;
        for (Beat beat : beats) {
            if (beat.start().isAfter(at)) {
                break;
            }
            found = beat.start();
        }
        return found;
    }

    /** A partial beam points to the neighbour inside the same larger unit of the beat or tuplet. */
    private boolean pointsForward(int m, int from, int to) {
        if (m == 0 || m == from && from < to) {
            return true;
        }
        if (m == members.size() - 1 || m == to) {
            return false;
        }
        Event event = member(m);
        Tuplet tuplet = innermost(members.get(m));
        Offset start = tuplet == null ? beatStart(event.start()) : tuplet.start();
        if (event.length().isZero()) {
            return false;
        }
        return event.start().minus(start).floorOver(event.length()) % 2 == 0;
    }
}
