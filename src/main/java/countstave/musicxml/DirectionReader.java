package countstave.musicxml;

import countstave.score.Direction;
import countstave.score.Direction.MetronomeMark;
import countstave.score.NoteValue;
import countstave.score.Placement;
import countstave.score.StyledText;
import countstave.score.Swing;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import org.audiveris.proxymusic.DirectionType;
import org.audiveris.proxymusic.Dynamics;
import org.audiveris.proxymusic.FontStyle;
import org.audiveris.proxymusic.FontWeight;
import org.audiveris.proxymusic.FormattedTextId;
import org.audiveris.proxymusic.Metronome;
import org.audiveris.proxymusic.OtherText;
import org.audiveris.proxymusic.YesNo;

/** What one {@code direction} prints, and the tempo and swing that it sets. */
final class DirectionReader {

    private final Offset at;
    private final int staff;
    private final Placement placement;
    private final List<MetronomeTrail> trails;
    private int trail;
    private final List<Direction> directions = new ArrayList<>();
    private final List<TempoMark> tempi = new ArrayList<>();
    private final List<SwingMark> swings = new ArrayList<>();

    /**
     * @param at where it is printed, from the bar's start
     * @param staff staff of the part
     * @param trails the note values of its metronome marks
     */
    DirectionReader(org.audiveris.proxymusic.Direction direction, Offset at, int staff, List<MetronomeTrail> trails) {
        this.at = at;
        this.staff = staff;
        this.placement = NotationReader.placement(direction.getPlacement());
        this.trails = trails;
        for (DirectionType type : direction.getDirectionType()) {
            read(type);
        }
    }

    List<Direction> directions() {
        return directions;
    }

    /** Tempi, placed where the mark is printed. */
    List<TempoMark> tempi() {
        return tempi;
    }

    /** What it says of swing, placed where it is printed. */
    List<SwingMark> swings() {
        return swings;
    }

    private void read(DirectionType type) {
        if (type.getMetronome() != null) {
            metronome(type.getMetronome());
        } else if (!type.getWordsOrSymbol().isEmpty()) {
            words(texts(type.getWordsOrSymbol()), pieces(type.getWordsOrSymbol()));
        } else if (!type.getRehearsal().isEmpty()) {
            add(Direction.Kind.REHEARSAL, texts(type.getRehearsal()));
        } else if (!type.getDynamics().isEmpty()) {
            type.getDynamics().forEach(d -> dynamics(d).forEach(sign -> add(Direction.Kind.DYNAMICS, sign)));
        } else if (!type.getSegno().isEmpty()) {
            add(Direction.Kind.SEGNO, "");
        } else if (!type.getCoda().isEmpty()) {
            add(Direction.Kind.CODA, "");
        } else if (LineReader.mark(type) != null) {
            directions.add(new Direction(at, staff, Direction.Kind.LINE, otherName(type), null, placement,
                    LineReader.mark(type)));
        } else {
            add(Direction.Kind.OTHER, otherName(type));
        }
    }

    private void words(String text, List<StyledText> pieces) {
        directions.add(new Direction(at, staff, Direction.Kind.WORDS, text, null, placement, null, pieces));
        Swing swing = SwingWords.read(text);
        if (swing != null) {
            swings.add(new SwingMark(at, SwingMark.Kind.WORDS, swing));
        }
    }

    /** The signs of a group of dynamics ("mf"), or their words. */
    static List<String> dynamics(Dynamics dynamics) {
        return dynamics.getPOrPpOrPpp().stream().map(e -> e.getValue() instanceof OtherText text
                ? Plain.line(text.getValue()) : e.getName().getLocalPart()).toList();
    }

    private void metronome(Metronome metronome) {
        List<MetronomeTrail.Side> sides = trail < trails.size() ? trails.get(trail++).sides() : List.of();
        MetronomeMark mark = MetronomeReader.mark(metronome, sides);
        TempoMark tempo = MetronomeReader.tempo(metronome, sides, at);
        if (tempo != null) {
            tempi.add(tempo);
        }
        Swing swing = MetronomeReader.swing(sides);
        if (swing != null) {
            swings.add(new SwingMark(at, SwingMark.Kind.EQUATION, swing));
        }
        if (mark != null && metronome.getPrintObject() != YesNo.NO) {
            directions.add(new Direction(at, staff, Direction.Kind.METRONOME, text(mark), mark, placement));
        }
    }

    private void add(Direction.Kind kind, String text) {
        directions.add(new Direction(at, staff, kind, text, null, placement));
    }

    private static String texts(List<?> pieces) {
        StringBuilder text = new StringBuilder();
        for (Object piece : pieces) {
            if (piece instanceof FormattedTextId words && words.getValue() != null) {
                text.append(text.isEmpty() ? "" : " ").append(words.getValue());
            }
        }
        return Plain.line(text.toString());
    }

    private static List<StyledText> pieces(List<?> pieces) {
        List<StyledText> styled = new ArrayList<>();
        for (Object piece : pieces) {
            if (piece instanceof FormattedTextId words && words.getValue() != null && !words.getValue().isBlank()) {
                styled.add(new StyledText(Plain.line(words.getValue()),
                        words.getFontWeight() == null ? null : words.getFontWeight() == FontWeight.BOLD,
                        words.getFontStyle() == null ? null : words.getFontStyle() == FontStyle.ITALIC));
            }
        }
        return List.copyOf(styled);
    }

    private static String text(MetronomeMark mark) {
        String right = mark.otherValue() != null ? value(mark.otherValue(), mark.otherDots())
                : mark.perMinute() == null ? "" : mark.perMinute();
        return value(mark.value(), mark.dots()) + " = " + right;
    }

    /** Note values that every common font has are shown, the others named. */
    private static String value(NoteValue value, int dots) {
        String shown = switch (value) {
            case QUARTER -> "♩";
            case EIGHTH -> "♪";
            default -> value.xmlName();
        };
        return shown + ".".repeat(dots);
    }

    private static String otherName(DirectionType type) {
        Object[] kinds = {type.getWedge(), type.getDashes(), type.getBracket(), type.getPedal(), type.getOctaveShift(),
            type.getHarpPedals(), type.getStringMute(), type.getScordatura(), type.getImage(),
            type.getPrincipalVoice(), type.getAccordionRegistration(), type.getStaffDivide(),
            type.getOtherDirection()};
        for (Object kind : kinds) {
            if (kind != null) {
                return NotationReader.kebab(kind.getClass().getSimpleName());
            }
        }
        return type.getDamp() != null ? "damp" : type.getDampAll() != null ? "damp-all"
                : type.getEyeglasses() != null ? "eyeglasses" : !type.getPercussion().isEmpty() ? "percussion" : "other";
    }
}
