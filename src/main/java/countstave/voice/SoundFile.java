package countstave.voice;

import countstave.pcm.PcmSamples;
import countstave.score.ScoreException;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;

/** Reads a recording: PCM of 8 to 32 bits or floats, µ-law or A-law, any number of channels, 4 to 400 kHz. */
final class SoundFile {

    /** Nobody needs this long for a syllable. */
    static final int LONGEST_SECONDS = 3;
    private static final int MOST_CHANNELS = 32;

    private SoundFile() {
    }

    /**
     * The recording as one channel at {@link Clip#RATE}.
     *
     * @param name of the file, for messages
     * @throws ScoreException if it is no recording that can be read, or too long
     */
    static float[] read(Path file, String name) {
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file));
                AudioInputStream stream = AudioSystem.getAudioInputStream(in)) {
            AudioFormat format = stream.getFormat();
            boolean coded = format.getEncoding() == AudioFormat.Encoding.ULAW || format.getEncoding() == AudioFormat.Encoding.ALAW;
            if (!coded) {
                return samples(stream, format, name);
            }
            AudioFormat plain = new AudioFormat(format.getSampleRate(), 16, format.getChannels(), true, false);
            return samples(AudioSystem.getAudioInputStream(plain, stream), plain, name);
        } catch (UnsupportedAudioFileException e) {
            throw new ScoreException(name + ": is no WAV recording that can be read; save it as WAV, PCM, 16 bits", e);
        } catch (IOException e) {
            throw new ScoreException(name + ": cannot be read; check the file and its permissions", e);
        }
    }

    private static float[] samples(AudioInputStream stream, AudioFormat format, String name) throws IOException {
        int channels = format.getChannels();
        int bits = format.getSampleSizeInBits();
        double rate = format.getSampleRate();
        boolean floats = format.getEncoding() == AudioFormat.Encoding.PCM_FLOAT;
        boolean known = floats ? bits == 32 : bits >= 8 && bits <= 32 && bits % 8 == 0
                && (format.getEncoding() == AudioFormat.Encoding.PCM_SIGNED || format.getEncoding() == AudioFormat.Encoding.PCM_UNSIGNED);
        if (!known || channels < 1 || channels > MOST_CHANNELS || !(rate >= 4_000 && rate <= 400_000)) {
            throw new ScoreException(name + ": is a recording of a kind that is not read (" + numbers(format)
                    + "); save it as WAV, PCM, 16 bits, 44100 samples a second");
        }
        int frame = channels * bits / 8;
        long most = (long) Math.ceil(LONGEST_SECONDS * rate) * frame;
        byte[] bytes = stream.readNBytes(Math.toIntExact(most + frame));
        if (bytes.length > most) {
            throw new ScoreException(name + ": lasts more than " + LONGEST_SECONDS + " seconds; a recording holds one syllable:"
                    + " cut it");
        }
        float[] sound = new float[bytes.length / frame];
        PcmSamples.of(format, 1).decode(bytes, sound.length, sound);
        return Resampling.toRate(sound, rate);
    }

    private static String numbers(AudioFormat format) {
        return format.getChannels() + (format.getChannels() == 1 ? " channel, " : " channels, ") + format.getSampleSizeInBits()
                + " bits, " + Math.round(format.getSampleRate()) + " samples a second";
    }
}
