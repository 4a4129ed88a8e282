package countstave;

import static countstave.WrittenNote.child;
import static countstave.WrittenNote.children;

import countstave.time.Duration;
import countstave.time.Proportion;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.w3c.dom.Element;

/** Beams, tuplet brackets and ties that begin and do not end, or the reverse, or do not hold what they should. */
final class LooseEnds {

    private static final Map<String, Integer> FLAGS = Map.of("eighth", 1, "16th", 2, "32nd", 3);

    private LooseEnds() {
    }

    static Collection<List<WrittenNote>> byVoice(List<WrittenNote> notes) {
        return notes.stream().collect(Collectors.groupingBy(note -> note.part() + note.voice(), LinkedHashMap::new,
                Collectors.toList())).values();
    }

    /** Every level begins, goes on and ends on neighbouring notes; a beamed note has as many as its type has flags. */
    static List<String> ofBeams(List<WrittenNote> notes) {
        List<String> loose = new ArrayList<>();
        Set<String> open = new TreeSet<>();
        for (WrittenNote note : notes) {
            List<Element> beams = children(note.element(), "beam");
            if (!beams.stream().map(beam -> beam.getAttribute("number")).toList().containsAll(open)) {
                loose.add(where(note) + "beam left open");
                open.clear();
            }
            Element type = child(note.element(), "type");
            if (!beams.isEmpty() && beams.size() != FLAGS.getOrDefault(type.getTextContent(), 0)) {
                loose.add(where(note) + beams.size() + " beams");
            }
            for (Element beam : beams) {
                String level = beam.getAttribute("number");
                boolean fits = switch (beam.getTextContent()) {
                    case "begin" -> open.add(level);
                    case "continue" -> open.contains(level);
                    case "end" -> open.remove(level);
                    default -> !open.contains(level);
                };
                if (!fits) {
                    loose.add(where(note) + "beam " + level + " " + beam.getTextContent());
                }
            }
        }
        return loose;
    }

    /** Every bracket starts and stops in its bar, stands over all notes that have a ratio, and holds n in the time of m. */
    static List<String> ofTuplets(List<WrittenNote> notes) {
        List<String> loose = new ArrayList<>();
        Map<String, Bracket> open = new TreeMap<>();
        for (WrittenNote note : notes) {
            for (Element tuplet : note.notations("tuplet")) {
                if (tuplet.getAttribute("type").equals("start")) {
                    Proportion outer = open.values().stream().map(Bracket::factor).reduce((a, b) -> b).orElse(Proportion.ONE);
                    open.put(tuplet.getAttribute("number"), Bracket.start(note, tuplet, outer));
                }
            }
            if ((child(note.element(), "time-modification") == null) != open.isEmpty()) {
                loose.add(where(note) + "a ratio without a bracket, or the reverse");
            }
            for (Element tuplet : note.notations("tuplet")) {
                String number = tuplet.getAttribute("number");
                if (tuplet.getAttribute("type").equals("stop")) {
                    Bracket bracket = open.remove(number);
                    if (bracket == null) {
                        loose.add(where(note) + "tuplet " + number + " stops and never began");
                    } else if (!bracket.length().equals(note.end().minus(bracket.from()))) {
                        loose.add(where(note) + "tuplet " + number + " lasts " + note.end().minus(bracket.from()) + ", not "
                                + bracket.length());
                    }
                }
            }
            if (note.end().equals(note.meter())) {
                open.keySet().forEach(number -> loose.add(where(note) + "tuplet " + number + " is not closed"));
                open.clear();
            }
        }
        return loose;
    }

    /**
     * A tuplet bracket that has begun.
     *
     * @param from where, from the bar's start
     * @param length how long it should last: m of its unit, under the bracket around it
     * @param factor what it makes of a whole note, times the bracket around it
     */
    private record Bracket(Duration from, Duration length, Proportion factor) {

        static Bracket start(WrittenNote note, Element tuplet, Proportion outer) {
            Element change = child(note.element(), "time-modification");
            boolean own = child(tuplet, "tuplet-normal") != null;
            long actual = own ? WrittenNote.number(child(tuplet, "tuplet-actual"), "tuplet-number")
                    : WrittenNote.number(change, "actual-notes");
            long normal = own ? WrittenNote.number(child(tuplet, "tuplet-normal"), "tuplet-number")
                    : WrittenNote.number(change, "normal-notes");
            Duration unit = WrittenNote.TYPES.get(child(change, "normal-type").getTextContent());
            return new Bracket(note.start(), unit.times(normal).times(outer),
                    outer.times(Proportion.of(normal, actual)));
        }
    }

    /** Every tie ends on the next note of its voice, at the same place. */
    static List<String> ofTies(List<WrittenNote> notes) {
        List<String> loose = new ArrayList<>();
        WrittenNote from = null;
        for (WrittenNote note : notes) {
            List<String> ties = children(note.element(), "tie").stream().map(tie -> tie.getAttribute("type")).toList();
            if (from != null && (!ties.contains("stop") || !from.place().equals(note.place()))) {
                loose.add(where(from) + "tie of " + from.place() + " to " + (note.isRest() ? "a rest" : note.place()));
            } else if (from == null && ties.contains("stop")) {
                loose.add(where(note) + "tie from nothing");
            }
            from = ties.contains("start") ? note : null;
        }
        if (from != null) {
            loose.add(where(from) + "tie of " + from.place() + " to nothing");
        }
        return loose;
    }

    private static String where(WrittenNote note) {
        return note.part() + " bar " + note.bar() + ": ";
    }
}
