package countstave.sound;

import countstave.time.Exact;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;

/** Listens to guide tracks: reads files back with the JDK's own readers. */
final class Heard {

    /** Shorter silences are zero crossings inside a click. */
    private static final int SILENCE = 200;

    private Heard() {
    }

    static short[] samples(byte[] wav) throws Exception {
        try (AudioInputStream in = AudioSystem.getAudioInputStream(new ByteArrayInputStream(wav))) {
            AudioFormat format = in.getFormat();
            if (format.getChannels() != 1 || format.getSampleSizeInBits() != 16 || format.isBigEndian()
                    || format.getSampleRate() != WavWriter.RATE) {
                throw new AssertionError(format.toString());
            }
            byte[] bytes = in.readAllBytes();
            short[] samples = new short[bytes.length / 2];
            for (int i = 0; i < samples.length; i++) {
                samples[i] = (short) (bytes[2 * i] & 0xff | bytes[2 * i + 1] << 8);
            }
            if (samples.length != in.getFrameLength()) {
                throw new AssertionError("the header says " + in.getFrameLength() + " frames, not " + samples.length);
            }
            return samples;
        }
    }

    static byte[] wav(GuideTrack track) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        WavWriter.write(track, GuideOptions.DEFAULT_PEAK, out, done -> { });
        return out.toByteArray();
    }

    /** Samples at which sound begins after silence. */
    static List<Integer> onsets(short[] samples) {
        List<Integer> onsets = new ArrayList<>();
        int silent = SILENCE;
        for (int i = 0; i < samples.length; i++) {
            if (samples[i] != 0) {
                if (silent >= SILENCE) {
                    onsets.add(i);
                }
                silent = 0;
            } else {
                silent++;
            }
        }
        return onsets;
    }

    /** The onsets of one layer alone, from a WAV file. */
    static List<Integer> onsets(List<Leg> legs, GuideOptions options, Layer layer) throws Exception {
        return onsets(samples(wav(GuideTrack.of(legs, options.withLayers(Set.of(layer))))));
    }

    /** The exact seconds of a layer's clicks as samples, unrounded. */
    static List<Exact> expected(GuideTrack track, Layer layer) {
        List<Exact> samples = new ArrayList<>();
        Iterator<GuideTrack.Click> clicks = track.clicks();
        while (clicks.hasNext()) {
            GuideTrack.Click click = clicks.next();
            if (click.layer() == layer) {
                samples.add(click.second().times(WavWriter.RATE));
            }
        }
        return samples;
    }

    /** A MIDI file as read back. */
    record Midi(int ticksPerQuarter, Map<Layer, List<Long>> ticks, List<long[]> tempi, List<String> markers,
            MidiWriter.Report report) {

        /** When a tick is heard, in microseconds, by the file's own tempo events. */
        double micros(long tick) {
            double at = 0;
            for (int i = 0; i < tempi.size(); i++) {
                long from = tempi.get(i)[0];
                long to = i + 1 < tempi.size() ? Math.min(tick, tempi.get(i + 1)[0]) : tick;
                if (to > from) {
                    at += (double) (to - from) * tempi.get(i)[1] / ticksPerQuarter;
                }
            }
            return at;
        }
    }

    static Midi midi(GuideTrack track) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        MidiWriter.Report report = MidiWriter.write(track, out);
        Sequence sequence = MidiSystem.getSequence(new ByteArrayInputStream(out.toByteArray()));
        Map<Layer, List<Long>> ticks = new EnumMap<>(Layer.class);
        List<long[]> tempi = new ArrayList<>();
        List<String> markers = new ArrayList<>();
        for (Track t : sequence.getTracks()) {
            for (int i = 0; i < t.size(); i++) {
                MidiEvent event = t.get(i);
                if (event.getMessage() instanceof MetaMessage meta) {
                    byte[] data = meta.getData();
                    if (meta.getType() == 0x51) {
                        long micros = (data[0] & 0xff) << 16 | (data[1] & 0xff) << 8 | data[2] & 0xff;
                        tempi.add(new long[] {event.getTick(), micros});
                    } else if (meta.getType() == 0x06) {
                        markers.add(new String(data, java.nio.charset.StandardCharsets.UTF_8));
                    }
                } else if (event.getMessage() instanceof ShortMessage note
                        && note.getCommand() == ShortMessage.NOTE_ON && note.getData2() > 0) {
                    for (Layer layer : Layer.values()) {
                        if (layer.key() == note.getData1() && note.getChannel() == 9) {
                            ticks.computeIfAbsent(layer, l -> new ArrayList<>()).add(event.getTick());
                        }
                    }
                }
            }
        }
        return new Midi(sequence.getResolution(), ticks, tempi, markers, report);
    }
}
