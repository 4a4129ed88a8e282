package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The plan of days, read from the printed plan as a player reads it: day after day, with nothing but the page. */
class PracticeDaysTest {

    private static final Pattern DAY = Pattern.compile("   Day ([0-9]+)(?:, (\\w{3} \\d{4}-\\d\\d-\\d\\d))?: (.*)");
    private static final String WHOLE = "the whole part";

    /** What is done on each day, by what it is called; the whole part by its name. */
    private static Map<Integer, List<String>> days(String text) {
        Map<Integer, List<String>> days = new LinkedHashMap<>();
        for (String line : text.lines().toList()) {
            Matcher day = DAY.matcher(line);
            if (day.matches()) {
                List<String> things = new ArrayList<>();
                for (String group : day.group(3).split("; ")) {
                    if (group.startsWith(WHOLE)) {
                        things.add(WHOLE);
                    } else if (group.contains(" min: ")) {
                        things.addAll(List.of(group.substring(group.indexOf(" min: ") + 6).split(" ")));
                    }
                }
                days.put(Integer.parseInt(day.group(1)), things);
            }
        }
        return days;
    }

    @ParameterizedTest
    @CsvSource({"dense, 14, 30", "dense, 5, 60", "polyrhythms, 14, 20", "groove, 10, 30", "song, 14, 30", "meters, 21, 45"})
    void asAPlayerReadsIt(String score, int length, int minutes) {
        Run run = Run.of("practice", "scores/" + score + ".musicxml", "--part", "1", "--days", String.valueOf(length),
                "--minutes", String.valueOf(minutes));
        assertEquals(0, run.code(), run.err());
        Map<Integer, List<String>> days = days(run.out());
        assertEquals(length, days.size());
        List<String> order = new ArrayList<>();
        Map<String, Integer> first = new LinkedHashMap<>();
        days.forEach((day, things) -> things.forEach(thing -> {
            if (first.putIfAbsent(thing, day) == null) {
                order.add(thing);
            }
        }));
        // every seam that the pages below name is met before its passage, every passage before the whole
        Matcher seams = Pattern.compile("   Seam (([0-9]+)[a-z]+), ").matcher(run.out());
        int looked = 0;
        while (seams.find()) {
            if (first.containsKey(seams.group(2))) {
                assertTrue(order.contains(seams.group(1)), seams.group(1) + " is never met");
                assertTrue(order.indexOf(seams.group(1)) < order.indexOf(seams.group(2)), seams.group(1) + " comes late");
                looked++;
            }
        }
        assertTrue(looked > 0, run.out());
        assertEquals(order.size() - 1, order.indexOf(WHOLE), order.toString());
        // nothing is new on the last two days, and there is work on both
        first.forEach((thing, day) -> assertTrue(day <= length - 2, thing + " is new on day " + day));
        assertFalse(days.get(length).isEmpty());
        assertTrue(days.get(length).contains(WHOLE));
        // a rest in each week
        for (int day = 7; day < length; day += 7) {
            assertTrue(days.get(day).isEmpty());
        }
    }

    @Test
    void datedOnlyOnDemand() {
        String dated = Run.of("practice", "scores/groove.musicxml", "--start", "2026-12-01").out();
        List<String> dates = dated.lines().map(DAY::matcher).filter(Matcher::matches).map(m -> m.group(2)).toList();
        assertEquals(14, dates.size());
        assertEquals("Tue 2026-12-01", dates.get(0));
        assertEquals("Mon 2026-12-14", dates.get(13));
        assertFalse(Run.of("practice", "scores/groove.musicxml", "--days", "7").out().contains("2026-"));
        assertEquals(Map.of(), days(Run.of("practice", "scores/groove.musicxml").out()));
    }

    /** The rule for going on, the rest and the spacing are told where the days are. */
    @Test
    void theRulesAreTold() {
        String text = Run.of("practice", "scores/groove.musicxml", "--days", "14").out();
        for (String rule : List.of("Two clean days at a tempo: one step up. Two errors in a row: two steps back.",
                "the harder half comes more often", "Day 7: rest")) {
            assertTrue(text.contains(rule), rule);
        }
        String early = text.lines().filter(l -> l.startsWith("   Day ")).limit(2).collect(Collectors.joining());
        assertTrue(early.contains("seams of yesterday"), early);
    }
}
