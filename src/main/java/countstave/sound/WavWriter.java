package countstave.sound;

import countstave.time.Exact;
import countstave.voice.Clip;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleConsumer;

/**
 * Renders a guide track to a WAV file: 16 bits, one channel, 22 050 samples a second, without an audio device:
 * clicks hold nothing above a few kilohertz, and half the usual rate halves the file.
 *
 * <p>Each click begins on the sample nearest to its exact second, counted from the track's beginning: the file's first
 * sample, or, where somebody speaks, {@link WavSound#LEAD} after it. The file is written as it is rendered, a block at a
 * time. No sample exceeds the peak level that was asked for.
 */
public final class WavWriter {

    public static final int RATE = Clip.RATE;
    private static final int BLOCK = 4096;
    private static final int HEADER = 44;
    /** The chunk that says where the sound is to be looped, for an endless track. */
    private static final int LOOP_CHUNK = 8 + 36 + 24;
    /** Silence after the end, so that the last click is not cut off. */
    private static final Exact TAIL = Exact.of(1, 2);
    private static final long FULL_SCALE = 32_767;
    /** The voice's share of the highest level where the counts are spoken; the clicks have the rest. Our own choice. */
    private static final double VOICE = 0.6;

    /** A click that sounds: {@code sample}: of the file at which it begins. */
    private record Voice(long sample, double[] sound, double gain) {
    }

    private final Iterator<GuideTrack.Click> clicks;
    private final Map<Layer, double[]> sounds = new EnumMap<>(Layer.class);
    private final List<Voice> voices = new ArrayList<>();
    private final VoiceMix words;
    private final long lead;
    private final double peak;
    private GuideTrack.Click ahead;

    private WavWriter(GuideTrack guide, WavSound sound) {
        clicks = guide.clicks();
        ahead = clicks.hasNext() ? clicks.next() : null;
        peak = Math.pow(10, sound.peakDecibels() / 20);
        lead = lead(sound);
        words = sound.speaker() != null && guide.isSpoken() ? new VoiceMix(guide, sound.speaker(), lead) : null;
        for (Layer layer : Layer.CLICKS) {
            sounds.put(layer, ClickSound.samples(layer, RATE));
        }
    }

    /** How many bytes the file of a track has. */
    public static long bytes(GuideTrack guide, WavSound sound) {
        return HEADER + 2 * frames(guide, sound) + (guide.isEndless() ? LOOP_CHUNK : 0);
    }

    private static long frames(GuideTrack guide, WavSound sound) {
        return lead(sound) + guide.seconds().plus(TAIL).times(RATE).round();
    }

    private static long lead(WavSound sound) {
        return sound.lead().times(RATE).round();
    }

    /** Writes the file with clicks alone. */
    public static void write(GuideTrack guide, double peakDecibels, OutputStream out, DoubleConsumer progress)
            throws IOException {
        write(guide, WavSound.clicks(peakDecibels), out, progress);
    }

    /**
     * Writes the file.
     *
     * @param progress told the share that is done, 0 to 1, some times a minute of sound
     * @throws IOException if it cannot be written
     */
    public static void write(GuideTrack guide, WavSound sound, OutputStream out, DoubleConsumer progress)
            throws IOException {
        long frames = frames(guide, sound);
        out.write(header(frames, guide.isEndless() ? LOOP_CHUNK : 0));
        WavWriter writer = new WavWriter(guide, sound);
        double[] mix = new double[BLOCK];
        ByteBuffer bytes = ByteBuffer.allocate(2 * BLOCK).order(ByteOrder.LITTLE_ENDIAN);
        for (long start = 0; start < frames; start += BLOCK) {
            int size = (int) Math.min(BLOCK, frames - start);
            bytes.clear();
            if (writer.isSilent(start, size)) {
                java.util.Arrays.fill(bytes.array(), (byte) 0);
            } else {
                writer.mix(mix, start, size);
                for (int i = 0; i < size; i++) {
                    bytes.putShort((short) Math.round(mix[i] * FULL_SCALE));
                }
            }
            out.write(bytes.array(), 0, 2 * size);
            progress.accept((double) (start + size) / frames);
        }
        if (guide.isEndless()) {
            out.write(loop(guide, lead(sound)));
        }
    }

    /**
     * The chunk {@code smpl} of the RIFF format: one loop, forwards, without end, from the sample nearest to where the
     * count-in is over to the last one before the track's end. Its layout is from memory.
     */
    private static byte[] loop(GuideTrack guide, long lead) {
        long from = lead + guide.clock().at(guide.loopStart()).times(RATE).round();
        long to = lead + guide.seconds().times(RATE).round() - 1;
        ByteBuffer chunk = ByteBuffer.allocate(LOOP_CHUNK).order(ByteOrder.LITTLE_ENDIAN);
        chunk.put("smpl".getBytes(StandardCharsets.US_ASCII)).putInt(LOOP_CHUNK - 8);
        // no maker, no product, nanoseconds of a sample, middle C, no fraction, no time code (two), one loop, no data
        chunk.putInt(0).putInt(0).putInt((int) (1_000_000_000L / RATE)).putInt(60).putInt(0).putInt(0).putInt(0);
        chunk.putInt(1).putInt(0);
        // its number, forwards, from, to, no fraction, without end
        chunk.putInt(0).putInt(0).putInt((int) from).putInt((int) to).putInt(0).putInt(0);
        return chunk.array();
    }

    private boolean isSilent(long start, int size) {
        return voices.isEmpty() && (ahead == null || sampleOf(ahead) >= start + size)
                && (words == null || words.isSilent(start + size));
    }

    private long sampleOf(GuideTrack.Click click) {
        return lead + click.second().times(RATE).round();
    }

    private void mix(double[] mix, long start, int size) {
        java.util.Arrays.fill(mix, 0);
        while (ahead != null) {
            long sample = sampleOf(ahead);
            if (sample >= start + size) {
                break;
            }
            Layer layer = ahead.layer();
            voices.add(new Voice(sample, sounds.get(layer), layer.share() * peak * (words == null ? 1 : 1 - VOICE)));
            ahead = clicks.hasNext() ? clicks.next() : null;
        }
        for (Voice voice : voices) {
            int from = (int) Math.max(0, voice.sample - start);
            int to = (int) Math.min(size, voice.sample + voice.sound.length - start);
            for (int i = from; i < to; i++) {
                mix[i] += voice.gain * voice.sound[(int) (start + i - voice.sample)];
            }
        }
        if (words != null) {
            words.addTo(mix, start, size, VOICE * peak);
        }
        voices.removeIf(voice -> voice.sample + voice.sound.length <= start + size);
        // the shares of all layers make up the peak; only clicks that run into each other can exceed it
        for (int i = 0; i < size; i++) {
            mix[i] = Math.max(-peak, Math.min(peak, mix[i]));
        }
    }

    /** RIFF header of linear PCM. */
    private static byte[] header(long frames, int after) {
        long data = 2 * frames;
        ByteBuffer header = ByteBuffer.allocate(HEADER).order(ByteOrder.LITTLE_ENDIAN);
        header.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt((int) (HEADER - 8 + data + after));
        header.put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII)).putInt(16);
        header.putShort((short) 1).putShort((short) 1).putInt(RATE).putInt(2 * RATE).putShort((short) 2);
        header.putShort((short) 16);
        header.put("data".getBytes(StandardCharsets.US_ASCII)).putInt((int) data);
        return header.array();
    }
}
