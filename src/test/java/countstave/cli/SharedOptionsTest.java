package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountingOptions;
import countstave.count.FeltNotes;
import countstave.grid.Weights;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.ParameterException;

/** What the shared options make of the words of a command line. */
class SharedOptionsTest {

    @Command
    private static final class Probe {
        @Mixin
        private final SharedOptions shared = new SharedOptions();
    }

    private static CountingOptions parsed(String... words) {
        Probe probe = new Probe();
        new CommandLine(probe).setCaseInsensitiveEnumValuesAllowed(true).parseArgs(words);
        return probe.shared.counting(false);
    }

    @ParameterizedTest
    @CsvSource({"'', YES, true, true", "--felt=yes, YES, true, true", "--felt=dot, DOT, true, true",
        "--felt=no, NO, false, false", "--against=no, YES, true, false", "--felt=dot --against=yes, DOT, true, true",
        "--felt=no --against=no, NO, false, false"})
    void feltAndAgainst(String words, FeltNotes notes, boolean felt, boolean against) {
        CountingOptions options = words.isEmpty() ? parsed() : parsed(words.split(" "));
        assertEquals(notes, options.felt());
        assertEquals(felt, options.plan().felt());
        assertEquals(against, options.plan().against());
    }

    @Test
    void whatContradictsItselfIsRefused() {
        ParameterException e = assertThrows(ParameterException.class, () -> parsed("--felt=no", "--against=yes"));
        assertTrue(e.getMessage().contains("leave out --against yes, or --felt no"), e.getMessage());
    }

    @ParameterizedTest
    @CsvSource({"auto, false", "count, true"})
    void hidden(String word, boolean counted) {
        assertEquals(counted, parsed("--hidden", word).reading().countHidden());
        assertFalse(parsed().reading().countHidden());
    }

    @ParameterizedTest
    @CsvSource({"few-words, 0", "even, 5", "one-count, 10", "3, 3"})
    void steadinessByNameAndNumber(String word, int steadiness) {
        assertEquals(Weights.steadiness(steadiness), parsed("--steadiness", word).plan().weights());
    }
}
