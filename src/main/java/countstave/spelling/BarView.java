package countstave.spelling;

import countstave.score.Bar;
import countstave.score.BarStyle;
import countstave.score.Beat;
import countstave.score.Event;
import countstave.score.Fact;
import countstave.score.Pulse;
import countstave.score.PulseChoice;
import countstave.score.Tempo;
import countstave.score.Voice;
import countstave.spelling.respell.MeterFrame;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.util.List;

/** A bar as the rules see it: what is written, how the meter divides it, and what the reader found wrong in it. */
public final class BarView {

    private final Bar bar;
    private final MeterFrame frame;
    private final List<Fact> facts;
    private final Tempo tempo;
    private Pulse pulse;
    private String content;

    /** @param tempo at the bar's start: whether a 3/8 bar has one beat or three hangs on it */
    BarView(Bar bar, List<Fact> facts, Tempo tempo) {
        this.bar = bar;
        this.frame = MeterFrame.of(bar);
        this.facts = facts;
        this.tempo = tempo;
    }

    public Bar bar() {
        return bar;
    }

    public MeterFrame frame() {
        return frame;
    }

    /** What stands in it, for {@link BarMark}. */
    String content() {
        content = content == null ? BarMark.content(bar) : content;
        return content;
    }

    /**
     * Where {@code at} lies, by the beats that are counted: {@code 2}, {@code 2 + 1/3} (a third of the way to the next
     * beat). The eye may see others: 2/2 has four quarters on paper, and two beats here.
     */
    public String beatName(Offset at) {
        pulse = pulse == null ? Pulse.of(bar, tempo, PulseChoice.BY_METER) : pulse;
        Beat beat = null;
        for (Beat each : pulse.beats()) {
            beat = beat == null || !each.start().isAfter(at) ? each : beat;
        }
        Proportion into = at.minus(beat.start()).over(beat.length());
        Proportion rest = into.remainder();
        return beat.number() + into.floor() + (rest.isZero() ? "" : " + " + rest);
    }

    /** What the reader found wrong in this bar, of one kind. */
    public <F extends Fact> List<F> facts(Class<F> kind) {
        return facts.isEmpty() ? List.of() : facts.stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    public boolean has(Class<? extends Fact> kind) {
        return !facts.isEmpty() && facts.stream().anyMatch(kind::isInstance);
    }

    /** Its voice of this name. */
    public Voice voice(String name) {
        return bar.voices().stream().filter(voice -> voice.name().equals(name)).findFirst().orElseThrow();
    }

    /** Length of a full bar of the signature; zero for senza misura. */
    public Duration meterLength() {
        return bar.meter().length();
    }

    /**
     * Whether the rules on readable spelling can judge this bar: its lengths add up, the signature settles its beats,
     * and it is written out in notes.
     */
    public boolean isReadable() {
        return frame.isSure() && bar.look().style().kind() != BarStyle.Kind.SLASH && addsUp()
                && !bar.length().isLongerThan(meterLength());
    }

    /** Whether the reader found nothing that makes the bar another length than its signature says. */
    public boolean addsUp() {
        return !has(Fact.Overfull.class) && !has(Fact.Short.class) && !has(Fact.LocalMeter.class)
                && !has(Fact.Overlap.class) && !has(Fact.BackupTooFar.class);
    }

    /** Whether some note of this voice is written as one value and lasts another, so that no sum need be right. */
    public boolean hasDiffering(Voice voice) {
        return !facts.isEmpty() && facts.stream().anyMatch(fact -> fact instanceof Fact.ValueDiffers
                && voice.name().equals(fact.place().voice()));
    }

    /** Whether nothing is written in this voice but the sign for a bar of rest, which lasts as long as the bar does. */
    public static boolean isBarRest(Voice voice) {
        return voice.events().stream().allMatch(Event::barRest);
    }

    /** Whether an event is an ordinary note or rest outside tuplets, whose written value is what it lasts. */
    public static boolean isPlain(Event event) {
        return isOrdinary(event) && event.written().ratio().isPlain();
    }

    /** As {@link #isPlain}, in a tuplet or not. */
    public static boolean isOrdinary(Event event) {
        return !event.isGrace() && !event.cue() && event.printed() && !event.barRest() && event.written() != null
                && event.written().length().equals(event.length()) && !event.isSharedTremolo();
    }

    /** Events of a voice that take time. */
    public static List<Event> timed(Voice voice) {
        return voice.events().stream().filter(e -> !e.isGrace()).toList();
    }
}
