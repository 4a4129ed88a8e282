package countstave.score;

import java.util.Set;

/**
 * Which voices and staves of a part are counted; an empty set means all.
 *
 * @param voices MusicXML voice names
 * @param staves staff numbers, 1 the uppermost
 */
public record Selection(Set<String> voices, Set<Integer> staves) {

    public static final Selection ALL = new Selection(Set.of(), Set.of());

    public boolean takes(String voice, int staff) {
        return (voices.isEmpty() || voices.contains(voice)) && (staves.isEmpty() || staves.contains(staff));
    }
}
