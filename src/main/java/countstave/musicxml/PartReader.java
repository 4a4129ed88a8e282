package countstave.musicxml;

import countstave.score.Barline;
import countstave.score.Clef;
import countstave.score.Fact;
import countstave.score.Meter;
import countstave.score.Movements;
import countstave.score.Placement;
import countstave.score.ScoreException;
import countstave.score.SourceSpot;
import countstave.score.StaffChange;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.TimeOverflowException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.audiveris.proxymusic.Attributes;
import org.audiveris.proxymusic.BackwardForward;
import org.audiveris.proxymusic.Backup;
import org.audiveris.proxymusic.Direction;
import org.audiveris.proxymusic.Forward;
import org.audiveris.proxymusic.Key;
import org.audiveris.proxymusic.MeasureStyle;
import org.audiveris.proxymusic.Note;
import org.audiveris.proxymusic.RightLeftMiddle;
import org.audiveris.proxymusic.Sound;
import org.audiveris.proxymusic.StaffDetails;
import org.audiveris.proxymusic.Time;
import org.audiveris.proxymusic.YesNo;

/** Reads one part bar by bar, in the order of the file: what the bars hold, and where each thing stands in time. */
final class PartReader {

    private static final int MOST_STAVES = 100;

    final String id;
    final List<BarDraft> bars = new ArrayList<>();
    final FactList facts;
    private final TempoMap tempi;
    private final SwingMap swings;
    private final StyleTracker styles = new StyleTracker();
    private final NoteReader notes;
    private final BarClock clock = new BarClock();
    private Meter meter = Meter.SENZA_MISURA;
    private Meter meterOfNextBar;
    private int staves = 1;
    private BarDraft bar;
    private final List<BarElement> elements = new ArrayList<>();

    PartReader(String id, TempoMap tempi, SwingMap swings, ReadOptions options) {
        this.id = id;
        this.tempi = tempi;
        this.swings = swings;
        this.facts = new FactList(id);
        this.notes = new NoteReader(clock, facts, options, this::place);
    }

    int staves() {
        return Math.max(staves, notes.highestStaff());
    }

    int lastLyricNumber() {
        return notes.lastLyricNumber();
    }

    void beginBar(String number, boolean implicit) {
        String shown = Plain.name(number);
        bar = new BarDraft(bars.size(), shown.isEmpty() ? String.valueOf(bars.size() + 1) : shown, implicit);
        if (meterOfNextBar != null) {
            meter = meterOfNextBar;
            meterOfNextBar = null;
            bar.meterShown = meter.symbol() != Meter.Symbol.HIDDEN;
        }
        bar.meter = meter;
        clock.restart();
        notes.beginBar(bar);
    }

    void endBar(SourceSpot source) {
        try {
            readElements();
            bar.source = source;
            bar.divisions = notes.divisions();
            bar.style = styles.endBar();
            notes.endBar();
            bars.add(bar);
        } catch (TimeOverflowException e) {
            throw absurd(e);
        }
        bar = null;
    }

    /** A bar that the file leaves out for this part though others have it. */
    void emptyBar(String number) {
        beginBar(number, false);
        endBar(SourceSpot.NONE);
    }

    /** One line that says where we are: "part P1, bar 12". */
    String place() {
        return place(bar);
    }

    private String place(BarDraft where) {
        String part = "part " + Plain.shown(id);
        if (where == null) {
            return part;
        }
        List<String> numbers = new ArrayList<>(bars.stream().map(read -> read.number).toList());
        numbers.add(where.number);
        return part + ", bar " + Plain.shown(Movements.called(numbers, where.index));
    }

    ScoreException absurd(TimeOverflowException cause) {
        return absurd(bar, cause);
    }

    ScoreException absurd(BarDraft where, TimeOverflowException cause) {
        return new ScoreException(place(where) + ": its durations are so long or so finely divided that they cannot be kept "
                + "exactly; correct the divisions and durations of that bar", cause);
    }

    /** Takes the next element of the bar: it is read when the bar is complete. */
    void add(BarElement element) {
        elements.add(element);
    }

    private void readElements() {
        notes.rounded(RoundedTuplets.find(elements, meter, notes.divisions()));
        for (BarElement element : elements) {
            Object bound = element.bound();
            if (bound instanceof Note note) {
                notes.note(note, element.spot());
            } else if (bound instanceof Backup backup) {
                notes.backup(backup.getDuration());
            } else if (bound instanceof Forward forward) {
                notes.forward(forward.getDuration());
            } else if (bound instanceof Attributes attributes) {
                attributes(attributes);
            } else if (bound instanceof Direction direction) {
                direction(direction, element.metronomes());
            } else if (bound instanceof Sound sound) {
                sound(sound, clock.now());
            } else if (bound instanceof org.audiveris.proxymusic.Barline barline) {
                barline(barline);
            } else if (bound instanceof HarmonyReader.Harmony harmony) {
                harmony(harmony);
            } else {
                bar.figures(clock.now(), (FiguredBassReader.Figures) bound, notes.divisions());
            }
        }
        elements.clear();
    }

