package countstave.text;

import countstave.plain.SafeText;
import countstave.score.BarTimeline;
import countstave.score.VoiceAttacks;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * A row of notes: a staff where the part's notes stand on several, else a voice.
 *
 * @param label the number or name that the score gives it; empty where the part has one row only
 * @param staff the staff it shows, 1 the uppermost; 0 for all
 * @param voice the voice it shows; null for all
 */
record NoteRow(String label, int staff, String voice) {

    /** A name longer than this is cut: it only tells the rows apart. */
    private static final int LONGEST_LABEL = 8;

    private static final List<NoteRow> ONE = List.of(new NoteRow("", 0, null));

    /** The rows of a part, the uppermost first: one for each staff or voice in which any note begins in these bars. */
    static List<NoteRow> of(List<BarTimeline> bars) {
        Set<Integer> staves = new TreeSet<>();
        Set<String> voices = new LinkedHashSet<>();
        for (BarTimeline bar : bars) {
            for (VoiceAttacks line : bar.lines()) {
                staves.add(line.staff());
                voices.add(line.voice());
            }
        }
        List<NoteRow> rows = new ArrayList<>();
        if (staves.size() > 1) {
            for (int staff : staves) {
                rows.add(new NoteRow(Integer.toString(staff), staff, null));
            }
        } else if (voices.size() > 1) {
            for (String voice : inOrder(voices)) {
                rows.add(new NoteRow(cut(SafeText.of(voice)), 0, voice));
            }
        }
        return rows.isEmpty() ? ONE : List.copyOf(rows);
    }

    /** By number, as voices are numbered from the upper one down; named ones in order of appearance. */
    private static List<String> inOrder(Set<String> voices) {
        List<String> order = new ArrayList<>(voices);
        if (order.stream().allMatch(v -> v.matches("\\d{1,9}"))) {
            order.sort(Comparator.comparingInt(Integer::parseInt));
        }
        return order;
    }

    private static String cut(String label) {
        StringBuilder kept = new StringBuilder();
        int width = 0;
        for (int i = 0; i < label.length(); i += Character.charCount(label.codePointAt(i))) {
            width += CellWidth.of(label.codePointAt(i));
            if (width > LONGEST_LABEL) {
                break;
            }
            kept.appendCodePoint(label.codePointAt(i));
        }
        return kept.toString();
    }

    boolean takes(String otherVoice, int otherStaff) {
        return (staff == 0 || staff == otherStaff) && (voice == null || voice.equals(otherVoice));
    }
}
