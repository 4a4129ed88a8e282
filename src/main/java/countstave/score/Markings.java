package countstave.score;

import java.util.List;

/**
 * What a bar says beside its notes, each kind in order of time.
 *
 * @param directions words, dynamics, rehearsal marks, lines …
 * @param tempi changes of tempo
 * @param staves clefs, keys and staff lines that change
 * @param swings where it begins or ends to be swung; whatever part says so, it holds for all
 */
public record Markings(List<Direction> directions, List<TempoChange> tempi, List<StaffChange> staves,
        List<SwingChange> swings) {

    public static final Markings NONE = new Markings(List.of(), List.of(), List.of(), List.of());

    /** One {@link #NONE} for all bars that say nothing. */
    public static Markings of(List<Direction> directions, List<TempoChange> tempi, List<StaffChange> staves,
            List<SwingChange> swings) {
        boolean none = directions.isEmpty() && tempi.isEmpty() && staves.isEmpty() && swings.isEmpty();
        return none ? NONE : new Markings(directions, tempi, staves, swings);
    }

    /** The same with these directions. */
    public Markings withDirections(List<Direction> told) {
        return new Markings(told, tempi, staves, swings);
    }
}
