package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.util.List;

/**
 * A written bar of one part.
 *
 * @param index position among the written bars, from 0
 * @param number printed number ("1", "X1")
 * @param implicit MusicXML {@code implicit="yes"}: a pickup or a part of a split bar
 * @param meter the signature in force
 * @param meterShown whether the signature is printed in this bar
 * @param length exact length: what the fullest voice fills; the meter's length where nothing is written
 * @param phase position of the bar's start within its full bar: zero for full bars; for a pickup (meter − length); for
 *     the second part of a split bar what came before
 * @param voices in file order
 * @param tuplets of all voices
 * @param directions in order of time
 * @param tempoChanges in order of time
 * @param staffChanges clefs, keys and staff lines that change in this bar, in order of time
 * @param left barline at the left, or null for none
 * @param right barline at the right, or null for a plain one
 * @param style shorthand in force
 * @param divisions divisions of a quarter in force at the end of the bar
 * @param source where it stands in the file
 * @param swingChanges where it begins or ends to be swung, in order of time; whatever part says so, it holds for all
 */
public record Bar(int index, String number, boolean implicit, Meter meter, boolean meterShown, Duration length,
        Duration phase, List<Voice> voices, List<Tuplet> tuplets, List<Direction> directions,
        List<TempoChange> tempoChanges, List<StaffChange> staffChanges, Barline left, Barline right, BarStyle style,
        Proportion divisions, SourceSpot source, List<SwingChange> swingChanges) {

    /** A bar in which nothing is said about swing. */
    public Bar(int index, String number, boolean implicit, Meter meter, boolean meterShown, Duration length,
            Duration phase, List<Voice> voices, List<Tuplet> tuplets, List<Direction> directions,
            List<TempoChange> tempoChanges, List<StaffChange> staffChanges, Barline left, Barline right, BarStyle style,
            Proportion divisions, SourceSpot source) {
        this(index, number, implicit, meter, meterShown, length, phase, voices, tuplets, directions, tempoChanges,
                staffChanges, left, right, style, divisions, source, List.of());
    }

    /** The same bar with these directions, in order of time. */
    public Bar withDirections(List<Direction> told) {
        return new Bar(index, number, implicit, meter, meterShown, length, phase, voices, tuplets, told, tempoChanges,
                staffChanges, left, right, style, divisions, source, swingChanges);
    }

    /** The same bar with its signature printed. */
    public Bar withMeterShown() {
        return new Bar(index, number, implicit, meter, true, length, phase, voices, tuplets, directions, tempoChanges,
                staffChanges, left, right, style, divisions, source, swingChanges);
    }

    public Offset end() {
        return Offset.at(length);
    }
}
