package countstave.chart.engrave;

import countstave.score.BarTimeline;
import java.util.List;

/** Turns one staff of one bar into notation. Pure: the same bar in the same context gives the same notation. */
public interface BarEngraver {

    /** An ordinary bar; also slash bars and bars of measure-repeat signs. */
    EngravedBar engrave(BarTimeline bar, EngraveContext context);

    /** A run of bars of rest drawn as one, with the number of bars; {@code context.state()} holds before the first. */
    EngravedBar engraveRests(List<BarTimeline> bars, EngraveContext context);
}
