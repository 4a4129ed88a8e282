package countstave.take;

import countstave.score.ScoreException;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;

/** Reads what was played from a Standard MIDI file of format 0 or 1, by its own tempo map. */
final class MidiTake {

    private static final int TEMPO = 0x51;
    private static final double LOUDEST = 127;
    /** Half a second a quarter, what a file without a tempo means (Standard MIDI Files 1.0). */
    private static final double USUAL_MICROS = 500_000;
    /** A take is not longer: what is, is a spoilt file. */
    private static final double LONGEST = 24 * 3600;
    private static final long MOST_BEATS = 100_000;
    /** Where the header says the format, from the file's start. */
    private static final int FORMAT_AT = 9;

    private final Sequence sequence;
    /** Microseconds a quarter by the tick from which they hold. */
    private final TreeMap<Long, Double> tempi = new TreeMap<>();
    /** Seconds at these ticks. */
    private final TreeMap<Long, Double> seconds = new TreeMap<>();

    private MidiTake(Sequence sequence) {
        this.sequence = sequence;
        tempi.put(0L, USUAL_MICROS);
        for (MidiEvent event : events(sequence)) {
            if (event.getMessage() instanceof MetaMessage meta && meta.getType() == TEMPO && meta.getData().length == 3) {
                byte[] data = meta.getData();
                double micros = (data[0] & 0xFF) << 16 | (data[1] & 0xFF) << 8 | data[2] & 0xFF;
                tempi.put(event.getTick(), Math.max(1, micros));
            }
        }
        double at = 0;
        Long before = null;
        for (Long tick : tempi.keySet()) {
            at += before == null ? 0 : (tick - before) * perTick(before);
            seconds.put(tick, at);
            before = tick;
        }
    }

    private static List<MidiEvent> events(Sequence sequence) {
        List<MidiEvent> events = new ArrayList<>();
        for (Track track : sequence.getTracks()) {
            for (int i = 0; i < track.size(); i++) {
                events.add(track.get(i));
            }
        }
        events.sort(Comparator.comparingLong(MidiEvent::getTick));
        return events;
    }

    private double perTick(long tick) {
        float type = sequence.getDivisionType();
        return type == Sequence.PPQ ? tempi.floorEntry(tick).getValue() / 1e6 / sequence.getResolution()
                : 1 / (double) (type * sequence.getResolution());
    }

    private double second(long tick) {
        long from = seconds.floorKey(tick);
        return seconds.get(from) + (tick - from) * perTick(from);
    }

    /** @throws ScoreException in one line if it cannot be read, or holds none of these notes */
    static Take read(Path file, String name, NoteChoice notes) throws IOException {
        Sequence sequence;
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
            in.mark(FORMAT_AT + 1);
            byte[] head = in.readNBytes(FORMAT_AT + 1);
            in.reset();
            if (head.length > FORMAT_AT && head[FORMAT_AT] > 1) {
                throw new ScoreException(name + " is a MIDI file of format " + head[FORMAT_AT] + ", songs one beside the other;"
                        + " save it in format 0 or 1");
            }
            sequence = MidiSystem.getSequence(in);
        } catch (ScoreException e) {
            throw e;
        } catch (InvalidMidiDataException | IOException | RuntimeException e) {
            throw new ScoreException(name + " begins like a MIDI file and cannot be read to its end; save it again", e);
        }
        return new MidiTake(sequence).take(name, notes);
    }

    private Take take(String name, NoteChoice notes) {
        List<Onset> onsets = new ArrayList<>();
        boolean any = false;
        long end = 0;
        for (MidiEvent event : events(sequence)) {
            MidiMessage message = event.getMessage();
            if (message instanceof ShortMessage note && note.getCommand() == ShortMessage.NOTE_ON && note.getData2() > 0) {
                any = true;
                if (notes.takes(note.getChannel() + 1, note.getData1())) {
                    onsets.add(new Onset(second(event.getTick()), 20 * Math.log10(note.getData2() / LOUDEST)));
                }
            }
            end = Math.max(end, event.getTick());
        }
        if (onsets.isEmpty()) {
            throw new ScoreException(name + (any ? " has notes, but none of those that --notes and --channel choose; choose"
                    + " others" : " holds no note; record it again"));
        }
        if (second(end) > LONGEST) {
            throw new ScoreException(name + " says that it lasts longer than a day; save it again");
        }
        List<Double> beats = new ArrayList<>();
        if (sequence.getDivisionType() == Sequence.PPQ && end / sequence.getResolution() < MOST_BEATS) {
            for (long tick = 0; tick <= end; tick += sequence.getResolution()) {
                beats.add(second(tick));
            }
        }
        return new Take(name, Take.Kind.MIDI, second(end), List.copyOf(onsets), List.copyOf(beats), List.of(), List.of());
    }
}
