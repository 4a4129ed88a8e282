package countstave.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.musicxml.ScoreFile;
import countstave.score.Bar;
import countstave.score.Event;
import countstave.score.Part;
import countstave.score.Score;
import countstave.score.SourceSpot;
import countstave.score.Voice;

/** Whether every note and bar of a score that was read knows where it stands in its file. */
public final class Places {

    private Places() {
    }

    /** How many notes were looked at. */
    public static int check(ScoreFile file, Score score) {
        boolean timewise = file.text().contains("<score-timewise");
        int notes = 0;
        for (Part part : score.parts()) {
            for (Bar bar : part.bars()) {
                place(file, bar.source().spot(), timewise ? "part" : "measure");
                assertTrue(bar.length().isPositive(), () -> file.name() + " " + part.id() + " " + bar.number());
                for (Voice voice : bar.voices()) {
                    for (Event event : voice.events()) {
                        place(file, event.source(), "note");
                        notes++;
                    }
                }
            }
        }
        return notes;
    }

    private static void place(ScoreFile file, SourceSpot spot, String element) {
        String text = file.text();
        int close = spot.end() - element.length() - 3;
        assertTrue(text.charAt(spot.start()) == '<' && text.startsWith(element, spot.start() + 1), () -> file.name() + " at " + spot);
        assertTrue(text.startsWith("</", close) && text.startsWith(element, close + 2) && text.charAt(spot.end() - 1) == '>',
                () -> file.name() + " at " + spot);
        if (element.equals("note")) {
            assertEquals('>', text.charAt(spot.lyricSlot() - 1));
        }
    }
}
