package countstave.score;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where a movement begins: common practice of numbering bars, no source. */
class MovementsTest {

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "1 2 3 4; 0 0 0 0",
        "1 2 3 1 2 1 2 3; 1 1 1 2 2 3 3 3",
        // pickups are numbered 0, or stand outside of the numbers
        "0 1 2 3 0 1 2; 1 1 1 1 2 2 2",
        "X1 1 2 3 X2 1 2; 1 1 1 1 1 2 2",
        // second endings take up the numbers of the first
        "1 2 3 4 3 4 5 6; 0 0 0 0 0 0 0 0",
        // parts of split bars: numbered alike, or 0
        "1 2 2 3 3 4; 0 0 0 0 0 0",
        "1 2 0 3 4 0 5; 0 0 0 0 0 0 0",
        // all alike: no numbers at all
        "1 1 1 1; 0 0 0 0",
        "0 0 0; 0 0 0",
        "7 8 9 1 2; 1 1 1 2 2"})
    void oneBeginsWhereTheNumbersStartAnew(String numbers, String movements) {
        assertEquals(movements, Arrays.stream(Movements.of(List.of(numbers.split(" ")))).mapToObj(Integer::toString)
                .collect(Collectors.joining(" ")));
    }

    /** While a part is read, its later bars are not known. */
    @Test
    void aBarIsCalledByWhatIsKnown() {
        assertEquals("2", Movements.called(List.of("1", "2"), 1));
        assertEquals("2:2", Movements.called(List.of("1", "2", "3", "1", "2"), 4));
    }
}
