package countstave.spelling.respell;

import countstave.time.Offset;

/**
 * A stretch that sounds, or is silent, without a break: what has to be spelled.
 *
 * @param start from the bar's start
 * @param end after {@code start}
 * @param rest whether it is silence
 * @param held whether it sounds on beyond {@code end}: a tie leads out of it
 */
public record Sound(Offset start, Offset end, boolean rest, boolean held) {

    /** @throws IllegalArgumentException if it does not last */
    public Sound {
        if (!start.isBefore(end)) {
            throw new IllegalArgumentException("a sound from " + start + " to " + end + " does not last");
        }
    }

    public static Sound rest(Offset start, Offset end) {
        return new Sound(start, end, true, false);
    }

    /** The part of it inside {@code from} to {@code to}; null where there is none. */
    Sound clip(Offset from, Offset to) {
        Offset first = start.isBefore(from) ? from : start;
        Offset last = end.isAfter(to) ? to : end;
        if (!first.isBefore(last)) {
            return null;
        }
        boolean goesOn = !rest && (held || end.isAfter(to));
        return new Sound(first, last, rest, goesOn);
    }
}
