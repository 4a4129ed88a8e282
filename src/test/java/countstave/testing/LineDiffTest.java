package countstave.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class LineDiffTest {

    @Test
    void onlyWhatDiffersAndItsNeighbours() {
        assertEquals(List.of("  ...", "  c", "  d", "- e", "+ E", "  f", "  g"),
                LineDiff.of("a\nb\nc\nd\ne\nf\ng\nh\n", "a\nb\nc\nd\nE\nf\ng\nh\n"));
        assertEquals(List.of("  a", "+ b"), LineDiff.of("a\n", "a\nb\n"));
        assertEquals(List.of("- a"), LineDiff.of("a\n", ""));
        assertEquals(List.of(), LineDiff.of("a\nb", "a\nb\n"));
    }
}