    private void attributes(Attributes attributes) {
        Offset at = clock.now();
        if (attributes.getDivisions() != null) {
            notes.divisions(attributes.getDivisions());
        }
        time(attributes.getTime(), at);
        staves = Rationals.bounded(attributes.getStaves(), 1, MOST_STAVES, staves);
        for (Key key : attributes.getKey()) {
            if (key.getFifths() != null) {
                bar.staffChanges.add(new StaffChange(at, staff(key.getNumber(), 0), null,
                        Rationals.bounded(key.getFifths(), -14, 14, 0), null));
            } else if (!key.getNonTraditionalKey().isEmpty()) {
                bar.staffChanges.add(new StaffChange(at, staff(key.getNumber(), 0), null, 0, null,
                        KeyReader.signs(key)));
            }
        }
        for (org.audiveris.proxymusic.Clef clef : attributes.getClef()) {
            if (clef.getSign() != null) {
                bar.staffChanges.add(new StaffChange(at, staff(clef.getNumber(), 1), clef(clef), null, null));
            }
        }
        for (StaffDetails details : attributes.getStaffDetails()) {
            int lines = Rationals.bounded(details.getStaffLines(), 0, 20, -1);
            if (lines >= 0) {
                bar.staffChanges.add(new StaffChange(at, staff(details.getNumber(), 1), null, null, lines));
            }
        }
        for (MeasureStyle style : attributes.getMeasureStyle()) {
            styles.read(style, at.equals(Offset.ZERO));
        }
    }

    private void time(List<Time> times, Offset at) {
        if (times.isEmpty()) {
            return;
        }
        Time first = times.get(0);
        Meter read = MeterReader.meter(first);
        if (read == null) {
            facts.addOnce(new Fact.BadMeter(facts.place(bar, null, at), MeterReader.shown(first), meter));
            return;
        }
        for (Time other : times) {
            Meter otherMeter = MeterReader.meter(other);
            if (otherMeter != null && !otherMeter.components().equals(read.components())) {
                facts.addOnce(new Fact.BadMeter(facts.place(bar, null, at), null, read));
            }
        }
        if (at.equals(Offset.ZERO)) {
            meter = read;
            bar.meter = read;
            bar.meterShown = read.symbol() != Meter.Symbol.HIDDEN;
        } else {
            // behind the bar's last note it is a warning of what comes; in its middle there is nothing to count by it
            meterOfNextBar = read;
        }
    }

    private static Clef clef(org.audiveris.proxymusic.Clef clef) {
        int usual = switch (clef.getSign()) {
            case G -> 2;
            case F -> 4;
            case TAB -> 5;
            default -> 3;
        };
        return new Clef(clef.getSign().value(), Rationals.bounded(clef.getLine(), 1, 20, usual),
                Rationals.bounded(clef.getClefOctaveChange(), -4, 4, 0));
    }

    private static int staff(java.math.BigInteger number, int otherwise) {
        return Rationals.bounded(number, 1, MOST_STAVES, otherwise);
    }

    private void direction(Direction direction, List<MetronomeTrail> trails) {
        Offset now = clock.now();
        BigDecimal shift = direction.getOffset() == null ? null : direction.getOffset().getValue();
        Offset shown = shifted(now, shift);
        Offset heard = shift != null && direction.getOffset().getSound() == YesNo.YES ? shown : now;
        DirectionReader reader = new DirectionReader(direction, shown, staff(direction.getStaff(), 1), trails);
        bar.directions.addAll(reader.directions());
        for (TempoMark mark : reader.tempi()) {
            tempi.add(bar.index, mark.at(heard));
        }
        for (SwingMark mark : reader.swings()) {
            swings.add(bar.index, mark.at(heard));
        }
        if (direction.getSound() != null) {
            sound(direction.getSound(), heard);
        }
    }

    private void harmony(HarmonyReader.Harmony harmony) {
        Offset at = shifted(clock.now(), harmony.offset());
        if (!harmony.text().isEmpty() || harmony.diagram() != null) {
            bar.directions.add(countstave.score.Direction.chord(at, harmony.staff(), harmony.text(),
                    harmony.below() ? Placement.BELOW : Placement.ABOVE, harmony.diagram()));
        }
        if (harmony.frame() && harmony.diagram() == null) {
            bar.passedOver(at, harmony.staff(), "frame");
        }
    }

    private void sound(Sound sound, Offset now) {
        Offset at = sound.getOffset() == null ? now : shifted(now, sound.getOffset().getValue());
        if (sound.getTempo() != null) {
            tempi.add(bar.index, TempoMark.sound(at, sound.getTempo()));
        }
        if (sound.getSwing() != null) {
            swings.add(bar.index, SwingMark.sound(at, sound.getSwing()));
        }
    }

    /** A position moved by a MusicXML offset, in divisions; never before the bar. */
    private Offset shifted(Offset now, BigDecimal divisions) {
        if (divisions == null) {
            return now;
        }
        Offset shifted = now.plus(Duration.QUARTER.times(Rationals.of(divisions)).dividedBy(notes.divisions()));
        return shifted.isBefore(Offset.ZERO) ? Offset.ZERO : shifted;
    }

    private void barline(org.audiveris.proxymusic.Barline barline) {
        String style = barline.getBarStyle() == null || barline.getBarStyle().getValue() == null ? null
                : barline.getBarStyle().getValue().value();
        Barline.Repeat repeat = barline.getRepeat() == null || barline.getRepeat().getDirection() == null ? null
                : barline.getRepeat().getDirection() == BackwardForward.FORWARD ? Barline.Repeat.FORWARD
                        : Barline.Repeat.BACKWARD;
        String numbers = barline.getEnding() == null ? null : Plain.line(barline.getEnding().getNumber());
        Barline.Ending ending = barline.getEnding() == null || barline.getEnding().getType() == null ? null
                : Barline.Ending.valueOf(barline.getEnding().getType().name());
        Barline read = new Barline(style, repeat, numbers, ending);
        if (barline.getLocation() == RightLeftMiddle.LEFT) {
            bar.left = read;
        } else if (barline.getLocation() != RightLeftMiddle.MIDDLE) {
            bar.right = read;
        } else {
            bar.inside(read, clock.now());
        }
    }
}
