package countstave.musicxml;

import countstave.score.Head;
import countstave.score.NoteValue;
import countstave.score.Placement;
import countstave.score.NoteSpan;
import countstave.score.Tremolo;
import countstave.score.TupletMark;
import countstave.time.Ratio;
import jakarta.xml.bind.JAXBElement;
import java.util.ArrayList;
import java.util.List;
import org.audiveris.proxymusic.AboveBelow;
import org.audiveris.proxymusic.Arpeggiate;
import org.audiveris.proxymusic.Articulations;
import org.audiveris.proxymusic.Dynamics;
import org.audiveris.proxymusic.Fermata;
import org.audiveris.proxymusic.Glissando;
import org.audiveris.proxymusic.Notations;
import org.audiveris.proxymusic.Note;
import org.audiveris.proxymusic.Ornaments;
import org.audiveris.proxymusic.OverUnder;
import org.audiveris.proxymusic.ShowTuplet;
import org.audiveris.proxymusic.Slide;
import org.audiveris.proxymusic.Slur;
import org.audiveris.proxymusic.StartStop;
import org.audiveris.proxymusic.StartStopContinue;
import org.audiveris.proxymusic.Technical;
import org.audiveris.proxymusic.Tied;
import org.audiveris.proxymusic.TiedType;
import org.audiveris.proxymusic.Tuplet;
import org.audiveris.proxymusic.TupletPortion;
import org.audiveris.proxymusic.YesNo;

/** What the {@code notations} of one note say. */
final class NotationReader {

    private static final int LARGEST_TERM = 10_000;

    private final List<String> articulations = new ArrayList<>();
    private final List<String> other = new ArrayList<>();
    private final List<TupletMark> tuplets = new ArrayList<>();
    private boolean fermata;
    private boolean tiedStart;
    private boolean tiedStop;
    private final List<NoteSpan> slurs = new ArrayList<>();
    private final List<String> dynamics = new ArrayList<>();
    private Tremolo tremolo;
    private final TechnicalReader technical = new TechnicalReader();

    NotationReader(Note note) {
        for (Notations group : note.getNotations()) {
            for (Object notation : group.getTiedOrSlurOrTuplet()) {
                read(notation);
            }
        }
    }

    private void read(Object notation) {
        if (notation instanceof Tied tied) {
            tiedStart |= tied.getType() == TiedType.START || tied.getType() == TiedType.CONTINUE;
            tiedStop |= tied.getType() == TiedType.STOP || tied.getType() == TiedType.CONTINUE;
            if (tied.getType() == TiedType.LET_RING) {
                other.add("let-ring");
            }
        } else if (notation instanceof Slur slur) {
            slur(slur);
        } else if (notation instanceof Tuplet tuplet) {
            tuplets.add(mark(tuplet));
        } else if (notation instanceof Fermata sign) {
            fermata = true;
            String shape = Plain.line(sign.getValue());
            if (!shape.isEmpty() && !shape.equals("normal")) {
                other.add("fermata shape " + shape);
            }
        } else if (notation instanceof Arpeggiate arpeggio) {
            other.add("arpeggiate");
            if (arpeggio.getDirection() != null) {
                other.add("arrow of an arpeggio");
            }
        } else if (notation instanceof Dynamics list) {
            dynamics.addAll(DirectionReader.dynamics(list));
        } else if (notation instanceof Articulations list) {
            list.getAccentOrStrongAccentOrStaccato().forEach(e -> articulations.add(e.getName().getLocalPart()));
        } else if (notation instanceof Ornaments list) {
            list.getTrillMarkOrTurnOrDelayedTurn().forEach(this::ornament);
        } else if (notation instanceof Technical list) {
            list.getUpBowOrDownBowOrHarmonic().forEach(one -> technical.add(other, slurs, one));
        } else if (notation instanceof Glissando || notation instanceof Slide) {
            slurs.add(SpanReader.line(notation));
        } else if (notation instanceof org.audiveris.proxymusic.AccidentalMark mark) {
            other.add(SpanReader.accidental(mark));
        } else if (notation != null) {
            other.add(kebab(notation.getClass().getSimpleName()));
        }
    }

