package countstave.take;

import countstave.score.ScoreException;
import javax.sound.sampled.AudioFormat;

/**
 * From the bytes of linear samples to numbers between −1 and 1, all channels made one by their mean.
 *
 * @param channels 1 or 2
 * @param width bytes of a sample
 * @param floating whether they are IEEE 754 numbers
 * @param signed whether integers have their zero at 0
 * @param bigEndian whether the highest byte comes first
 */
record PcmSamples(int channels, int width, boolean floating, boolean signed, boolean bigEndian) {

    /** @throws ScoreException in one line if samples of this format are not read */
    static PcmSamples of(AudioFormat format, String name) {
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
        return new PcmSamples(format.getChannels(), format.getFrameSize() / format.getChannels(), floating, signed,
                format.isBigEndian());
    }

    /** @param into gets one number a frame */
    void decode(byte[] bytes, int frames, float[] into) {
        int at = 0;
        for (int frame = 0; frame < frames; frame++) {
            double sum = 0;
            for (int channel = 0; channel < channels; channel++) {
                sum += sample(bytes, at);
                at += width;
            }
            into[frame] = (float) (sum / channels);
        }
    }

    private double sample(byte[] bytes, int at) {
        long bits = 0;
        for (int i = 0; i < width; i++) {
            bits = bits << 8 | bytes[bigEndian ? at + i : at + width - 1 - i] & 0xFF;
        }
        if (floating) {
            double number = width == 4 ? Float.intBitsToFloat((int) bits) : Double.longBitsToDouble(bits);
            // a number that is none would spoil all that is worked out from it
            return Double.isFinite(number) ? Math.max(-4, Math.min(4, number)) : 0;
        }
        int spare = 64 - 8 * width;
        double scale = 1L << 8 * width - 1;
        return signed ? (bits << spare >> spare) / scale : bits / scale - 1;
    }
}
