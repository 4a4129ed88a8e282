package countstave.spelling.respell;

import countstave.time.Duration;
import countstave.time.Offset;

/** Something written in a row: one note or rest, or a tuplet of such. */
public sealed interface Item permits Symbol, Group {

    /** From the bar's start. */
    Offset start();

    /** Exact length that it lasts. */
    Duration length();

    default Offset end() {
        return start().plus(length());
    }
}
