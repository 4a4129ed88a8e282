package countstave.chart.layout;

import countstave.score.Bar;
import countstave.score.Direction;
import countstave.score.Event;
import countstave.score.Voice;
import countstave.time.Offset;

/** What keeps a bar of rest from being drawn as one with others: anything but its rests. */
final class RestSigns {

    private RestSigns() {
    }

    /** Whether the bar has nothing but rests, and nothing above or below them but at its start. */
    static boolean none(Bar bar) {
        for (Voice voice : bar.voices()) {
            for (Event event : voice.events()) {
                if (!event.isRest() || !event.look().isPlain()) {
                    return false;
                }
            }
        }
        for (Direction direction : bar.directions()) {
            if (!direction.at().equals(Offset.ZERO) || direction.kind() == Direction.Kind.LINE) {
                return false;
            }
        }
        return true;
    }
}
