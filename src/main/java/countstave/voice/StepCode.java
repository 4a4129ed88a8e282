package countstave.voice;

/**
 * The light coding of the bank: IMA ADPCM (IMA Digital Audio Focus and Technical Working Groups, Recommended Practices
 * for Enhancing Digital Audio Compatibility, 1992; tables from memory), four bits a sample, the lower half of a byte first.
 * Each word begins anew, at 0 and with a step of its own.
 */
public final class StepCode {

    private static final int[] INDEX = {-1, -1, -1, -1, 2, 4, 6, 8};
    private static final int[] STEPS = {7, 8, 9, 10, 11, 12, 13, 14, 16, 17, 19, 21, 23, 25, 28, 31, 34, 37, 41, 45, 50, 55,
        60, 66, 73, 80, 88, 97, 107, 118, 130, 143, 157, 173, 190, 209, 230, 253, 279, 307, 337, 371, 408, 449, 494, 544,
        598, 658, 724, 796, 876, 963, 1060, 1166, 1282, 1411, 1552, 1707, 1878, 2066, 2272, 2499, 2749, 3024, 3327, 3660,
        4026, 4428, 4871, 5358, 5894, 6484, 7132, 7845, 8630, 9493, 10442, 11487, 12635, 13899, 15289, 16818, 18500, 20350,
        22385, 24623, 27086, 29794, 32767};
    private static final float SCALE = 32_768;

    /** How many steps there are to begin with. */
    public static final int BEGINNINGS = STEPS.length;

    private int value;
    private int index;

    private StepCode(int index) {
        this.index = index;
    }

    /**
     * The samples of a word.
     *
     * @param from where its bytes begin
     * @param samples how many there are
     * @param beginning the step it begins with
     */
    public static float[] decode(byte[] code, int from, int samples, int beginning) {
        StepCode coder = new StepCode(beginning);
        float[] sound = new float[samples];
        for (int i = 0; i < samples; i++) {
            int both = code[from + i / 2];
            sound[i] = coder.next(i % 2 == 0 ? both & 15 : both >> 4 & 15) / SCALE;
        }
        return sound;
    }

    /** The code of a word that begins with a step. */
    public static byte[] encode(float[] sound, int beginning) {
        StepCode coder = new StepCode(beginning);
        byte[] code = new byte[(sound.length + 1) / 2];
        for (int i = 0; i < sound.length; i++) {
            code[i / 2] |= (byte) (coder.nearest(Math.round(sound[i] * (SCALE - 1))) << (i % 2 == 0 ? 0 : 4));
        }
        return code;
    }

    private int nearest(int wanted) {
        int step = STEPS[index];
        int difference = Math.abs(wanted - value);
        int code = wanted < value ? 8 : 0;
        for (int bit = 4; bit > 0; bit >>= 1, step >>= 1) {
            if (difference >= step) {
                code |= bit;
                difference -= step;
            }
        }
        next(code);
        return code;
    }

    private int next(int code) {
        int step = STEPS[index];
        int change = (step >> 3) + ((code & 4) != 0 ? step : 0) + ((code & 2) != 0 ? step >> 1 : 0) + ((code & 1) != 0 ? step >> 2 : 0);
        value = Math.max(-32_768, Math.min(32_767, (code & 8) != 0 ? value - change : value + change));
        index = Math.max(0, Math.min(STEPS.length - 1, index + INDEX[code & 7]));
        return value;
    }
}
