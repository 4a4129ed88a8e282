package countstave.chart.engrave;

import countstave.chart.shape.Role;
import countstave.score.Clef;
import countstave.score.Meter;
import countstave.score.NoteValue;
import java.util.ArrayList;
import java.util.List;

/** Clefs, key signatures and time signatures as rows of signs. */
final class Signatures {

    /** Steps above the bottom line in the treble clef (common practice, the same in all engraving). */
    private static final int[] SHARPS = {8, 5, 9, 6, 3, 7, 4};
    private static final int[] FLATS = {4, 7, 3, 6, 2, 5, 1};
    /** The sharps of the tenor clef begin low, so as to stay on the staff. */
    private static final int[] TENOR_SHARPS = {2, 6, 3, 7, 4, 8, 5};

    private Signatures() {
    }

    /** Full size at the start of a line, the font's own change size elsewhere. */
    static void clef(SignRow row, Clef clef, int lines, boolean change) {
        double y = clef.line() - 1;
        double middle = StaffMap.middle(lines);
        switch (clef.sign()) {
            case "G" -> letter(row, clef, "gClef", y, change);
            case "F" -> letter(row, clef, "fClef", y, change);
            case "C" -> letter(row, clef, "cClef", y, change);
            case "TAB" -> row.sign(lines == 4 ? "4stringTabClef" : "6stringTabClef", middle, 1, Role.CLEF);
            case "none" -> { }
            default -> row.sign("unpitchedPercussionClef1", middle, change ? 2.0 / 3 : 1, Role.CLEF);
        }
    }

    private static void letter(SignRow row, Clef clef, String sign, double y, boolean change) {
        String octave = sign.equals("cClef") ? "" : switch (clef.octaveChange()) {
            case -2 -> "15mb";
            case -1 -> "8vb";
            case 1 -> "8va";
            case 2 -> "15ma";
            default -> "";
        };
        if (change) {
            // the font has no small octave clefs: two thirds is the size of its change clefs
            row.sign(octave.isEmpty() ? sign + "Change" : sign + octave, y, octave.isEmpty() ? 1 : 2.0 / 3, Role.CLEF);
        } else {
            row.sign(sign + octave, y, 1, Role.CLEF);
        }
    }

    /** A key in the clef it stands in; where it changes, naturals first for what the old one loses. */
    static void key(SignRow row, StaffState before, StaffState after) {
        Clef clef = after.clef();
        if (clef.sign().equals("percussion") || clef.sign().equals("TAB") || clef.sign().equals("none")) {
            return;
        }
        if (!after.signs().isEmpty()) {
            KeySigns.draw(row, clef, after.signs());
            return;
        }
        if (!before.signs().isEmpty()) {
            KeySigns.cancel(row, clef, before.signs());
        }
        key(row, clef, before.fifths(), after.fifths());
    }

    private static void key(SignRow row, Clef clef, int from, int to) {
        int kept = Integer.signum(from) == Integer.signum(to) ? Math.min(Math.abs(from), Math.abs(to)) : 0;
        int[] old = steps(clef, from);
        for (int i = kept; i < old.length; i++) {
            row.sign("accidentalNatural", old[i] / 2.0, 1, Role.KEY);
        }
        if (kept < old.length && to != 0) {
            row.space(0.5);
        }
        for (int step : steps(clef, to)) {
            row.sign(to > 0 ? "accidentalSharp" : "accidentalFlat", step / 2.0, 1, Role.KEY);
            row.space(to > 0 ? 0 : 0.1);
        }
    }

    private static int[] steps(Clef clef, int fifths) {
        int count = Math.min(7, Math.abs(fifths));
        // the letters of the treble pattern, moved by the clef into the octave that keeps them on the staff
        int moved = Math.floorMod(StaffMap.diatonicOfBottomLine(Clef.TREBLE) - StaffMap.diatonicOfBottomLine(clef), 7);
        int shift = moved > 3 ? moved - 7 : moved;
        boolean tenor = clef.sign().equals("C") && clef.line() == 4;
        int[] pattern = fifths > 0 ? SHARPS : FLATS;
        int[] steps = new int[count];
        for (int i = 0; i < count; i++) {
            steps[i] = tenor && fifths > 0 ? TENOR_SHARPS[i] : pattern[i] + shift;
        }
        return steps;
    }

