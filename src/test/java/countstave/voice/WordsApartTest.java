package countstave.voice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.CountingSystem;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * No two words of a system sound alike, by a simple distance: the mean difference in decibels of their spectra, in 18 bands
 * up to 6 kHz, at every 5 ms of the first 80, where the consonant is, and at as many moments of what follows. Two words are
 * farther apart than each is from itself when the voice shortens it a little.
 */
class WordsApartTest {

    private static final int BEGINNING = 16;
    private static final int MOMENTS = 2 * BEGINNING;
    private static final int STEP = Clip.RATE * 5 / 1000;
    private static final int BANDS = 18;
    private static final int WINDOW = Clip.RATE * 16 / 1000;
    private static final double FLOOR = -45;
    private static final double SHORTER = 0.85;
    /** For each band three frequencies: cosines and sines under a window. */
    private static final float[][] WAVES = waves();
    /** A word of the bank is a word of many systems. */
    private static final Map<Clip, double[]> SPECTRA = new ConcurrentHashMap<>();

    @ParameterizedTest
    @EnumSource(Register.class)
    void noTwoWordsOfASystemAreAlike(Register register) {
        SyllableBank bank = SyllableBank.of(register);
        Map<Clip, Double> selves = new HashMap<>();
        Map<Double, String> nearest = new TreeMap<>();
        for (CountingSystem system : SystemWords.all()) {
            Pronunciation pronunciation = new Pronunciation(bank, system, null);
            Map<String, Clip> clips = new TreeMap<>();
            for (String word : SystemWords.of(system)) {
                Pronunciation.Found found = pronunciation.find(word);
                clips.put(word, bank.clip(found.section(), found.word()));
            }
            for (Clip clip : clips.values()) {
                double[] spectrum = spectrum(clip);
                selves.computeIfAbsent(clip, c -> distance(spectrum, spectrum(Wsola.shortened(c.samples(), SHORTER))));
            }
            List<String> words = new ArrayList<>(clips.keySet());
            for (int i = 0; i < words.size(); i++) {
                for (int j = 0; j < i; j++) {
                    Clip one = clips.get(words.get(i));
                    Clip other = clips.get(words.get(j));
                    double distance = distance(spectrum(one), spectrum(other));
                    nearest.put(distance / Math.max(selves.get(one), selves.get(other)),
                            system.title() + ": " + words.get(i) + " and " + words.get(j) + ", " + distance + " dB");
                }
            }
        }
        List<String> alike = nearest.entrySet().stream().filter(entry -> entry.getKey() <= 1)
                .map(entry -> entry.getValue() + ", " + entry.getKey() + " of a word from itself").toList();
        assertEquals(List.of(), alike);
        assertTrue(nearest.size() > 500);
    }

    /**
     * At the voice limit a word, shortened to stand between two others, is still told by its spectrum: of all words of its
     * system it is most like itself. Not so the numbers from twelve up: two syllables, or one of six sounds, have no room there.
     */
    @ParameterizedTest
    @EnumSource(Register.class)
    void wordsAreToldAtTheVoiceLimit(Register register) {
        SyllableBank bank = SyllableBank.of(register);
        Fitting fitting = new Fitting();
        double between = Clip.RATE / 6.5;
        Map<Clip, double[]> shortened = new HashMap<>();
        List<String> mistaken = new ArrayList<>();
        int told = 0;
        for (String name : CountingSystem.names()) {
            CountingSystem system = CountingSystem.named(name);
            Pronunciation pronunciation = new Pronunciation(bank, system, null);
            Map<String, Clip> clips = new TreeMap<>();
            for (String word : SystemWords.of(system)) {
                Pronunciation.Found found = pronunciation.find(word);
                clips.put(word, bank.clip(found.section(), found.word()));
            }
            for (String word : clips.keySet()) {
                double[] heard = shortened.computeIfAbsent(clips.get(word), clip -> {
                    Clip next = fitting.shortened(clip, Fitting.share(clip, clip, between));
                    return spectrum(fitting.ended(next, next, between).samples());
                });
                String nearest = word;
                for (String other : clips.keySet()) {
                    nearest = distance(heard, spectrum(clips.get(other))) < distance(heard, spectrum(clips.get(nearest)))
                            ? other : nearest;
                }
                if (!nearest.equals(word) && !word.matches("1[2-6]")) {
                    mistaken.add(name + ": " + word + " for " + nearest);
                }
                told++;
            }
        }
        assertEquals(List.of(), mistaken, "of " + told);
    }

    private static double distance(double[] one, double[] other) {
        double sum = 0;
        for (int i = 0; i < one.length; i++) {
            sum += Math.abs(one[i] - other[i]);
        }
        return sum / one.length;
    }

    private static double[] spectrum(Clip clip) {
        return SPECTRA.computeIfAbsent(clip, c -> spectrum(c.samples()));
    }

    private static double[] spectrum(float[] sound) {
        double[] spectrum = new double[MOMENTS * BANDS];
        double most = 0;
        int after = BEGINNING * STEP;
        for (int moment = 0; moment < MOMENTS; moment++) {
            int from = moment < BEGINNING ? moment * STEP : after + (int) Math.round(
                    (double) (moment - BEGINNING) / BEGINNING * Math.max(0, sound.length - after - WINDOW / 2));
            for (int band = 0; band < BANDS; band++) {
                double power = power(sound, from, band);
                spectrum[moment * BANDS + band] = power;
                most = Math.max(most, power);
            }
        }
        for (int i = 0; i < spectrum.length; i++) {
            spectrum[i] = Math.max(FLOOR, 10 * Math.log10(spectrum[i] / most + 1e-12));
        }
        return spectrum;
    }

    /** Power in a band a fifth of an octave wide. */
    private static double power(float[] sound, int from, int band) {
        double power = 0;
        int length = Math.min(WINDOW, sound.length - from);
        for (int wave = 6 * band; wave < 6 * (band + 1); wave += 2) {
            float[] cosine = WAVES[wave];
            float[] sine = WAVES[wave + 1];
            double re = 0;
            double im = 0;
            for (int i = 0; i < length; i++) {
                float sample = sound[from + i];
                re += sample * cosine[i];
                im += sample * sine[i];
            }
            power += re * re + im * im;
        }
        return power;
    }

    private static float[][] waves() {
        float[][] waves = new float[6 * BANDS][WINDOW];
        for (int band = 0; band < BANDS; band++) {
            for (int k = 0; k < 3; k++) {
                double hertz = 200 * Math.pow(30, (double) band / (BANDS - 1)) * (1 + 0.06 * (k - 1));
                for (int i = 0; i < WINDOW; i++) {
                    double window = Math.sin(Math.PI * (i + 0.5) / WINDOW);
                    waves[6 * band + 2 * k][i] = (float) (window * Math.cos(2 * Math.PI * hertz * i / Clip.RATE));
                    waves[6 * band + 2 * k + 1][i] = (float) (window * Math.sin(2 * Math.PI * hertz * i / Clip.RATE));
                }
            }
        }
        return waves;
    }
}
