package countstave.voice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class FittingTest {

    private static final double MILLIS = Clip.RATE / 1000.0;

    /** A voice-like sound of one pitch: harmonics with falling strength. */
    private static float[] hum(double hertz, double millis) {
        float[] sound = new float[(int) (millis * MILLIS)];
        for (int i = 0; i < sound.length; i++) {
            for (int harmonic = 1; harmonic <= 8; harmonic++) {
                sound[i] += (float) (0.3 / harmonic * Math.sin(2 * Math.PI * hertz * harmonic * i / Clip.RATE));
            }
        }
        return sound;
    }

    /** The period at which a sound is most like itself. */
    private static double hertz(float[] sound) {
        int from = sound.length / 4;
        int length = sound.length / 3;
        double most = 0;
        int best = 0;
        for (int period = Clip.RATE / 400; period < Clip.RATE / 60; period++) {
            double alike = 0;
            double power = 1e-9;
            for (int i = from; i < from + length && i + period < sound.length; i++) {
                alike += sound[i] * sound[i + period];
                power += sound[i + period] * sound[i + period];
            }
            if (alike / Math.sqrt(power) > most * 1.02) {
                most = alike / Math.sqrt(power);
                best = period;
            }
        }
        return (double) Clip.RATE / best;
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.9, 0.7, 0.5, 0.4})
    void aShortenedSoundKeepsItsPitch(double share) {
        for (double pitch : new double[] {95, 130, 210}) {
            float[] sound = hum(pitch, 300);
            float[] shorter = Wsola.shortened(sound, share);
            assertEquals(300 * share, shorter.length / MILLIS, 0.1);
            assertEquals(pitch, hertz(shorter), pitch * 0.02);
            // nothing is lost of its strength where pieces meet
            for (int from = 0; from + 400 < shorter.length; from += 400) {
                double sum = 0;
                for (int i = from; i < from + 400; i++) {
                    sum += shorter[i] * shorter[i];
                }
                assertTrue(sum / 400 > 0.025, "a gap at " + from);
            }
        }
    }

    /** Every two words of a language, at the voice limit and well beyond it: one is over before the other begins. */
    @ParameterizedTest
    @EnumSource(Register.class)
    void everyWordEndsBeforeEveryOtherBegins(Register register) {
        SyllableBank bank = SyllableBank.of(register);
        Fitting fitting = new Fitting();
        for (double millis : new double[] {154, 110, 84}) {
            double between = millis * MILLIS;
            for (String one : bank.words("en")) {
                for (String other : List.of("3", "trip", "e", "6", "&")) {
                    Clip first = bank.clip("en", one);
                    Clip second = bank.clip("en", other);
                    double share = Fitting.share(first, second, between);
                    Clip next = fitting.shortened(second, share);
                    Clip word = fitting.ended(fitting.shortened(first, share), next, between);
                    double end = word.samples().length - word.centre();
                    double begin = between - next.centre();
                    assertTrue(end <= begin, one + " " + other + " at " + millis + ": " + (end - begin) / MILLIS + " ms");
                    assertTrue(word.seconds() > 0.04, one + " before " + other + ": " + word.seconds());
                    assertEquals(PerceptualCentre.of(word.samples()), word.centre(), 0.2);
                }
            }
        }
    }

    @Test
    void whatFitsIsLeftAlone() {
        Clip clip = SyllableBank.of(Register.LOW).clip("en", "1");
        Fitting fitting = new Fitting();
        assertEquals(1, Fitting.share(clip, clip, Clip.RATE));
        assertSame(clip, fitting.shortened(clip, 1));
        assertSame(clip, fitting.ended(clip, clip, Clip.RATE));
        assertSame(clip, fitting.begun(clip, Clip.RATE));
        // like places are worked out once
        assertSame(fitting.shortened(clip, 0.5), fitting.shortened(clip, 0.5));
    }
}
