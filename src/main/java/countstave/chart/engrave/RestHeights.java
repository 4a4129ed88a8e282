package countstave.chart.engrave;

import countstave.chart.shape.Box;
import countstave.score.NoteValue;
import countstave.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * Heights of rests. One voice alone: on the middle of the staff. Several: the upper voice's rests above, the lower
 * voice's below, all rests of a voice in a bar as far out as the one that has least room, in whole spaces so that the
 * signs sit on the lines alike; rests that say the same in both voices are printed once, in the middle (common
 * practice).
 */
final class RestHeights {

    /** Free space kept between a rest and another voice's heads, in staff spaces: house choice. */
    private static final double GAP = 0.25;
    private static final int FARTHEST = 12;
    /** Moments nearer together than this leave no room for a rest between heads: house choice. */
    private static final Duration CLOSE = Duration.of(1, 24);

    private final List<Moment> moments;
    private final int staffLines;
    private final double middle;

    RestHeights(List<Moment> moments, int staffLines) {
        this.moments = moments;
        this.staffLines = staffLines;
        this.middle = StaffMap.middle(staffLines);
    }

    void place(List<VoiceLine> lines) {
        for (Moment moment : moments) {
            for (Chord chord : moment.chords) {
                if (chord.restSign != null) {
                    chord.restY = home(chord);
                }
            }
            shareAlike(moment);
        }
        for (VoiceLine line : lines) {
            if (line.side != VoiceLine.Side.ONLY) {
                placeVoice(line);
            }
        }
    }

    /** Whole rests hang from the fourth line, or from a single one; all others stand on the middle. */
    private double home(Chord chord) {
        if (chord.spots.isEmpty() && chord.placedStep != null && staffLines > 1) {
            // on a line, so that the sign sits on the staff as it does in the middle
            double y = chord.placedStep / 2.0;
            return chord.voice.side == VoiceLine.Side.UPPER ? Math.ceil(y) : Math.floor(y);
        }
        return chord.value() == NoteValue.WHOLE ? StaffMap.lineOfWholeRest(staffLines)
                : chord.value() == NoteValue.HALF ? StaffMap.lineOfHalfRest(staffLines) : middle;
    }

    private void shareAlike(Moment moment) {
        List<Chord> rests = moment.chords.stream().filter(Chord::isRest).toList();
        if (rests.size() < 2 || rests.size() < moment.chords.size()) {
            return;
        }
        Chord first = rests.get(0);
        if (rests.stream().allMatch(r -> r.event.length().equals(first.event.length())
                && r.restSign.equals(first.restSign) && r.dots() == first.dots()
                && r.event.tupletMarks().isEmpty() && r.event.barRest() == first.event.barRest())) {
            for (Chord rest : rests.subList(1, rests.size())) {
                rest.hidden = true;
            }
            first.sharedRest = true;
        }
    }

    private void placeVoice(VoiceLine line) {
        int way = line.side == VoiceLine.Side.UPPER ? 1 : -1;
        int farthest = 1;
        for (Moment moment : moments) {
            for (Chord chord : moment.chords) {
                if (isMovable(chord, line)) {
                    farthest = Math.max(farthest, needed(chord, moment, way, 1));
                }
            }
        }
        for (Moment moment : moments) {
            for (Chord chord : moment.chords) {
                if (isMovable(chord, line)) {
                    chord.restY += way * farthest;
                } else if (chord.voice == line && chord.isRest() && chord.placedStep != null) {
                    chord.restY += way * (needed(chord, moment, way, 0));
                }
            }
        }
    }

    private static boolean isMovable(Chord chord, VoiceLine line) {
        return chord.voice == line && chord.isRest() && !chord.sharedRest && !chord.event.barRest()
                && chord.placedStep == null;
    }

    /** How many spaces the rest must leave its home to be free of the other voices. */
    private int needed(Chord rest, Moment moment, int way, int least) {
        double home = rest.restY;
        List<Chord> near = near(rest, moment);
        int spaces = least;
        for (; spaces < FARTHEST; spaces++) {
            rest.restY = home + way * spaces;
            Box box = rest.restBox();
            if (moment.chords.stream().allMatch(c -> c == rest || isFree(box, c, way)
                    || isLaterOnSameSide(rest, c, moment)) && near.stream().allMatch(c -> isFree(box, c, way))) {
                break;
            }
        }
        rest.restY = home;
        return spaces;
    }

    /** Notes of other voices that stand beside the rest rather than over it, as in a tuplet against plain beats. */
    private List<Chord> near(Chord rest, Moment moment) {
        List<Chord> near = new ArrayList<>();
        for (Moment other : moments) {
            boolean close = other != moment && (other.at.isBefore(moment.at) ? moment.at.minus(other.at)
                    : other.at.minus(moment.at)).compareTo(CLOSE) < 0;
            if (close) {
                other.chords.stream().filter(c -> c.isNote() && c.voice.side != rest.voice.side).forEach(near::add);
            }
        }
        return near;
    }

    /** Of three voices two may rest on one side: the later one gives way. */
    private static boolean isLaterOnSameSide(Chord rest, Chord other, Moment moment) {
        return other.isRest() && other.voice.side == rest.voice.side
                && moment.chords.indexOf(other) > moment.chords.indexOf(rest);
    }

    private static boolean isFree(Box box, Chord other, int way) {
        if (other.isNote()) {
            Box body = other.body();
            return way > 0 ? box.bottom() >= body.top() + GAP : box.top() <= body.bottom() - GAP;
        }
        if (other.isRest()) {
            // a rest of the opposite side will move away by at least one space itself
            boolean opposite = (other.voice.side == VoiceLine.Side.UPPER) != way > 0;
            Box body = other.restBox().moved(0, opposite && other.placedStep == null ? -way : 0);
            return way > 0 ? box.bottom() >= body.top() : box.top() <= body.bottom();
        }
        return true;
    }

    /** Rests of the whole bar: in the middle where nothing else is drawn, else outside all that is. */
    void placeBarRests(List<Chord> rests) {
        boolean alone = moments.stream().allMatch(m -> m.chords.isEmpty());
        for (int i = 0; i < rests.size(); i++) {
            Chord rest = rests.get(i);
            rest.restY = rest.placedStep == null || alone ? StaffMap.lineOfWholeRest(staffLines) : rest.placedStep / 2;
            if (alone) {
                rest.hidden = i > 0;
            } else if (rest.placedStep == null) {
                int way = rest.voice.side == VoiceLine.Side.UPPER ? 1 : -1;
                rest.restY += way;
                while (moments.stream().flatMap(m -> m.chords.stream()).anyMatch(c -> !isFree(rest.restBox(), c, way))) {
                    rest.restY += way;
                }
            }
        }
    }
}
