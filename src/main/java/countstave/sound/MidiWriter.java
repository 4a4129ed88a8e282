package countstave.sound;

import countstave.score.Meter;
import countstave.time.Exact;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.Iterator;
import java.util.Map;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;

/**
 * Writes a guide track as a Standard MIDI File of format 1: one track for tempo, time signatures and markers, and one
 * for each layer, so that a player can switch them. Meta events by number: Standard MIDI Files 1.0.
 */
public final class MidiWriter {

    static final String LOOP_BEGINS = "loop begins";
    static final String LOOP_ENDS = "loop ends";

    private static final int DRUM_CHANNEL = 9;
    private static final int TRACK_NAME = 0x03;
    private static final int MARKER = 0x06;
    private static final int END_OF_TRACK = 0x2F;
    private static final int TEMPO = 0x51;
    private static final int TIME_SIGNATURE = 0x58;

    /**
     * What became of the exact positions.
     *
     * @param ticksPerQuarter resolution of the file
     * @param exactTicks whether every click lies on its exact position
     * @param largestError greatest distance in seconds between when a click should come and when it does
     */
    public record Report(int ticksPerQuarter, boolean exactTicks, Exact largestError) {
    }

    private final GuideTrack guide;
    private final TickGrid grid;
    private final MidiTempi tempi;
    private final Sequence sequence;

    private MidiWriter(GuideTrack guide) throws InvalidMidiDataException {
        this.guide = guide;
        this.grid = TickGrid.of(guide);
        this.tempi = MidiTempi.of(guide, grid);
        this.sequence = new Sequence(Sequence.PPQ, grid.perQuarter());
    }

    /**
     * Writes the file.
     *
     * @throws IOException if it cannot be written
     * @throws countstave.score.ScoreException if a tempo is slower than a MIDI file can say
     */
    public static Report write(GuideTrack guide, OutputStream out) throws IOException {
        try {
            MidiWriter writer = new MidiWriter(guide);
            writer.conductor();
            Exact error = writer.clicks();
            MidiSystem.write(writer.sequence, 1, out);
            return new Report(writer.grid.perQuarter(), writer.grid.exact(), error);
        } catch (InvalidMidiDataException e) {
            throw new IllegalStateException("every number was checked before", e);
        }
    }

    private void conductor() throws InvalidMidiDataException {
        Track track = sequence.createTrack();
        text(track, TRACK_NAME, 0, "tempo");
        for (GuideTrack.Note note : guide.notes()) {
            long tick = grid.tick(note.at());
            if (note.meter() == null) {
                text(track, MARKER, tick, note.text());
            } else {
                signature(track, tick, note.meter());
            }
        }
        if (guide.isEndless()) {
            // the format has no sign for a loop: these are words for whoever sets one
            text(track, MARKER, grid.tick(guide.loopStart()), LOOP_BEGINS);
            text(track, MARKER, grid.tick(guide.end()), LOOP_ENDS);
        }
        for (MidiTempi.Event event : tempi.events()) {
            long micros = event.microsPerQuarter();
            track.add(meta(TEMPO, event.tick(), (byte) (micros >> 16), (byte) (micros >> 8), (byte) micros));
        }
        track.add(meta(END_OF_TRACK, grid.tick(guide.end())));
    }

    /** Signatures that the format cannot say (senza misura, odd lower numbers) are left out: no click hangs on them. */
    private void signature(Track track, long tick, Meter meter) throws InvalidMidiDataException {
        if (meter.isSenzaMisura()) {
            return;
        }
        int lower = meter.components().stream().mapToInt(Meter.Component::unit).max().orElse(4);
        long upper = meter.length().times(lower).numerator();
        if (Integer.bitCount(lower) == 1 && upper <= 255 && meter.length().times(lower).denominator() == 1) {
            int power = Integer.numberOfTrailingZeros(lower);
            // 24 MIDI clocks a metronome click and 8 thirty-seconds a quarter: the format's usual values
            track.add(meta(TIME_SIGNATURE, tick, (byte) upper, (byte) power, (byte) 24, (byte) 8));
        }
    }

    private Exact clicks() throws InvalidMidiDataException {
        Map<Layer, Track> tracks = new EnumMap<>(Layer.class);
        Map<Layer, Long> sounding = new EnumMap<>(Layer.class);
        long longest = Math.max(1, grid.perQuarter() / 8);
        Exact largest = Exact.ZERO;
        Iterator<GuideTrack.Click> clicks = guide.clicks();
        while (clicks.hasNext()) {
            GuideTrack.Click click = clicks.next();
            long tick = click.later().isZero() ? grid.tick(click.at()) : grid.tick(guide.clock(), click.second());
            Track track = tracks.get(click.layer());
            if (track == null) {
                track = sequence.createTrack();
                text(track, TRACK_NAME, 0, click.layer().title());
                tracks.put(click.layer(), track);
            }
            release(track, click.layer(), sounding, tick, longest);
            track.add(note(ShortMessage.NOTE_ON, click.layer(), tick, click.layer().velocity()));
            sounding.put(click.layer(), tick);
            largest = largest.max(tempi.second(tick, grid.perQuarter()).minus(click.second()).abs());
        }
        for (Map.Entry<Layer, Track> entry : tracks.entrySet()) {
            release(entry.getValue(), entry.getKey(), sounding, Long.MAX_VALUE, longest);
        }
        return largest;
    }

    /** Ends the click before, at the latest where the next one of its layer begins. */
    private static void release(Track track, Layer layer, Map<Layer, Long> sounding, long next, long longest)
            throws InvalidMidiDataException {
        Long since = sounding.remove(layer);
        if (since != null) {
            track.add(note(ShortMessage.NOTE_OFF, layer, Math.min(next, since + longest), 0));
        }
    }

    private static MidiEvent note(int command, Layer layer, long tick, int velocity) throws InvalidMidiDataException {
        return new MidiEvent(new ShortMessage(command, DRUM_CHANNEL, layer.key(), velocity), tick);
    }

    private static void text(Track track, int type, long tick, String text) throws InvalidMidiDataException {
        track.add(meta(type, tick, text.getBytes(StandardCharsets.UTF_8)));
    }

    private static MidiEvent meta(int type, long tick, byte... data) throws InvalidMidiDataException {
        return new MidiEvent(new MetaMessage(type, data, data.length), tick);
    }
}
