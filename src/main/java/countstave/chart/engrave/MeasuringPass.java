package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.shape.Box;
import countstave.score.NoteSpan;
import countstave.score.Bar;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Direction;
import countstave.score.Event;
import countstave.score.Head;
import countstave.score.NoteValue;
import countstave.score.StaffChange;
import countstave.score.Tuplet;
import countstave.score.Voice;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.Objects;
import java.util.TreeMap;

/** The first pass over a bar: all that can be known before its width is. */
final class MeasuringPass {

    private final Bar bar;
    private final List<Beat> beats;
    private final EngraveContext context;
    private final MusicFont font;
    private final StaffMap staff;
    private final int lines;
    private final TreeMap<Offset, Moment> moments = new TreeMap<>();
    private final List<VoiceLine> voices = new ArrayList<>();
    private final List<Chord> barRests = new ArrayList<>();

    MeasuringPass(BarTimeline timeline, EngraveContext context) {
        this.bar = timeline.bar();
        this.beats = timeline.beats();
        this.context = context;
        this.font = context.music();
        this.staff = new StaffMap(bar, context.staff(), context.state(), context.notes());
        this.lines = staff.stateAt(Offset.ZERO).lines();
    }

    NotatedBar measure(Frame frame) {
        readVoices();
        clefChanges();
        barlines();
        List<Moment> inOrder = List.copyOf(moments.values());
        inOrder.forEach(VoiceCollisions::resolve);
        RestHeights rests = new RestHeights(inOrder, lines);
        rests.place(voices);
        for (Moment moment : inOrder) {
            furnish(moment);
        }
        rests.placeBarRests(barRests);
        return new NotatedBar(frame, lines, voices, inOrder, barRests);
    }

    private void readVoices() {
        for (Voices.Sided sided : Voices.on(bar, context.staff())) {
            Voice voice = sided.voice();
            List<Tuplet> tuplets = bar.tuplets().stream().filter(t -> t.events().voice().equals(voice.name()))
                    .sorted(Comparator.comparingInt(Tuplet::depth)).toList();
            List<BeamGroup> beams = new BeamGrouper(voice.events(), tuplets, beats, bar.meter(), context.staff())
                    .groups();
            VoiceLine line = new VoiceLine(voice, sided.side(), tuplets, beams);
            Set<Integer> far = FarBeams.in(voice.events());
            for (int i = 0; i < voice.events().size(); i++) {
                Event event = voice.events().get(i);
                line.chords.add(Voices.isDrawn(event, context.staff()) ? chord(event, i, line) : null);
            }
            far.stream().map(line::chord).filter(Objects::nonNull).forEach(chord -> chord.far = chord.isNote());
            for (BeamGroup group : beams) {
                group.members().forEach(i -> setBeam(line.chord(i), group));
            }
            StemSides.decide(line, lines);
            distribute(line);
            voices.add(line);
        }
    }

    private static void setBeam(Chord chord, BeamGroup group) {
        if (chord != null) {
            chord.beam = group;
        }
    }

    private Chord chord(Event event, int index, VoiceLine line) {
        Chord chord = new Chord(event, index, line, font);
        if (event.isRest()) {
            chord.restSign = Signs.rest(isBarRest(chord) ? NoteValue.WHOLE : chord.value());
            if (!event.heads().isEmpty()) {
                chord.placedStep = staff.step(event.heads().get(0), event.start());
            }
            return chord;
        }
        for (Head head : event.heads()) {
            if (head.printed() && !head.shape().equals("none")) {
                if (FretNumbers.isOn(head, staff.stateAt(event.start()))) {
                    chord.spots.add(new Chord.Spot(head, "noteheadBlack", staff.step(head, event.start()),
                            FretNumbers.width(head, chord.scale, context.text()), true));
                    continue;
                }
                chord.lacksFret |= staff.stateAt(event.start()).clef().sign().equals("TAB");
                String sign = Signs.head(head, chord.value());
                chord.spots.add(new Chord.Spot(head, sign, staff.step(head, event.start()),
                        font.width(sign) * chord.scale));
            }
        }
        chord.spots.sort(Comparator.comparingInt(s -> s.step));
        return chord;
    }

