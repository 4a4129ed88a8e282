package countstave.score;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Which voices and staves of a part are counted; an empty set means all.
 *
 * @param voices MusicXML voice names
 * @param staves staff numbers, 1 the uppermost
 */
public record Selection(Set<String> voices, Set<Integer> staves) {

    /** More places than these in an error line are not read any more. */
    private static final int MOST_TOLD = 12;

    public static final Selection ALL = new Selection(Set.of(), Set.of());

    public boolean takes(String voice, int staff) {
        return (voices.isEmpty() || voices.contains(voice)) && (staves.isEmpty() || staves.contains(staff));
    }

    /** @throws ScoreException if none of these parts has a note in what is chosen, which would be counted as rests */
    public void requireIn(List<Part> parts) {
        if (voices.isEmpty() && staves.isEmpty()) {
            return;
        }
        Set<String> present = new TreeSet<>();
        for (Part part : parts) {
            for (Bar bar : part.bars()) {
                for (Voice voice : bar.voices()) {
                    for (Event event : voice.events()) {
                        if (!event.isNote()) {
                            continue;
                        }
                        if (takes(voice.name(), event.staff())) {
                            return;
                        }
                        present.add(voice.name() + " on staff " + event.staff());
                    }
                }
            }
        }
        throw new ScoreException("no note is in the chosen voice and staff; there are notes in voice "
                + present.stream().limit(MOST_TOLD).collect(Collectors.joining(", voice "))
                + (present.size() > MOST_TOLD ? " ..." : ""));
    }
}
