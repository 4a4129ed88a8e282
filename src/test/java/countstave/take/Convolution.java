package countstave.take;

import java.util.Arrays;
import org.jtransforms.fft.FloatFFT_1D;

/** A sound through a filter, by overlapping pieces. */
final class Convolution {

    private Convolution() {
    }

    static float[] of(float[] sound, float[] answer) {
        int size = Integer.highestOneBit(answer.length * 2) << 1;
        int step = size - answer.length;
        FloatFFT_1D fft = new FloatFFT_1D(size);
        float[] filter = Arrays.copyOf(answer, size);
        fft.realForward(filter);
        float[] out = new float[sound.length];
        for (int from = 0; from < sound.length; from += step) {
            float[] piece = Arrays.copyOf(Arrays.copyOfRange(sound, from, Math.min(sound.length, from + step)), size);
            fft.realForward(piece);
            piece[0] *= filter[0];
            piece[1] *= filter[1];
            for (int k = 1; k < size / 2; k++) {
                float re = piece[2 * k] * filter[2 * k] - piece[2 * k + 1] * filter[2 * k + 1];
                piece[2 * k + 1] = piece[2 * k] * filter[2 * k + 1] + piece[2 * k + 1] * filter[2 * k];
                piece[2 * k] = re;
            }
            fft.realInverse(piece, true);
            for (int i = 0; i < size && from + i < out.length; i++) {
                out[from + i] += piece[i];
            }
        }
        return out;
    }
}
