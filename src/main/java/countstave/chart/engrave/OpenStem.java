package countstave.chart.engrave;

import countstave.score.BeamMark;
import countstave.time.Offset;
import java.util.List;

/**
 * The stem of a note whose beam reaches beyond its staff or its bar, before its length is known. In staff spaces, x from the bar's
 * left edge.
 *
 * @param voice name of its voice
 * @param index index of its event in the voice
 * @param at its moment
 * @param x its axis
 * @param root y at which it leaves its head
 * @param up which way it points
 * @param thickness of it
 * @param beams the beams that the file gives it
 * @param flag its flag, for want of another note under its beam
 */
public record OpenStem(String voice, int index, Offset at, double x, double root, boolean up, double thickness,
        List<BeamMark> beams, String flag) {

    /** What the beam of this level does here, or null. */
    public BeamMark.Kind beam(int level) {
        return beams.stream().filter(b -> b.level() == level).map(BeamMark::kind).findFirst().orElse(null);
    }

    /** How many beams there are. */
    public int levels() {
        return beams.stream().mapToInt(BeamMark::level).max().orElse(1);
    }
}
