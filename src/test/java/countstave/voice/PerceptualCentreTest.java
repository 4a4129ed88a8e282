package countstave.voice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** The model on sounds whose rise is known (Cummins and Port 1998: midway between 10 % and 90 % of the rise). */
class PerceptualCentreTest {

    private static final double MILLIS = Clip.RATE / 1000.0;

    /** A vowel-like tone of 1000 Hz: silent, rising in a straight line, steady, then silent at once. */
    private static float[] tone(double silent, double rising, double steady) {
        float[] sound = new float[(int) ((silent + rising + steady) * MILLIS)];
        for (int i = 0; i < sound.length; i++) {
            double since = i / MILLIS - silent;
            double level = since < 0 ? 0 : since < rising ? since / rising : 1;
            sound[i] = (float) (0.5 * level * Math.sin(2 * Math.PI * 1000 * i / Clip.RATE));
        }
        return sound;
    }

    @Test
    void aToneThatBeginsSuddenlyIsHeardAtItsBeginning() {
        assertEquals(0, PerceptualCentre.of(tone(0, 0, 400)) / MILLIS, 2.5);
        assertEquals(50, PerceptualCentre.of(tone(50, 0, 400)) / MILLIS, 2.5);
    }

    @Test
    void aSlowRiseIsHeardInItsMiddle() {
        assertEquals(40, PerceptualCentre.of(tone(0, 80, 400)) / MILLIS, 4);
        assertEquals(70, PerceptualCentre.of(tone(0, 140, 400)) / MILLIS, 5);
    }

    /** A hiss like that of an s lies above the band: it hardly moves the centre of the vowel behind it. */
    @Test
    void theHissOfAConsonantIsPassedOver() {
        float[] sound = tone(100, 0, 300);
        Random random = new Random(7);
        double before = 0;
        double before2 = 0;
        for (int i = 0; i < 100 * MILLIS; i++) {
            double white = random.nextGaussian() * 0.1;
            // two differences in a row: rising by 12 dB an octave, as hiss does
            sound[i] = (float) (white - 2 * before + before2);
            before2 = before;
            before = white;
        }
        double centre = PerceptualCentre.of(sound) / MILLIS;
        assertTrue(centre > 85 && centre < 103, centre + " ms");
    }

    /** Of two syllables the first counts, as long as it is no weak one. */
    @Test
    void theFirstSyllableCounts() {
        float[] two = new float[(int) (500 * MILLIS)];
        float[] one = tone(0, 0, 120);
        for (int i = 0; i < one.length; i++) {
            two[i + (int) (20 * MILLIS)] += one[i];
            two[i + (int) (300 * MILLIS)] += 1.3f * one[i];
        }
        assertEquals(20, PerceptualCentre.of(two) / MILLIS, 4);
    }

    /** It goes by the sound's shape alone: not by how loud it is, nor by what stands around it. */
    @Test
    void loudnessAndSilenceAroundChangeNothing() {
        float[] word = SyllableBank.of(Register.LOW).clip("en", "3").samples();
        double alone = PerceptualCentre.of(word);
        float[] soft = new float[word.length + 4000];
        for (int i = 0; i < word.length; i++) {
            soft[1000 + i] = word[i] / 16;
        }
        assertEquals(alone + 1000, PerceptualCentre.of(soft), 1);
        assertEquals(0, PerceptualCentre.of(new float[500]));
    }
}
