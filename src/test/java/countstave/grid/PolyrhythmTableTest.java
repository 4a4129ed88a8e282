package countstave.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.score.Meter;
import countstave.score.PartTimeline;
import countstave.time.Divisors;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Covering grids against tables of polyrhythms. The combined attacks of 3:2 and 4:3 are printed in tables on drumming
 * mathematics (mathdrumming.com) and in a discussion of polyrhythms (greenspun.com 00AXsL); the others follow by
 * arithmetic (least common multiple, as in the discussion on list.seqfan.eu, 2015-12).
 */
class PolyrhythmTableTest {

    @ParameterizedTest(name = "{0}:{1}")
    @CsvSource({
        "3, 2,  6, 0 2 3 4",
        "4, 3, 12, 0 3 4 6 8 9",
        "5, 2, 10, 0 2 4 5 6 8",
        "5, 3, 15, 0 3 5 6 9 10 12",
        "5, 4, 20, 0 4 5 8 10 12 15 16",
        "7, 2, 14, 0 2 4 6 7 8 10 12",
        "7, 3, 21, 0 3 6 7 9 12 14 15 18",
        "7, 4, 28, 0 4 7 8 12 14 16 20 21 24",
        "8, 3, 24, 0 3 6 8 9 12 15 16 18 21",
    })
    void combinedAttacks(int a, int b, int grid, String table) {
        TreeSet<Offset> attacks = new TreeSet<>();
        for (int i = 0; i < a; i++) {
            attacks.add(Offset.of(i, a));
        }
        for (int i = 0; i < b; i++) {
            attacks.add(Offset.of(i, b));
        }
        List<Offset> both = List.copyOf(attacks);
        assertEquals(grid, CoveringGrid.parts(Offset.ZERO, Offset.of(1, 1), both, BeatGrids.LARGEST_DIVISION));
        assertEquals(grid, CoveringGrid.parts(Offset.ZERO, Offset.of(1, 1), both));
        assertEquals(0, CoveringGrid.parts(Offset.ZERO, Offset.of(1, 1), both, grid - 1));
        Duration unit = CoveringGrid.unit(Offset.ZERO, Offset.of(1, 1), both);
        List<Long> places = both.stream().map(o -> o.sinceStart().floorOver(unit)).toList();
        assertEquals(table, places.stream().map(String::valueOf).collect(Collectors.joining(" ")));

        // arithmetic: a + b − gcd attacks, and the gaps read the same from both ends
        List<Long> gaps = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            gaps.add((i + 1 < places.size() ? places.get(i + 1) : grid) - places.get(i));
        }
        List<Long> reversed = new ArrayList<>(gaps);
        Collections.reverse(reversed);
        assertEquals(reversed, gaps);
        assertEquals(a + b - Divisors.gcd(a, b), places.size());
    }

    /** The grid per beat for n notes over m beats is n / gcd(n, m); arithmetic. */
    @Test
    void notesOverBeats() {
        for (int n = 2; n <= 13; n++) {
            for (int m = 2; m <= 7; m++) {
                TreeSet<Offset> positions = new TreeSet<>();
                for (int i = 0; i < n; i++) {
                    positions.add(Offset.of((long) i * m, 4L * n));
                }
                for (int i = 0; i < m; i++) {
                    positions.add(Offset.of(i, 4));
                }
                long parts = CoveringGrid.parts(Offset.ZERO, Offset.of(m, 4), positions,
                        BeatGrids.LARGEST_DIVISION);
                assertEquals(n / Divisors.gcd(n, m), parts / m, n + " over " + m);
            }
        }
    }

    /** The parts of a beat that cover a rhythm, and that the planner counts when it stands alone; arithmetic. */
    @ParameterizedTest(name = "{0} -> {1}")
    @CsvSource(delimiter = ';', value = {
        "8. 16; 4", "8 16 16; 4", "3:2[8 8 8]; 3", "3:2[16 16 8 8]; 6", "8 3:2[16 16 16]; 6",
        "3:2[8 8 3:2[16 16 16]]; 9", "5:4[16 16 16 16 16]; 5", "7:4[16 16 16 16 16 16 16]; 7",
    })
    void coveringGridOfABeat(String rhythm, int parts) {
        assertEquals(List.of(Duration.of(1, 4L * parts)), units(Meter.of(1, 4), rhythm));
    }

    @ParameterizedTest(name = "{0} -> {2}")
    @CsvSource(delimiter = ';', value = {
        "3:2[4 4 4]; 2; 3", "3:2[2 2 2]; 4; 3", "5:4[4 4 4 4 4]; 4; 5", "7:4[4 4 4 4 4 4 4]; 4; 7", "4. 8; 2; 2",
        "4.. 16; 2; 4",
    })
    void coveringGridOverBeats(String rhythm, int beats, int parts) {
        assertEquals(List.of(Duration.of(1, 4L * parts)), units(Meter.of(beats, 4), rhythm));
    }

    @ParameterizedTest(name = "6/8: {0} -> {1}")
    @CsvSource(delimiter = ';', value = {"2:3[8 8]; 2", "4:3[8 8 8 8]; 4", "8 8 8; 3"})
    void coveringGridOfADottedBeat(String rhythm, int parts) {
        assertEquals(List.of(Duration.of(3, 8L * parts)), units(Meter.of(6, 8), rhythm + " " + rhythm));
    }

    private static List<Duration> units(Meter meter, String rhythm) {
        // slow enough that every one of these can be said
        PartTimeline part = Bars.of(meter, 40, rhythm);
        return Planner.plan(part, PlanOptions.DEFAULT).bars().get(0).segments().stream().map(Segment::unit).distinct()
                .toList();
    }
}
