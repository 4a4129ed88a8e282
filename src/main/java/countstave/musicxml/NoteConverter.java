package countstave.musicxml;

import countstave.score.AccidentalSign;
import countstave.score.BeamMark;
import countstave.score.Event;
import countstave.score.Head;
import countstave.score.Look;
import countstave.score.Lyric;
import countstave.score.NoteValue;
import countstave.score.Pitch;
import countstave.score.Written;
import countstave.time.Ratio;
import java.util.ArrayList;
import java.util.List;
import org.audiveris.proxymusic.Accidental;
import org.audiveris.proxymusic.Beam;
import org.audiveris.proxymusic.Note;
import org.audiveris.proxymusic.Notehead;
import org.audiveris.proxymusic.NoteheadValue;
import org.audiveris.proxymusic.StartStop;
import org.audiveris.proxymusic.StartStopContinue;
import org.audiveris.proxymusic.Stem;
import org.audiveris.proxymusic.Step;
import org.audiveris.proxymusic.Syllabic;
import org.audiveris.proxymusic.TextElementData;
import org.audiveris.proxymusic.Tie;
import org.audiveris.proxymusic.TimeModification;
import org.audiveris.proxymusic.YesNo;

/** Turns the parts of a bound {@code note} that have nothing to do with the cursor into the model's records. */
final class NoteConverter {

    static final int MOST_DOTS = 10;
    private static final int LARGEST_TERM = 10_000;

    private NoteConverter() {
    }

    /** The length as notation says it, or null where the note has no (known) type. */
    static Written written(Note note) {
        NoteValue value = note.getType() == null ? null : value(note.getType().getValue());
        if (value == null) {
            return null;
        }
        int dots = Math.min(MOST_DOTS, note.getDot().size());
        TimeModification change = note.getTimeModification();
        if (change == null) {
            return Written.of(value, dots, Ratio.ONE);
        }
        int actual = Rationals.bounded(change.getActualNotes(), 1, LARGEST_TERM, 0);
        int normal = Rationals.bounded(change.getNormalNotes(), 1, LARGEST_TERM, 0);
        NoteValue normalValue = value(change.getNormalType());
        return new Written(value, dots, actual < 1 || normal < 1 ? Ratio.ONE : new Ratio(actual, normal),
                normalValue, normalValue == null ? 0 : Math.min(MOST_DOTS, change.getNormalDot().size()));
    }

    /** The value of this MusicXML name, or null. */
    static NoteValue value(String name) {
        return name == null ? null : NoteValue.ofXmlName(name.strip());
    }

    static Event.Grace grace(Note note) {
        if (note.getGrace() == null) {
            return Event.Grace.NONE;
        }
        return note.getGrace().getSlash() == YesNo.YES ? Event.Grace.SLASHED : Event.Grace.PLAIN;
    }

    static boolean isPrinted(Note note) {
        return note.getPrintObject() != YesNo.NO;
    }

    /**
     * The notehead, or for a rest the head that tells its position; null for a rest without one.
     *
     * @param notations what hangs on the note
     * @param headless whether a notehead {@code none} sounds
     */
    static Head head(Note note, NotationReader notations, boolean headless) {
        Step step;
        int octave;
        int alter = 0;
        if (note.getRest() != null) {
            step = note.getRest().getDisplayStep();
            if (step == null) {
                return null;
            }
            octave = orElse(note.getRest().getDisplayOctave(), 4);
        } else if (note.getUnpitched() != null) {
            step = note.getUnpitched().getDisplayStep();
            octave = orElse(note.getUnpitched().getDisplayOctave(), 4);
        } else if (note.getPitch() != null) {
            step = note.getPitch().getStep();
            octave = note.getPitch().getOctave();
            alter = alter(note);
        } else {
            step = Step.B;
            octave = 4;
        }
        Notehead shape = note.getNotehead();
        String name = shape == null || shape.getValue() == null ? "normal" : shape.getValue().value();
        Pitch pitch = Pitch.of(step == null ? 'B' : step.value().charAt(0), inRange(octave), alter,
                note.getUnpitched() != null);
        return new Head(pitch, name, shape == null || shape.getFilled() == null ? null : shape.getFilled() == YesNo.YES,
                shape != null && shape.getParentheses() == YesNo.YES, accidental(note.getAccidental()),
                isTied(note, StartStop.START, notations.tiedStart()), isTied(note, StartStop.STOP, notations.tiedStop()),
                isSilent(note, headless), isPrinted(note), notations.fret());
    }

