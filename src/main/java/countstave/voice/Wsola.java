package countstave.voice;

/**
 * Shortens a sound without changing its pitch: waveform similarity overlap-add (Verhelst and Roelands 1993, An overlap-add
 * technique based on waveform similarity (WSOLA) for high quality time-scale modification of speech, Proc. ICASSP).
 * Pieces of the sound are laid over each other, each taken from where it continues the one before it best.
 */
final class Wsola {

    /** A piece: long enough for two periods of a low voice. */
    private static final int PIECE = Clip.RATE * 24 / 1000 / 2 * 2;
    private static final int HOP = PIECE / 2;
    /** How far from its place a piece may be taken: a period of a low voice either way. */
    private static final int SEARCH = Clip.RATE * 8 / 1000;
    /** Every so many places are tried, then every one around the best. */
    private static final int STRIDE = 4;

    private Wsola() {
    }

    /** The sound at {@code share} of its length, 0 to 1; its first samples stay as they are. */
    static float[] shortened(float[] sound, double share) {
        int length = (int) Math.round(sound.length * share);
        if (length >= sound.length || sound.length <= PIECE) {
            return sound.clone();
        }
        float[] out = new float[length];
        int taken = 0;
        // the first piece has nothing before it: its first half is left as it is
        copy(sound, 0, out, 0, HOP);
        for (int at = HOP; at < length; at += HOP) {
            int next = taken + HOP;
            int wanted = (int) Math.round((at - HOP) / share) + HOP;
            int best = Math.min(sound.length, wanted) <= next ? next : similar(sound, next, wanted);
            blend(sound, next, best, out, at);
            taken = best;
        }
        return out;
    }

    /** Where, around {@code wanted}, the sound goes on most like at {@code next}. */
    private static int similar(float[] sound, int next, int wanted) {
        int from = Math.max(next, wanted - SEARCH);
        int to = Math.max(from, Math.min(sound.length - HOP, wanted + SEARCH));
        int best = search(sound, next, from, to, STRIDE);
        return search(sound, next, Math.max(from, best - STRIDE), Math.min(to, best + STRIDE), 1);
    }

    private static int search(float[] sound, int next, int from, int to, int stride) {
        int best = from;
        double most = Double.NEGATIVE_INFINITY;
        for (int place = from; place <= to; place += stride) {
            double alike = 0;
            double power = 1e-9;
            for (int i = 0; i < HOP; i++) {
                float here = sample(sound, place + i);
                alike += here * sample(sound, next + i);
                power += here * here;
            }
            double likeness = alike / Math.sqrt(power);
            if (likeness > most) {
                most = likeness;
                best = place;
            }
        }
        return best;
    }

    /** From what would come next into what is taken instead. */
    private static void blend(float[] sound, int next, int best, float[] out, int at) {
        for (int i = 0; i < HOP && at + i < out.length; i++) {
            float share = (i + 0.5f) / HOP;
            out[at + i] = (1 - share) * sample(sound, next + i) + share * sample(sound, best + i);
        }
    }

    private static void copy(float[] sound, int from, float[] out, int at, int length) {
        for (int i = 0; i < length && at + i < out.length; i++) {
            out[at + i] = sample(sound, from + i);
        }
    }

    private static float sample(float[] sound, int at) {
        return at < sound.length ? sound[at] : 0;
    }
}
