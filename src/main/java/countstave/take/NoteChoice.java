package countstave.take;

import countstave.score.ScoreException;
import java.util.HashSet;
import java.util.Set;

/**
 * Which notes of a MIDI file are heard.
 *
 * @param channel 1 to 16, or 0 for all
 * @param notes numbers from 0 to 127; empty for all
 */
public record NoteChoice(int channel, Set<Integer> notes) {

    public static final NoteChoice ALL = new NoteChoice(0, Set.of());
    private static final int HIGHEST = 127;
    private static final int CHANNELS = 16;

    /**
     * @param channel 1 to 16, or null
     * @param notes {@code 36,38} or {@code 35-40}, or null
     * @throws ScoreException if one of them says nothing of the kind
     */
    public static NoteChoice parse(Integer channel, String notes) {
        if (channel != null && (channel < 1 || channel > CHANNELS)) {
            throw new ScoreException("--channel goes from 1 to " + CHANNELS + ", not " + channel);
        }
        Set<Integer> numbers = new HashSet<>();
        if (notes != null) {
            for (String piece : notes.split(",", -1)) {
                String[] ends = piece.strip().split("\\s*-\\s*", -1);
                int from = number(ends[0], notes);
                int to = number(ends[ends.length - 1], notes);
                if (ends.length > 2 || to < from) {
                    throw wrong(notes);
                }
                for (int n = from; n <= to; n++) {
                    numbers.add(n);
                }
            }
        }
        return new NoteChoice(channel == null ? 0 : channel, Set.copyOf(numbers));
    }

    private static int number(String text, String all) {
        if (!text.matches("\\d{1,3}") || Integer.parseInt(text) > HIGHEST) {
            throw wrong(all);
        }
        return Integer.parseInt(text);
    }

    private static ScoreException wrong(String notes) {
        return new ScoreException("'" + notes + "' are no MIDI notes; write numbers from 0 to " + HIGHEST
                + " such as 36,38 or 35-40");
    }

    boolean takes(int ofChannel, int note) {
        return (channel == 0 || channel == ofChannel) && (notes.isEmpty() || notes.contains(note));
    }

    /** Whether it leaves anything out. */
    public boolean isAll() {
        return channel == 0 && notes.isEmpty();
    }
}
