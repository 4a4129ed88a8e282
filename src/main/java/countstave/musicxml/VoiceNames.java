package countstave.musicxml;

import countstave.time.Offset;
import java.util.HashMap;
import java.util.Map;

/** Names the voices of one bar, also where the file leaves the name out. */
final class VoiceNames {

    private final Map<String, Offset> ends = new HashMap<>();
    private String unnamed = "1";
    private boolean choose;

    void beginBar() {
        ends.clear();
        unnamed = "1";
        choose = false;
    }

    /** After a backup, notes without a voice belong to another one. */
    void wentBack() {
        choose = true;
    }

    /** The voice of a note at {@code at}, whose file name is {@code given} (may be null). */
    String name(String given, Offset at) {
        String name = Plain.line(given);
        if (!name.isEmpty()) {
            return name;
        }
        if (choose) {
            int number = 1;
            while (ends.getOrDefault(String.valueOf(number), Offset.ZERO).isAfter(at)) {
                number++;
            }
            unnamed = String.valueOf(number);
            choose = false;
        }
        return unnamed;
    }

    /** Notes that {@code voice} is taken up to {@code end}. */
    void filled(String voice, Offset end) {
        ends.merge(voice, end, (a, b) -> a.isAfter(b) ? a : b);
    }
}
