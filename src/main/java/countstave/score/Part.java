package countstave.score;

import java.util.List;

/**
 * A part of a score.
 *
 * @param id MusicXML part id
 * @param name printed name; the id where there is none
 * @param staves number of staves, at least 1
 * @param bars all written bars
 * @param lastLyricNumber the highest numeric lyric number of the file's own lyrics, 0 where there are none
 * @param instruments names of its instruments as the part list has them, each once; none where it has none
 */
public record Part(String id, String name, int staves, List<Bar> bars, int lastLyricNumber, List<String> instruments) {

    /** A part whose instruments nobody asks for. */
    public Part(String id, String name, int staves, List<Bar> bars, int lastLyricNumber) {
        this(id, name, staves, bars, lastLyricNumber, List.of());
    }

    /** Whether anything in it is played. */
    public boolean hasNotes() {
        for (Bar bar : bars) {
            for (Voice voice : bar.voices()) {
                for (Event event : voice.events()) {
                    if (event.isNote()) {
                        return true;
                    }
                }
            }
        }
        return false;
    }
}
