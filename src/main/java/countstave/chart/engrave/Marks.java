package countstave.chart.engrave;

import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Role;
import countstave.plain.Phrases;
import countstave.score.Event;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Articulations, fermatas and the open/closed signs of percussion.
 *
 * <p>Common practice: on the head's side, in two voices and in percussion parts outside (above the upper, below the
 * lower voice); staccato and tenuto nearest to the head and in a space, the others outside the staff.
 */
final class Marks {

    private static final double GAP = 0.3;

    /** MusicXML name to SMuFL stem of the name; order is from the head outwards. */
    private static final Map<String, String> ARTICULATIONS = new LinkedHashMap<>();
    /** Signs that stand above whatever the stem does. */
    private static final Map<String, String> ABOVE = map("stopped", "brassMuteClosed", "open", "brassMuteOpen",
            "open-string", "brassMuteOpen", "up-bow", "stringsUpBow", "down-bow", "stringsDownBow", "trill-mark",
            "ornamentTrill", "turn", "ornamentTurn", "mordent", "ornamentMordent", "inverted-mordent",
            "ornamentShortTrill", "inverted-turn", "ornamentTurnInverted", "harmonic", "stringsHarmonic", "snap-pizzicato",
            "pluckedSnapPizzicatoAbove");

    private static Map<String, String> map(String... pairs) {
        Map<String, String> map = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            map.put(pairs[i], pairs[i + 1]);
        }
        return map;
    }

    static {
        ARTICULATIONS.put("staccato", "articStaccato");
        ARTICULATIONS.put("staccatissimo", "articStaccatissimo");
        ARTICULATIONS.put("spiccato", "articStaccatissimoWedge");
        ARTICULATIONS.put("detached-legato", "articStaccato");
        ARTICULATIONS.put("tenuto", "articTenuto");
        ARTICULATIONS.put("accent", "articAccent");
        ARTICULATIONS.put("soft-accent", "articSoftAccent");
        ARTICULATIONS.put("strong-accent", "articMarcato");
        ARTICULATIONS.put("stress", "articStress");
        ARTICULATIONS.put("unstress", "articUnstress");
    }

    /** MusicXML 4.0, fermata-shape, as further notations are named, and the stem of the SMuFL name that it gives for each. */
    private static final Map<String, String> FERMATAS = map("fermata shape angled", "fermataShort", "fermata shape square", "fermataLong",
            "fermata shape double-angled", "fermataVeryShort", "fermata shape double-square", "fermataVeryLong",
            "fermata shape double-dot", "fermataLongHenze", "fermata shape half-curve", "fermataShortHenze");
    /** How far a tie rises over its tip beside an articulation: house choice. */
    private static final double TIE_RISE = 0.2;

    private final Canvas canvas;
    private final Phrases phrases;
    private final double staffTop;
    private final double staffBottom;
    private final boolean drums;

    Marks(Canvas canvas, Phrases phrases, int lines, boolean drums) {
        this.canvas = canvas;
        this.phrases = phrases;
        this.staffTop = StaffMap.topLine(lines);
        this.staffBottom = StaffMap.bottomLine(lines);
        this.drums = drums;
    }

    /** Whether a further notation of this MusicXML name is drawn. */
    static boolean isDrawn(String name) {
        return ABOVE.containsKey(name) || ARTICULATIONS.containsKey(name) || isBreath(name) || name.equals("arpeggiate")
                || FERMATAS.containsKey(name) || Inflections.isOne(name) || PlayingSigns.isDrawn(name);
    }

    private static boolean isBreath(String name) {
        return name.equals("breath-mark") || name.equals("caesura");
    }

    void articulations(Chord chord) {
        Event event = chord.event;
        boolean above = chord.voice.side == VoiceLine.Side.ONLY ? drums || !chord.up || !chord.hasStem()
                && chord.isNote() && chord.low().step >= 4 : chord.voice.side == VoiceLine.Side.UPPER;
        List<String> names = new ArrayList<>();
        for (String known : ARTICULATIONS.keySet()) {
            if (event.look().articulations().contains(known)) {
                names.add(known);
            }
        }
        for (String name : names) {
            String sign = ARTICULATIONS.get(name);
            boolean up = above || name.equals("strong-accent") && chord.voice.side != VoiceLine.Side.LOWER;
            put(chord, sign, up, sign.equals("articStaccato") || sign.equals("articTenuto"));
            if (name.equals("detached-legato")) {
                put(chord, "articTenuto", up, true);
            }
        }
        if (chord.isNote()) {
            new Bends(canvas, phrases, staffTop).draw(chord);
        }
        PlayingSigns signs = new PlayingSigns(canvas, staffTop);
        for (String name : event.look().other()) {
            signs.draw(chord, name, chord.voice.side != VoiceLine.Side.LOWER);
            if (ABOVE.containsKey(name)) {
                outside(chord, ABOVE.get(name), chord.voice.side != VoiceLine.Side.LOWER, Role.ARTICULATION);
            }
        }
    }

    private void put(Chord chord, String family, boolean above, boolean small) {
        String sign = family + (above ? "Above" : "Below");
        if (!small || !fitsInStaff(chord, sign, above)) {
            outside(chord, sign, above, Role.ARTICULATION);
        }
    }

    /** A dot or dash on the head's side goes into the nearest free space of the staff. */
    private boolean fitsInStaff(Chord chord, String sign, boolean above) {
        if (!chord.isNote() || chord.hasStem() && chord.up == above) {
            return false;
        }
        int way = above ? 1 : -1;
        int step = (above ? chord.high() : chord.low()).step;
        double y = (step % 2 != 0 ? step + 2 * way : step + 3 * way) / 2.0;
        if (y > staffTop || y < staffBottom) {
            return false;
        }
        Box box = canvas.font.box(sign);
        double x = chord.centre();
        double edge = canvas.reach(x - box.width() / 2, x + box.width() / 2, way, Double.NEGATIVE_INFINITY);
        if (edge > way * y - box.height() / 2) {
            return false;
        }
        add(sign, x, y - (box.top() + box.bottom()) / 2, Role.ARTICULATION, chord);
        return true;
    }

    /** Beyond everything that stands there, and outside the staff. */
    private void outside(Chord chord, String sign, boolean above, Role role) {
        Box box = canvas.font.box(sign);
        double x = chord.centre();
        int way = above ? 1 : -1;
        double reach = canvas.reach(x - box.width() / 2, x + box.width() / 2, way, above ? staffTop : -staffBottom);
        double tie = TieDrawer.tip(chord, above);
        reach = Double.isNaN(tie) ? reach : Math.max(reach, way * tie + TIE_RISE);
        double y = way * (reach + GAP) - (above ? box.bottom() : box.top());
        add(sign, x, y, role, chord);
    }

    private void add(String sign, double centre, double y, Role role, Chord chord) {
        Box box = canvas.font.box(sign);
        canvas.add(new Glyph(sign, centre - (box.left() + box.right()) / 2, y, role, chord.event.start()));
    }

    void fermata(Chord chord) {
        boolean above = chord.voice.side != VoiceLine.Side.LOWER;
        if (chord.event.look().fermata()) {
            String shape = chord.event.look().other().stream().map(FERMATAS::get).filter(Objects::nonNull).findFirst().orElse("fermata");
            outside(chord, shape + (above ? "Above" : "Below"), above, Role.FERMATA);
        }
    }

    /** Breath marks and caesuras stand on the top line after the note. */
    void breaths(Chord chord) {
        for (String name : chord.event.look().articulations()) {
            if (isBreath(name)) {
                String sign = name.equals("caesura") ? "caesura" : "breathMarkComma";
                double x = chord.x + (chord.isNote() ? chord.headsRight() : 0.5) + 2 * GAP;
                canvas.add(new Glyph(sign, x, staffTop, Role.ARTICULATION, chord.event.start()));
            }
        }
    }
}
