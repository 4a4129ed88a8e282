package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import java.util.List;

/**
 * A written bar of one part.
 *
 * @param name which bar it is
 * @param meter the signature in force
 * @param length exact length: what the fullest voice fills; the meter's length where nothing is written
 * @param phase position of the bar's start within its full bar: zero for full bars; for a pickup (meter − length); for
 *     the second part of a split bar what came before
 * @param voices in file order
 * @param tuplets of all voices
 * @param markings what it says beside its notes
 * @param look drawing facts
 * @param source where it stands in the file
 */
public record Bar(BarName name, Meter meter, Duration length, Duration phase, List<Voice> voices, List<Tuplet> tuplets,
        Markings markings, BarLook look, BarSource source) {

    /** The same bar with these notes. */
    public Bar withVoices(List<Voice> others) {
        return new Bar(name, meter, length, phase, others, tuplets, markings, look, source);
    }

    /** The same bar with these directions, in order of time. */
    public Bar withDirections(List<Direction> told) {
        return new Bar(name, meter, length, phase, voices, tuplets, markings.withDirections(told), look, source);
    }

    /** The same bar, drawn otherwise. */
    public Bar withLook(BarLook other) {
        return new Bar(name, meter, length, phase, voices, tuplets, markings, other, source);
    }

    /** As {@link BarName#index}. */
    public int index() {
        return name.index();
    }

    /** As {@link BarName#number}. */
    public String number() {
        return name.number();
    }

    /** As {@link BarName#called}. */
    public String called() {
        return name.called();
    }

    /** As {@link Markings#directions}. */
    public List<Direction> directions() {
        return markings.directions();
    }

    public Offset end() {
        return Offset.at(length);
    }
}
