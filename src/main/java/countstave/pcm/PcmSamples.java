package countstave.pcm;

import javax.sound.sampled.AudioFormat;

/**
 * From the bytes of linear samples to numbers between −1 and 1, all channels made one by their mean.
 *
 * @param channels from 1 on
 * @param width bytes of a sample
 * @param floating whether they are IEEE 754 numbers
 * @param signed whether integers have their zero at 0
 * @param bigEndian whether the highest byte comes first
 * @param most of numbers with a point what is beyond it either way is cut there; 1 is full scale
 */
public record PcmSamples(int channels, int width, boolean floating, boolean signed, boolean bigEndian, double most) {

    /**
     * What a file's header says of them.
     *
     * @param most of numbers with a point what is beyond it either way is cut there
     */
    public static PcmSamples of(AudioFormat format, double most) {
        AudioFormat.Encoding encoding = format.getEncoding();
        return new PcmSamples(format.getChannels(), format.getFrameSize() / format.getChannels(),
                encoding.equals(AudioFormat.Encoding.PCM_FLOAT), !encoding.equals(AudioFormat.Encoding.PCM_UNSIGNED), format.isBigEndian(),
                most);
    }

    /** @param into gets one number a frame */
    public void decode(byte[] bytes, int frames, float[] into) {
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
            return Double.isFinite(number) ? Math.max(-most, Math.min(most, number)) : 0;
        }
        int spare = 64 - 8 * width;
        double scale = 1L << 8 * width - 1;
        return signed ? (bits << spare >> spare) / scale : bits / scale - 1;
    }
}
