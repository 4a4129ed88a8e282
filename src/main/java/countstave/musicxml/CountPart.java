package countstave.musicxml;

import countstave.count.BarCounts;
import countstave.count.ChangeMark;
import countstave.count.ChangeWords;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.plain.MarkupText;
import countstave.score.Bar;
import countstave.score.Meter;
import countstave.score.Part;
import countstave.score.ScoreException;
import countstave.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Adds a one-line percussion part that has the whole grid written out, with its words as lyrics, for programs that show
 * notes better than lyrics between notes. Unplayed positions have small heads in parentheses.
 *
 * <p>Like every annotation it is spliced in, and {@link OwnMarks#strip} takes it out.
 */
public final class CountPart {

    private static final long MOST_DIVISIONS = 1_000_000_000;

    private final Splice splice;
    private final NoteNames names;
    private final ScorePlaces places;
    private final Ids ids;

    /** The ids that are taken. */
    private record Ids(List<String> taken) {

        String free(int number) {
            String id = "COUNT" + number;
            while (taken.contains(id)) {
                id += "C";
            }
            return id;
        }
    }

    private CountPart(String text, List<Part> parts, NoteNames names) {
        this.names = names;
        splice = new Splice(text);
        places = ScorePlaces.of(text);
        ids = new Ids(parts.stream().map(Part::id).toList());
    }

    /**
     * @param text a score's text without annotations of countstave
     * @param scoreParts all parts of the score
     * @param counted the counts, one added part for each
     * @param names the language
     * @throws ScoreException if the grid cannot be written in note values
     */
    public static Splice annotate(String text, List<Part> scoreParts, List<PartCounts> counted, NoteNames names) {
        CountPart writer = new CountPart(text, scoreParts, names);
        int number = 1;
        for (PartCounts part : counted) {
            writer.add(part, writer.ids.free(number++), counted.size() > 1);
        }
        return writer.splice;
    }

    private void add(PartCounts counts, String id, boolean several) {
        Part part = counts.part();
        String name = several ? names.phrase("part.count.of", part.name()) : names.phrase("part.count");
        String listIndent = splice.indentOfElementEndingAt(places.partListEnd());
        splice.insert(places.partListEnd(), inner(listIndent) + "<score-part id=\"" + id + "\">" + OwnMarks.MARK
                + "<part-name>" + MarkupText.text(name) + "</part-name><score-instrument id=\"" + id
                + "-I1\"><instrument-name>Count</instrument-name></score-instrument></score-part>");
        List<String> bars = bars(counts);
        if (places.timewise()) {
            for (int i = 0; i < bars.size() && i < places.partSlots().size(); i++) {
                int slot = places.partSlots().get(i);
                splice.insert(slot, inner(splice.indentAt(slot)) + "<part id=\"" + id + "\">" + OwnMarks.MARK + bars.get(i)
                        + "</part>");
            }
            return;
        }
        int slot = places.partSlots().get(0);
        StringBuilder all = new StringBuilder(inner(splice.indentAt(slot))).append("<part id=\"").append(id).append("\">")
                .append(OwnMarks.MARK);
        for (int i = 0; i < bars.size(); i++) {
            Bar bar = part.bars().get(i);
            all.append("\n<measure number=\"").append(MarkupText.quoted(bar.number()))
                    .append(bar.name().implicit() ? "\" implicit=\"yes\">" : "\">")
                    .append(bars.get(i)).append("</measure>");
        }
        splice.insert(slot, all.append("</part>").toString());
    }

    /** The indentation of something inside an element whose closing tag is indented like this. */
    private static String inner(String indent) {
        return indent.isEmpty() ? "" : indent + "  ";
    }

    private List<String> bars(PartCounts counts) {
        Part part = counts.part();
        Map<Integer, BarCounts> counted = new HashMap<>();
        Map<Integer, List<ChangeMark>> marks = new HashMap<>();
        ChangeWords words = new ChangeWords(counts.plan().options());
        for (BarCounts bar : counts.bars()) {
            int index = bar.bar().index();
            counted.put(index, bar);
            marks.put(index, words.next(bar.plan()));
        }
        long divisions = divisions(counts);
        List<String> bars = new ArrayList<>();
        for (Bar bar : part.bars()) {
            StringBuilder content = new StringBuilder(attributes(bar, bars.isEmpty() ? divisions : 0));
            BarCounts countedBar = counted.get(bar.index());
            if (countedBar == null || countedBar.segments().isEmpty()) {
                rest(bar, divisions, content);
            } else {
                new CountNotes(countedBar, marks.get(bar.index()), names, divisions, content).write();
            }
            bars.add(content.append('\n').toString());
        }
        return bars;
    }

    /** The fewest divisions of a quarter in which every unit and every bar is whole. */
    private static long divisions(PartCounts counts) {
        Duration common = Duration.QUARTER;
        for (Bar bar : counts.part().bars()) {
            common = common.gcd(bar.length());
        }
        for (BarCounts bar : counts.bars()) {
            for (var segment : bar.segments()) {
                common = common.gcd(segment.segment().unit());
            }
        }
        long divisions = Duration.QUARTER.over(common).numerator();
        if (divisions > MOST_DIVISIONS) {
            throw new ScoreException("part " + counts.part().name()
                    + ": its counts are too finely divided for a part of their own; use --as lyrics");
        }
        return divisions;
    }

    private static void rest(Bar bar, long divisions, StringBuilder content) {
        if (bar.length().isPositive()) {
            content.append("\n<note><rest measure=\"yes\"/><duration>")
                    .append(CountNotes.inDivisions(bar.length(), divisions))
                    .append("</duration><voice>1</voice></note>");
        }
    }

    /** @param divisions to be declared in the first bar, else 0 */
    private static String attributes(Bar bar, long divisions) {
        if (divisions == 0 && !bar.look().meterShown()) {
            return "";
        }
        StringBuilder text = new StringBuilder("\n<attributes>");
        if (divisions > 0) {
            text.append("<divisions>").append(divisions).append("</divisions><key><fifths>0</fifths></key>");
        }
        text.append(time(bar.meter()));
        if (divisions > 0) {
            text.append("<clef><sign>percussion</sign></clef><staff-details><staff-lines>1</staff-lines></staff-details>");
        }
        return text.append("</attributes>").toString();
    }

    private static String time(Meter meter) {
        if (meter.isSenzaMisura()) {
            return "<time><senza-misura/></time>";
        }
        String symbol = switch (meter.symbol()) {
            case COMMON -> " symbol=\"common\"";
            case CUT -> " symbol=\"cut\"";
            default -> "";
        };
        StringBuilder time = new StringBuilder("<time").append(symbol).append('>');
        for (Meter.Component component : meter.components()) {
            String text = component.toString();
            int slash = text.indexOf('/');
            time.append("<beats>").append(text, 0, slash).append("</beats><beat-type>")
                    .append(text.substring(slash + 1)).append("</beat-type>");
        }
        return time.append("</time>").toString();
    }
}