    static void meter(SignRow row, Meter meter, int lines) {
        double middle = StaffMap.middle(lines);
        if (meter.symbol() == Meter.Symbol.OPEN) {
            row.sign("timeSigX", middle, 1, Role.METER);
            return;
        }
        if (meter.isSenzaMisura() || meter.symbol() == Meter.Symbol.HIDDEN) {
            return;
        }
        if (meter.symbol() == Meter.Symbol.COMMON || meter.symbol() == Meter.Symbol.CUT) {
            row.sign(meter.symbol() == Meter.Symbol.CUT ? "timeSigCutCommon" : "timeSigCommon", middle, 1, Role.METER);
            return;
        }
        boolean first = true;
        for (Meter.Component component : meter.components()) {
            if (!first) {
                row.space(0.25);
                row.sign("timeSigPlus", middle, 1, Role.METER);
                row.space(0.25);
            }
            first = false;
            component(row, component, meter.symbol(), middle);
        }
    }

    private static void component(SignRow row, Meter.Component component, Meter.Symbol symbol, double middle) {
        List<String> upper = new ArrayList<>();
        for (int number : component.numbers()) {
            if (!upper.isEmpty()) {
                upper.add("timeSigPlusSmall");
            }
            digits(symbol == Meter.Symbol.DOTTED_NOTE ? Math.max(1, number / 3) : number, upper);
        }
        double start = row.width();
        if (symbol == Meter.Symbol.SINGLE_NUMBER) {
            centred(row, upper, start, width(row, upper), middle);
            row.advanceTo(start + width(row, upper));
            return;
        }
        List<String> lower = new ArrayList<>();
        double scale = 1;
        if (symbol == Meter.Symbol.NOTE || symbol == Meter.Symbol.DOTTED_NOTE) {
            scale = 0.62;
            noteBelow(component, symbol, lower);
        } else {
            digits(component.unit(), lower);
        }
        double wide = Math.max(width(row, upper), width(row, lower) * scale);
        centred(row, upper, start, wide, middle + 1);
        if (scale == 1) {
            centred(row, lower, start, wide, middle - 1);
        } else {
            double x = start + (wide - width(row, lower) * scale) / 2;
            for (String sign : lower) {
                row.put(sign, x, middle - 1.7, scale, Role.METER);
                x += row.font.advance(sign) * scale;
            }
        }
        row.advanceTo(start + wide);
    }

    private static void noteBelow(Meter.Component component, Meter.Symbol symbol, List<String> out) {
        boolean dotted = symbol == Meter.Symbol.DOTTED_NOTE;
        int unit = dotted ? component.unit() / 2 : component.unit();
        NoteValue value = NoteValue.ofLength(countstave.time.Duration.of(1, Math.max(1, unit)));
        out.add(Signs.metronomeNote(value == null ? NoteValue.QUARTER : value));
        if (dotted) {
            out.add("metAugmentationDot");
        }
    }

    private static void digits(int number, List<String> out) {
        for (char digit : Integer.toString(number).toCharArray()) {
            out.add("timeSig" + digit);
        }
    }

    static double width(SignRow row, List<String> signs) {
        return signs.stream().mapToDouble(s -> row.font.advance(s) + 2 * around(s)).sum();
    }

    /** Free space on both sides of a small plus between digits: house choice. */
    private static double around(String sign) {
        return sign.equals("timeSigPlusSmall") ? 0.15 : 0;
    }

    private static void centred(SignRow row, List<String> signs, double start, double wide, double y) {
        double x = start + (wide - width(row, signs)) / 2;
        for (String sign : signs) {
            row.put(sign, x + around(sign), y, 1, Role.METER);
            x += row.font.advance(sign) + 2 * around(sign);
        }
    }
}
