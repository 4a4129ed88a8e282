package countstave.take;

import countstave.pcm.PcmSamples;
import countstave.score.ScoreException;
import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;

/**
 * The samples of a WAV file one after the other, both channels made one, between −1 and 1. A file of more than 50 000
 * samples a second is thinned to a half, a third or a quarter of them: above 22 kHz nothing of a stroke is heard.
 */
final class SoundStream implements Samples {

    static final int LOWEST_RATE = 8_000;
    static final int HIGHEST_RATE = 192_000;
    private static final int MOST_KEPT = 50_000;
    /** Numbers with a point may go beyond full scale; what goes far beyond is none of a sound. */
    private static final double MOST = 4;

    private final String name;
    private final AudioInputStream in;
    private final AudioFormat format;
    private final PcmSamples samples;
    private final Decimator decimator;
    private final float[] block = new float[BLOCK];
    private final byte[] bytes;
    private long read;
    private boolean ended;

    private SoundStream(String name, AudioInputStream in) {
        this.name = name;
        this.in = in;
        this.format = in.getFormat();
        this.samples = samples(format, name);
        float rate = format.getSampleRate();
        if (!(rate >= LOWEST_RATE && rate <= HIGHEST_RATE)) {
            throw new ScoreException(String.format(Locale.ROOT, "%s has %.0f samples a second; from %d to %d are read: convert"
                    + " it to a WAV file of 44100", name, rate, LOWEST_RATE, HIGHEST_RATE));
        }
        this.decimator = new Decimator((int) Math.ceil(rate / MOST_KEPT));
        this.bytes = new byte[BLOCK * format.getFrameSize()];
    }

    private static PcmSamples samples(AudioFormat format, String name) {
        AudioFormat.Encoding encoding = format.getEncoding();
        boolean floating = encoding.equals(AudioFormat.Encoding.PCM_FLOAT);
        boolean signed = encoding.equals(AudioFormat.Encoding.PCM_SIGNED);
        int bits = format.getSampleSizeInBits();
        if (!floating && !signed && !encoding.equals(AudioFormat.Encoding.PCM_UNSIGNED)) {
            throw new ScoreException(name + " holds compressed sound (" + encoding + "), which is not read; save it as WAV with"
                    + " 16 or 24 bits (PCM)");
        }
        if (floating ? bits != 32 && bits != 64 : bits < 8 || bits > 32) {
            throw new ScoreException(name + " has samples of " + bits + " bits; 8 to 32 bits, or 32 and 64 as numbers with a"
                    + " point, are read: save it with 16 or 24");
        }
        if (format.getChannels() < 1 || format.getChannels() > 2) {
            throw new ScoreException(name + " has " + format.getChannels() + " channels; one or two are read: mix it down");
        }
        return PcmSamples.of(format, MOST);
    }

    /** @throws ScoreException in one line if it is no sound that is read */
    static SoundStream open(Path file, String name) throws IOException {
        BufferedInputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
        try {
            return new SoundStream(name, AudioSystem.getAudioInputStream(in));
        } catch (UnsupportedAudioFileException | EOFException | IllegalArgumentException e) {
            in.close();
            throw new ScoreException(name + " begins like a WAV file, but its format is not read; save it as WAV with 16 or 24"
                    + " bits (PCM)", e);
        } catch (RuntimeException e) {
            in.close();
            throw e;
        }
    }

    @Override
    public double rate() {
        return format.getSampleRate() / decimator.factor();
    }

    /** @throws ScoreException if the file ends before its header says */
    @Override
    public int read(float[] into) throws IOException {
        while (!ended) {
            int got = in.readNBytes(bytes, 0, bytes.length);
            int frames = got / format.getFrameSize();
            read += frames;
            samples.decode(bytes, frames, block);
            ended = got < bytes.length;
            int kept = decimator.run(block, frames, into);
            if (ended) {
                checkWhole();
            }
            if (kept > 0) {
                return kept;
            }
        }
        return 0;
    }

    private void checkWhole() {
        long said = in.getFrameLength();
        if (said > 0 && read < said) {
            throw new ScoreException(String.format(Locale.ROOT, "%s is cut off: it has %.1f s of the %.1f s that it says;"
                    + " save it again", name, read / format.getSampleRate(), said / format.getSampleRate()));
        }
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