    private static AccidentalSign accidental(Accidental sign) {
        return sign == null || sign.getValue() == null ? null : new AccidentalSign(sign.getValue().value(),
                sign.getParentheses() == YesNo.YES || sign.getBracket() == YesNo.YES);
    }

    /** Whether a tie begins or ends here: by {@code tie}, which tells the sound; where a note has none, by {@code tied}. */
    private static boolean isTied(Note note, StartStop end, boolean tied) {
        if (note.getTie().isEmpty()) {
            return tied;
        }
        for (Tie tie : note.getTie()) {
            if (tie.getType() == end) {
                return true;
            }
        }
        return false;
    }

    private static boolean isSilent(Note note, boolean headless) {
        boolean noHead = !headless && note.getNotehead() != null && note.getNotehead().getValue() == NoteheadValue.NONE;
        boolean noForce = note.getDynamics() != null && note.getDynamics().signum() == 0;
        return noHead || noForce;
    }

    private static int alter(Note note) {
        if (note.getPitch().getAlter() == null || note.getPitch().getAlter().abs().doubleValue() > 12) {
            return 0;
        }
        return (int) Math.round(note.getPitch().getAlter().doubleValue());
    }

    static Look look(Note note, NotationReader notations, List<Lyric> lyrics) {
        Stem stem = note.getStem();
        return new Look(stem == null || stem.getValue() == null ? null : Look.Stem.valueOf(stem.getValue().name()),
                beams(note), notations.articulations(), notations.fermata(), notations.tremolo(), notations.other(),
                lyrics, notations.slurMarks(), note.getPrintSpacing() != YesNo.NO);
    }

    private static List<BeamMark> beams(Note note) {
        if (note.getBeam().isEmpty()) {
            return List.of();
        }
        List<BeamMark> beams = new ArrayList<>();
        for (Beam beam : note.getBeam()) {
            if (beam.getValue() != null) {
                beams.add(new BeamMark(beam.getNumber(), BeamMark.Kind.valueOf(beam.getValue().name())));
            }
        }
        return List.copyOf(beams);
    }

    static List<Lyric> lyrics(Note note) {
        if (note.getLyric().isEmpty()) {
            return List.of();
        }
        List<Lyric> lyrics = new ArrayList<>();
        for (org.audiveris.proxymusic.Lyric lyric : note.getLyric()) {
            StringBuilder text = new StringBuilder();
            Lyric.Syllabic syllabic = Lyric.Syllabic.SINGLE;
            for (Object piece : lyric.getElisionAndSyllabicAndText()) {
                if (piece instanceof TextElementData data && data.getValue() != null) {
                    text.append(text.isEmpty() ? "" : " ").append(data.getValue());
                } else if (piece instanceof Syllabic kind) {
                    syllabic = Lyric.Syllabic.valueOf(kind.name());
                }
            }
            String number = Plain.line(lyric.getNumber());
            lyrics.add(new Lyric(number.isEmpty() ? "1" : number, Plain.line(text.toString()), syllabic,
                    lyric.getExtend() != null && lyric.getExtend().getType() != StartStopContinue.STOP));
        }
        return List.copyOf(lyrics);
    }

    /** MusicXML 4.0, {@code octave}: 0 to 9; a staff for more could not be drawn. */
    static int inRange(int octave) {
        return Math.max(0, Math.min(9, octave));
    }

    private static int orElse(Integer number, int otherwise) {
        return number == null ? otherwise : number;
    }
}
