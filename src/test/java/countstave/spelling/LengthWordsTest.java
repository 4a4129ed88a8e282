package countstave.spelling;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.plain.Phrases;
import countstave.time.Duration;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LengthWordsTest {

    /** Sums of note values and customary tuplets (arithmetic); anything else stays a fraction. */
    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "1/4; a quarter", "3/8; a dotted quarter", "1/8; an eighth", "5/8; a half and an eighth", "1/1; a whole",
        "5/4; a whole and a quarter", "2/1; a breve", "31/16; a whole, a half, a quarter and a dotted eighth",
        "1/12; a triplet eighth", "1/3; a triplet half", "7/12; a half and a triplet eighth", "1/20; a quintuplet 16th",
        "1/28; a septuplet 16th", "2/3; a half and a triplet quarter", "1/36; 1/36 of a whole note",
        // what nobody would read is rounded: 14197/24960 is 9.1 16ths, 1/24960 nothing that can be heard
        "14197/24960; a little more than a half and a 16th", "12000/24961; a little less than a half",
        "1/150; a little less than a 128th", "1/24960; less than a 128th",
    })
    void namesLengths(String length, String words) {
        assertEquals(words, LengthWords.of(Duration.parse(length), Phrases.ENGLISH));
    }
}
