package countstave.chart.layout;

import countstave.score.Bar;
import countstave.score.Event;
import countstave.score.Part;
import countstave.score.StaffChange;
import countstave.score.Voice;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** Staves of tablature that only say again what a notated staff of the part says: who counts reads one of the two. */
final class TabStaves {

    private TabStaves() {
    }

    /** @param staves those that would be drawn */
    static List<Integer> doubled(Part part, List<Integer> staves) {
        List<Integer> notated = staves.stream().filter(s -> !isTab(part, s)).toList();
        List<Integer> doubled = new ArrayList<>();
        for (int staff : staves) {
            if (isTab(part, staff) && notated.stream().anyMatch(other -> saysTheSame(part, staff, other))) {
                doubled.add(staff);
            }
        }
        return doubled;
    }

    /** By the first clef of the staff. */
    private static boolean isTab(Part part, int staff) {
        for (Bar bar : part.bars()) {
            for (StaffChange change : bar.markings().staves()) {
                if (change.clef() != null && (change.staff() == 0 || change.staff() == staff)) {
                    return change.clef().sign().equals("TAB");
                }
            }
        }
        return false;
    }

    private static boolean saysTheSame(Part part, int staff, int other) {
        return part.bars().stream().allMatch(bar -> attacks(bar, staff).equals(attacks(bar, other)));
    }

    private static TreeSet<Offset> attacks(Bar bar, int staff) {
        TreeSet<Offset> attacks = new TreeSet<>();
        for (Voice voice : bar.voices()) {
            for (Event event : voice.events()) {
                if (event.staff() == staff && event.isNote() && !event.isGrace()) {
                    attacks.add(event.start());
                }
            }
        }
        return attacks;
    }
}
