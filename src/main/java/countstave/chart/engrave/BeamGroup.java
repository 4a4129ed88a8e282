package countstave.chart.engrave;

import java.util.List;

/**
 * Notes of one voice under one beam.
 *
 * @param members indices of the voice's events from the first beamed note to the last, rests between them included
 * @param spans beams of the second level and finer
 */
record BeamGroup(List<Integer> members, List<Span> spans) {

    /**
     * A beam of one level between two members; where {@code from == to} it is a partial beam on that note.
     *
     * @param level 2 for the sixteenth beam, 3 for the thirty-second beam and so on
     * @param from index into {@link BeamGroup#members}
     * @param to index into {@link BeamGroup#members}
     * @param forward for a partial beam: whether it points to the next note
     */
    record Span(int level, int from, int to, boolean forward) {

        boolean isPartial() {
            return from == to;
        }
    }

    int first() {
        return members.get(0);
    }

    int last() {
        return members.get(members.size() - 1);
    }
}
