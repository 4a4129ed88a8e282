package countstave.chart.engrave;

import countstave.score.Head;
import countstave.score.NoteValue;
import java.util.Map;

/** From MusicXML's names to the canonical names of the SMuFL standard. */
final class Signs {

    private static final Map<String, String> ACCIDENTALS = Map.ofEntries(
            Map.entry("sharp", "accidentalSharp"), Map.entry("natural", "accidentalNatural"),
            Map.entry("flat", "accidentalFlat"), Map.entry("double-sharp", "accidentalDoubleSharp"),
            Map.entry("sharp-sharp", "accidentalSharpSharp"), Map.entry("flat-flat", "accidentalDoubleFlat"),
            Map.entry("double-flat", "accidentalDoubleFlat"), Map.entry("natural-sharp", "accidentalNaturalSharp"),
            Map.entry("natural-flat", "accidentalNaturalFlat"), Map.entry("triple-sharp", "accidentalTripleSharp"),
            Map.entry("triple-flat", "accidentalTripleFlat"),
            Map.entry("quarter-flat", "accidentalQuarterToneFlatStein"),
            Map.entry("quarter-sharp", "accidentalQuarterToneSharpStein"),
            Map.entry("three-quarters-flat", "accidentalThreeQuarterTonesFlatZimmermann"),
            Map.entry("three-quarters-sharp", "accidentalThreeQuarterTonesSharpStein"));

    private static final Map<String, String> HEAD_FAMILIES = Map.ofEntries(
            Map.entry("normal", "notehead"), Map.entry("x", "noteheadX"), Map.entry("cross", "noteheadPlus"),
            Map.entry("circle-x", "noteheadCircleX"), Map.entry("diamond", "noteheadDiamond"),
            Map.entry("triangle", "noteheadTriangleUp"), Map.entry("inverted triangle", "noteheadTriangleDown"),
            Map.entry("do", "noteheadTriangleUp"));

    private Signs() {
    }

    /** The sign of an accidental, or null if it is not drawn. */
    static String accidental(String name) {
        return ACCIDENTALS.get(name);
    }

    /** Whether this MusicXML {@code notehead} value is drawn as such. */
    static boolean knowsHead(String shape) {
        return HEAD_FAMILIES.containsKey(shape) || switch (shape) {
            case "slash", "square", "rectangle", "la", "left triangle", "circled", "slashed", "back slashed", "none" ->
                true;
            default -> false;
        };
    }

    /** The notehead of a value (quarter where null): black, half, whole, breve, unless {@code filled} says otherwise. */
    static String head(Head head, NoteValue value) {
        return head(head.shape(), head.filled(), value == null ? NoteValue.QUARTER : value);
    }

    static String head(String shape, Boolean filled, NoteValue value) {
        String kind = kind(value);
        if (filled != null && !kind.endsWith("hole")) {
            kind = filled ? "Black" : "Half";
        }
        boolean black = kind.equals("Black");
        switch (shape) {
            case "slash":
                return switch (kind) {
                    case "Black" -> "noteheadSlashHorizontalEnds";
                    case "Half" -> "noteheadSlashWhiteHalf";
                    default -> "noteheadSlashWhiteWhole";
                };
            case "square", "rectangle", "la":
                return black ? "noteheadSquareBlack" : "noteheadSquareWhite";
            case "left triangle":
                return black ? "noteheadTriangleLeftBlack" : "noteheadTriangleLeftWhite";
            case "circled":
                return black ? "noteheadCircledBlack" : "noteheadCircledHalf";
            case "slashed":
                return black ? "noteheadSlashedBlack1" : "notehead" + kind;
            case "back slashed":
                return black ? "noteheadSlashedBlack2" : "notehead" + kind;
            default:
                break;
        }
        String family = HEAD_FAMILIES.getOrDefault(shape, "notehead");
        return family.equals("noteheadCircleX") && black ? family : family + kind;
    }

    private static String kind(NoteValue value) {
        return switch (value) {
            case MAXIMA, LONG, BREVE -> "DoubleWhole";
            case WHOLE -> "Whole";
            case HALF -> "Half";
            default -> "Black";
        };
    }

    static String rest(NoteValue value) {
        return switch (value) {
            case MAXIMA -> "restMaxima";
            case LONG -> "restLonga";
            case BREVE -> "restDoubleWhole";
            case WHOLE -> "restWhole";
            case HALF -> "restHalf";
            case QUARTER -> "restQuarter";
            default -> "rest" + value.xmlName().replace("eighth", "8th");
        };
    }

    /** The flag of a value shorter than a quarter. */
    static String flag(NoteValue value, boolean up) {
        return "flag" + value.xmlName().replace("eighth", "8th") + (up ? "Up" : "Down");
    }

    /** The note sign of metronome marks, stem up. */
    static String metronomeNote(NoteValue value) {
        return switch (value) {
            case MAXIMA, LONG, BREVE -> "metNoteDoubleWhole";
            case WHOLE -> "metNoteWhole";
            case HALF -> "metNoteHalfUp";
            case QUARTER -> "metNoteQuarterUp";
            default -> "metNote" + value.xmlName().replace("eighth", "8th") + "Up";
        };
    }
}