    /** Puts each chord into its moment; grace notes into the moment they lean on. */
    private void distribute(VoiceLine line) {
        List<Chord> graces = new ArrayList<>();
        for (Chord chord : line.chords) {
            if (chord == null) {
                continue;
            }
            if (chord.event.isGrace()) {
                if (chord.isNote()) {
                    graces.add(chord);
                }
                continue;
            }
            if (isBarRest(chord)) {
                barRests.add(chord);
                continue;
            }
            Moment moment = moment(chord.event.start());
            moment.chords.add(chord);
            if (!graces.isEmpty()) {
                moment.graces.add(List.copyOf(graces));
                graces.clear();
            }
        }
        if (!graces.isEmpty()) {
            moment(bar.end()).graces.add(List.copyOf(graces));
        }
    }

    /** Marked as such, or a whole rest, or one without a sign of its own, that fills its bar from end to end. */
    private boolean isBarRest(Chord chord) {
        boolean whole = chord.event.written() == null || chord.value() == NoteValue.WHOLE && chord.dots() == 0;
        return chord.event.isRest() && (chord.event.barRest() || whole && chord.event.start().equals(Offset.ZERO)
                && chord.event.end().equals(bar.end()));
    }

    private Moment moment(Offset at) {
        return moments.computeIfAbsent(at, Moment::new);
    }

    private void clefChanges() {
        for (StaffChange change : bar.markings().staves()) {
            boolean here = change.staff() == 0 || change.staff() == context.staff();
            if (here && change.at().isAfter(Offset.ZERO) && change.at().isBefore(bar.end())) {
                moment(change.at()).changes.add(change);
            }
        }
    }

    /** Those inside of the bar. */
    private void barlines() {
        for (Direction direction : bar.directions()) {
            if (direction.kind() == Direction.Kind.BARLINE && direction.at().isAfter(Offset.ZERO) && direction.at().isBefore(bar.end())) {
                moment(direction.at()).barlines.add(direction.text());
            }
        }
    }

    /** Accidentals, dots, grace notes and clefs of a moment, from the heads outwards, and the room it all needs. */
    private void furnish(Moment moment) {
        List<Chord> notes = moment.chords.stream().filter(Chord::isNote).toList();
        for (Chord chord : moment.chords) {
            if (chord.isNote()) {
                moment.reach(chord.headsLeft(), chord.headsRight() + roomBehind(chord));
                double words = PlayingSigns.halfWidth(chord.event, context.text());
                moment.reach(chord.centre() - words, chord.centre() + words);
                if (chord.hasFlag()) {
                    Box flag = font.box(Signs.flag(chord.value(), chord.up));
                    moment.reach(0, chord.stemX() + flag.right() * chord.scale);
                }
            } else if (chord.isRest()) {
                moment.reach(chord.restBox().left(), chord.restBox().right());
            }
        }
        if (!notes.isEmpty()) {
            moment.reach(new Accidentals(font).place(notes, moment.signs), 0);
        }
        Arpeggio.place(moment);
        new Dots(font).place(moment);
        Inflections.place(moment);
        GraceRow.place(moment, font, -moment.left);
        changeSigns(moment);
    }

    /** Room for what is drawn between a note and the next. */
    private static double roomBehind(Chord chord) {
        double bent = Bends.room(chord.event);
        boolean slides = chord.event.look().slurMarks().stream().anyMatch(m -> m.start()
                && (m.kind() == NoteSpan.Kind.SLIDE || m.kind() == NoteSpan.Kind.GLISSANDO));
        return bent > 0 ? bent : slides ? SLIDE : 0;
    }

    /** House choice. */
    private static final double SLIDE = 1.4;

    private void changeSigns(Moment moment) {
        for (String style : moment.barlines) {
            SignRow row = new SignRow(font);
            row.space(GAP);
            new Barlines(font, lines).style(row, style);
            row.space(GAP);
            before(moment, row);
        }
        for (StaffChange change : moment.changes) {
            SignRow row = new SignRow(font);
            if (change.clef() != null) {
                Signatures.clef(row, change.clef(), lines, true);
                row.space(GAP);
            }
            if (change.fifths() != null) {
                StaffState before = staff.stateBefore(change.at());
                Signatures.key(row, before, before.after(change));
                row.space(GAP);
            }
            before(moment, row);
        }
    }

    private static void before(Moment moment, SignRow row) {
        double from = -moment.left - row.width();
        moment.rows.addAll(row.at(from));
        moment.reach(from, 0);
    }

    /** Between a clef change or a barline and the note after it: house choice. */
    private static final double GAP = 0.5;
}
