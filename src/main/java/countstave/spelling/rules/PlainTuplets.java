package countstave.spelling.rules;

import countstave.score.Tuplet;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Sounds;
import countstave.spelling.Suggestion;
import countstave.spelling.respell.Group;
import countstave.time.Offset;
import java.util.TreeSet;

/** Whether a tuplet can be written without one. */
final class PlainTuplets {

    private PlainTuplets() {
    }

    /** The tuplet's stretch in plain note values; null where some attack or release needs the tuplet. */
    static Suggestion plain(BarView bar, Voice voice, Tuplet tuplet) {
        TreeSet<Offset> edges = TupletRule.edges(voice, tuplet.start(), tuplet.end());
        boolean plain = edges != null && bar.frame().isPlain(tuplet.start()) && bar.frame().isPlain(tuplet.end())
                && edges.stream().allMatch(bar.frame()::isPlain);
        Suggestion suggestion = plain ? Sounds.respell(bar.frame(), voice, tuplet.start(), tuplet.end()) : null;
        boolean spelled = suggestion != null && suggestion.items().stream().noneMatch(Group.class::isInstance);
        return spelled ? suggestion : null;
    }
}
