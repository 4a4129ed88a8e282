package countstave.voice;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Makes words end before the next one begins. First both are shortened, each as a whole and at its own pitch, so that
 * nothing of either is lost; what is still too long at the end dies away. A shortened word gets its centre anew.
 * Remembers what it made, some hundred words at most. For one thread.
 */
public final class Fitting {

    /** Silence between two words: enough to hear that one is over; an assumption. */
    private static final int APART = Clip.RATE * 8 / 1000;
    /** Words are not shortened to less than this share: beyond, the pieces left of a consonant are none. An assumption. */
    private static final double LEAST_SHARE = 0.4;
    /** Shares and ends are rounded down to steps, so that like places are worked out once. */
    private static final double SHARES = 32;
    private static final int END_STEP = Clip.RATE / 1000;
    /** What is always left of a word behind its centre. */
    private static final int LEAST_AFTER = Clip.RATE * 15 / 1000;
    private static final int FADE_OUT = Clip.RATE * 6 / 1000;
    private static final int FADE_IN = Clip.RATE * 2 / 1000;
    private static final int REMEMBERED = 512;

    /** {@code what}: a share, an end, or a beginning. */
    private record Made(Clip clip, String what, double value) {
    }

    private final Map<Made, Clip> made = new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Made, Clip> eldest) {
            return size() > REMEMBERED;
        }
    };

    /**
     * To which share two words have to be shortened that follow each other.
     *
     * @param between samples from the centre of one to the centre of the other
     */
    public static double share(Clip before, Clip after, double between) {
        double share = (between - APART) / (before.after() + after.before());
        return share >= 1 ? 1 : Math.max(LEAST_SHARE, Math.floor(share * SHARES) / SHARES);
    }

    /** A word at a share of its length. */
    public Clip shortened(Clip word, double share) {
        if (share >= 1) {
            return word;
        }
        return remembered(new Made(word, "share", share), () -> {
            float[] samples = Wsola.shortened(word.samples(), share);
            CleanSound.fadeOut(samples, FADE_OUT);
            return Clip.of(samples);
        });
    }

    /**
     * A word that is over before another begins.
     *
     * @param between samples from its centre to the centre of the next
     * @param next as it is going to sound
     */
    public Clip ended(Clip word, Clip next, double between) {
        int most = (int) Math.floor((between - APART - next.before()) / END_STEP) * END_STEP;
        if (word.after() <= most) {
            return word;
        }
        int length = word.before() + Math.max(LEAST_AFTER, most);
        if (length >= word.samples().length) {
            return word;
        }
        return remembered(new Made(word, "end", length), () -> {
            float[] samples = java.util.Arrays.copyOf(word.samples(), length);
            CleanSound.fadeOut(samples, Math.min(FADE_OUT, length / 3));
            return Clip.of(samples);
        });
    }

    /** A word before whose centre there is room for so many samples only: it begins later, nearer to its vowel. */
    public Clip begun(Clip word, double room) {
        int cut = (int) Math.ceil(word.centre() - Math.max(0, room));
        if (cut <= 0) {
            return word;
        }
        return remembered(new Made(word, "begin", cut), () -> {
            float[] samples = java.util.Arrays.copyOfRange(word.samples(), cut, word.samples().length);
            for (int i = 0; i < Math.min(FADE_IN, samples.length); i++) {
                samples[i] *= (i + 1f) / (FADE_IN + 1);
            }
            return Clip.of(samples);
        });
    }

    private Clip remembered(Made what, java.util.function.Supplier<Clip> maker) {
        Clip known = made.get(what);
        if (known == null) {
            known = maker.get();
            made.put(what, known);
        }
        return known;
    }
}