    private void slur(Slur slur) {
        if (slur.getType() != StartStopContinue.START && slur.getType() != StartStopContinue.STOP) {
            return;
        }
        Placement placement = placement(slur.getPlacement());
        if (placement == null && slur.getOrientation() != null) {
            placement = slur.getOrientation() == OverUnder.OVER ? Placement.ABOVE : Placement.BELOW;
        }
        slurs.add(new NoteSpan(NoteSpan.Kind.SLUR, slur.getNumber(), slur.getType() == StartStopContinue.START, placement, ""));
    }

    private void ornament(JAXBElement<?> ornament) {
        if (ornament.getValue() instanceof org.audiveris.proxymusic.Tremolo sign) {
            Tremolo.Kind kind = sign.getType() == null ? Tremolo.Kind.SINGLE
                    : Tremolo.Kind.valueOf(sign.getType().name());
            tremolo = new Tremolo(kind, Math.max(0, Math.min(8, sign.getValue())));
        } else if (ornament.getValue() instanceof org.audiveris.proxymusic.AccidentalMark mark) {
            other.add(SpanReader.accidental(mark));
        } else if (ornament.getValue() instanceof org.audiveris.proxymusic.WavyLine line) {
            SpanReader.trill(line, slurs, other);
        } else {
            other.add(ornament.getName().getLocalPart());
        }
    }

    private static TupletMark mark(Tuplet tuplet) {
        TupletPortion actual = tuplet.getTupletActual();
        TupletPortion normal = tuplet.getTupletNormal();
        int shownActual = number(actual);
        int shownNormal = number(normal);
        return new TupletMark(tuplet.getType() != StartStop.STOP,
                tuplet.getNumber() == null ? 1 : tuplet.getNumber(),
                shownActual < 1 || shownNormal < 1 ? null : new Ratio(shownActual, shownNormal),
                value(actual), value(normal),
                tuplet.getBracket() == null ? null : tuplet.getBracket() == YesNo.YES,
                show(tuplet.getShowNumber(), TupletMark.Show.ACTUAL), show(tuplet.getShowType(), TupletMark.Show.NONE),
                placement(tuplet.getPlacement()));
    }

    private static int number(TupletPortion portion) {
        return portion == null || portion.getTupletNumber() == null ? 0
                : Rationals.bounded(portion.getTupletNumber().getValue(), 1, LARGEST_TERM, 0);
    }

    private static NoteValue value(TupletPortion portion) {
        return portion == null || portion.getTupletType() == null ? null
                : NoteConverter.value(portion.getTupletType().getValue());
    }

    private static TupletMark.Show show(ShowTuplet show, TupletMark.Show otherwise) {
        return show == null ? otherwise : TupletMark.Show.valueOf(show.name());
    }

    static Placement placement(AboveBelow placement) {
        return placement == null ? null : Placement.valueOf(placement.name());
    }

    static String kebab(String className) {
        StringBuilder name = new StringBuilder(className.length() + 4);
        for (int i = 0; i < className.length(); i++) {
            char c = className.charAt(i);
            boolean capital = c >= 'A' && c <= 'Z';
            if (capital && i > 0 && Character.isLowerCase(className.charAt(i - 1))) {
                name.append('-');
            }
            name.append(capital ? (char) (c + 'a' - 'A') : c);
        }
        return name.toString();
    }

    List<String> articulations() {
        return List.copyOf(articulations);
    }

    List<String> other() {
        return List.copyOf(other);
    }

    List<TupletMark> tuplets() {
        return tuplets;
    }

    boolean fermata() {
        return fermata;
    }

    boolean tiedStart() {
        return tiedStart;
    }

    boolean tiedStop() {
        return tiedStop;
    }

    List<NoteSpan> slurMarks() {
        return List.copyOf(slurs);
    }

    /** Dynamics that hang on the note instead of standing in a direction. */
    List<String> dynamics() {
        return dynamics;
    }

    /** Where the note is held down, or null. */
    Head.Fret fret() {
        return technical.fret();
    }

    Tremolo tremolo() {
        return tremolo;
    }
}
