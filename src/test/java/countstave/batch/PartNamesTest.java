package countstave.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class PartNamesTest {

    /** Names that every locale and file system can write, each once, whatever is chosen. */
    @Test
    void fileNamesAreSafeAndDifferent() {
        assertEquals(List.of("Violin-1", "Violin-2-2", "Violin-2-3", "Flote-in-Bb", "part-5", "part-6", "Strasse"),
                PartNames.names(List.of("Violin 1", "Violin 2", "Violin-2", "Fl\u00f6te in B\u266d", "\u8b5c", "../..",
                        "Stra\u00dfe")));
        assertEquals(List.of("Viola-1-1", "viola-2", "Viola-1"), PartNames.names(List.of("Viola", "viola", "Viola 1")));
        assertEquals(60, PartNames.names(List.of("x".repeat(200))).get(0).length());
    }
}
