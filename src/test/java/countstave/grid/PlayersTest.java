package countstave.grid;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/**
 * The plan against bars with counts that trained readers accept ({@code ../shared/players}, where it is present): judgement of
 * three readers each, no published table. The list judges the planner; nothing of it is in the code.
 */
class PlayersTest {

    private static final double LEAST = 0.90;
    /** Bars on either side that a plan is made with: more change none of these counts. */
    private static final int AROUND = 16;

    @Test
    void mostBarsAreCountedAsPlayersWould() throws IOException {
        assumeTrue(Players.present());
        int all = 0;
        List<String> differing = new ArrayList<>();
        for (Players.Passage passage : Players.of(Players.FOLDER.resolve("bars.json"))) {
            all += passage.size();
            differing.addAll(passage.near(AROUND).differing(PlanOptions.DEFAULT));
        }
        double share = 1 - (double) differing.size() / all;
        System.out.printf(Locale.ROOT, "counted as players would: %d of %d bars (%.1f %%)%n", all - differing.size(), all,
                100 * share);
        assertTrue(share >= LEAST, () -> String.join("\n", differing));
    }
}
