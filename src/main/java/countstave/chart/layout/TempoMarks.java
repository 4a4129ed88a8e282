package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Text;
import countstave.score.Direction;
import countstave.score.NoteValue;
import countstave.score.Placement;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;

/**
 * The metronome marks of a bar, each with the words on its line: what stands before it at the same moment says the tempo
 * too, or opens its parentheses, and a sign alone behind it closes them (common practice, no source). A mark that stands at one
 * moment twice, as in a file that has it on two staves, is drawn once.
 */
final class TempoMarks {

    /** Signs that belong to what they stand beside. */
    private static final String SIGNS = "[()\\[\\].,:;\u2013-]+";
    private static final String GAP = "  ";

    /**
     * A mark.
     *
     * @param before words before it, in order
     * @param after what closes it, or null
     */
    private record Line(Direction mark, List<Direction> before, Direction after) {
    }

    private final List<Line> lines = new ArrayList<>();
    private final Set<Direction> taken = Collections.newSetFromMap(new IdentityHashMap<>());

    TempoMarks(List<Direction> directions) {
        for (int i = 0; i < directions.size(); i++) {
            Direction mark = directions.get(i);
            if (mark.kind() == Direction.Kind.METRONOME) {
                List<Direction> before = before(directions, i);
                Line line = new Line(mark, before, after(directions, i, before));
                taken.addAll(line.before());
                taken.add(line.after());
                if (lines.stream().noneMatch(known -> isSame(known, line))) {
                    lines.add(line);
                }
            }
        }
    }

    /** Whether these words stand on the line of a mark. */
    boolean hasTaken(Direction words) {
        return taken.contains(words);
    }

    private List<Direction> before(List<Direction> directions, int mark) {
        List<Direction> before = new ArrayList<>();
        for (int i = mark - 1; i >= 0 && isLetThrough(directions.get(i), directions.get(mark)); i--) {
            if (directions.get(i).kind() == Direction.Kind.WORDS) {
                before.add(0, directions.get(i));
                if (!directions.get(i).text().matches(SIGNS)) {
                    break;
                }
            }
        }
        Direction behind = mark + 1 < directions.size() ? directions.get(mark + 1) : null;
        if (before.isEmpty() && behind != null && isBeside(behind, directions.get(mark)) && isBold(behind)) {
            before.add(behind);
        }
        return before;
    }

    private Direction after(List<Direction> directions, int mark, List<Direction> line) {
        Direction behind = mark + 1 < directions.size() ? directions.get(mark + 1) : null;
        boolean closes = behind != null && isBeside(behind, directions.get(mark)) && !line.contains(behind)
                && (behind.text().matches(SIGNS) || isOpen(line) && behind.text().matches(".*[)\\]]"));
        return closes ? behind : null;
    }

    private static boolean isOpen(List<Direction> line) {
        return !line.isEmpty() && line.get(line.size() - 1).text().matches(".*[(\\[]");
    }

    /** Other signs at the same moment, as a rehearsal letter, may stand between words and mark. */
    private boolean isLetThrough(Direction before, Direction mark) {
        return before.kind() == Direction.Kind.WORDS ? isBeside(before, mark)
                : before.kind() != Direction.Kind.METRONOME && before.at().equals(mark.at());
    }

    private boolean isBeside(Direction words, Direction mark) {
        return words.kind() == Direction.Kind.WORDS && words.placement() != Placement.BELOW && words.at().equals(mark.at())
                && words.staff() == mark.staff() && !taken.contains(words);
    }

    /** Words in bold letters are a tempo, whichever of the two the file has first. */
    private static boolean isBold(Direction words) {
        return !words.pieces().isEmpty() && words.pieces().stream().allMatch(p -> Boolean.TRUE.equals(p.bold()));
    }

    private static boolean isSame(Line one, Line other) {
        List<String> words = other.before().stream().map(Direction::text).toList();
        return one.mark().at().equals(other.mark().at()) && one.mark().mark().equals(other.mark().mark())
                && one.mark().text().equals(other.mark().text())
                && (words.isEmpty() || words.equals(one.before().stream().map(Direction::text).toList()));
    }

    /** Something that is printed above a moment. */
    interface Above {
        void put(Inline line, Offset at);
    }

    void draw(Measures measures, Above above) {
        for (Line line : lines) {
            Inline drawn = Inline.EMPTY;
            for (Direction words : line.before()) {
                drawn = drawn.then(WordFaces.line(words, Text.Style.BOLD, Sizes.TEMPO, Role.TEMPO, measures),
                        drawn == Inline.EMPTY ? "" : " ", Sizes.TEMPO, measures);
            }
            Inline mark = Inline.of(words(line.mark()), Sizes.TEMPO, Text.Style.BOLD, Role.TEMPO, line.mark().at(), measures);
            drawn = drawn.then(mark, drawn == Inline.EMPTY || isOpen(line.before()) ? "" : GAP, Sizes.TEMPO, measures);
            if (line.after() != null) {
                drawn = drawn.then(WordFaces.line(line.after(), Text.Style.BOLD, Sizes.TEMPO, Role.TEMPO, measures), "",
                        Sizes.TEMPO, measures);
            }
            above.put(drawn, line.mark().at());
        }
    }

    private static String words(Direction direction) {
        Direction.MetronomeMark mark = direction.mark();
        if (mark == null) {
            return direction.text();
        }
        String words = note(mark.value(), mark.dots()) + " = "
                + (mark.otherValue() != null ? note(mark.otherValue(), mark.otherDots()) : mark.perMinute());
        return mark.parentheses() ? "(" + words + ")" : words;
    }

    /** A note value as Unicode text, which {@link Inline} draws from the music font. */
    static String note(NoteValue value, int dots) {
        String sign = switch (value) {
            case MAXIMA, LONG, BREVE -> new String(Character.toChars(0x1D15C));
            case WHOLE -> new String(Character.toChars(0x1D15D));
            case HALF -> new String(Character.toChars(0x1D15E));
            case QUARTER -> "♩";
            case EIGHTH -> "♪";
            case SIXTEENTH -> new String(Character.toChars(0x1D161));
            case THIRTY_SECOND -> new String(Character.toChars(0x1D162));
            case SIXTY_FOURTH -> new String(Character.toChars(0x1D163));
            default -> new String(Character.toChars(0x1D164));
        };
        return sign + new String(Character.toChars(0x1D16D)).repeat(dots);
    }
}
