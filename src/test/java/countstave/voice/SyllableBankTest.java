package countstave.voice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.AndWords;
import countstave.count.CountingSystem;
import countstave.plain.Phrases;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SyllableBankTest {

    private static final Path FOLDER = Path.of("src/main/resources/countstave/voice");
    private static final long MOST_BYTES = 2_000_000;

    @Test
    void staysWithinTwoMegabytes() throws IOException {
        long bytes = 0;
        try (var files = Files.list(FOLDER)) {
            for (Path file : files.toList()) {
                bytes += Files.size(file);
            }
        }
        assertTrue(bytes <= MOST_BYTES, bytes + " bytes");
    }

    /** Systems × divisions × languages: nothing is said by a stand-in, in words as printed and in each voice's language. */
    @ParameterizedTest
    @EnumSource(Register.class)
    void everyWordOfEverySystemInEveryLanguageIsThere(Register register) {
        SyllableBank bank = SyllableBank.of(register);
        List<String> missing = new ArrayList<>();
        int found = 0;
        for (CountingSystem system : SystemWords.all()) {
            List<String> languages = new ArrayList<>(AndWords.languages().stream().map(AndWords.Language::code).toList());
            languages.add(null);
            for (String language : languages) {
                Pronunciation said = new Pronunciation(bank, system, language);
                for (String word : SystemWords.of(system)) {
                    Pronunciation.Found entry = said.find(word);
                    if (entry.standIn() || bank.clip(entry.section(), entry.word()).samples().length == 0) {
                        missing.add(system.title() + ", " + language + ": " + word);
                    }
                    found++;
                }
            }
        }
        assertEquals(List.of(), missing);
        assertTrue(found > 20_000, found + " words");
    }

    /** Where the key of a chart says how a printed word is said, the voice says it so. */
    @Test
    void wordsAreSaidAsTheKeyTells() {
        SyllableBank bank = SyllableBank.of(Register.LOW);
        int keys = 0;
        for (CountingSystem system : SystemWords.all()) {
            Pronunciation pronunciation = new Pronunciation(bank, system, null);
            for (String word : SystemWords.of(system)) {
                String key = system.key(java.util.Set.of(word), Phrases.ENGLISH);
                if (!key.isEmpty()) {
                    Pronunciation.Found found = pronunciation.find(word);
                    String said = bank.said(found.section(), found.word());
                    assertEquals(word + " is said “" + said + "”", key, system.title());
                    keys++;
                }
            }
        }
        assertTrue(keys > 50, keys + " keys");
    }

    /** The bank is what its word list says: nobody has changed one without the other. */
    @ParameterizedTest
    @EnumSource(Register.class)
    void theBankIsMadeOfTheWordList(Register register) throws IOException {
        SyllableBank bank = SyllableBank.of(register);
        List<String> listed = new ArrayList<>();
        String section = "";
        for (String line : Files.readAllLines(Path.of("src/voice/words.txt"))) {
            String[] cells = line.split(" *\\| *");
            if (line.startsWith("[")) {
                section = line.substring(1, line.indexOf(']'));
            } else if (!line.startsWith("#") && !line.isBlank()) {
                listed.add(section + " " + cells[0] + " " + cells[1]);
            }
        }
        List<String> there = new ArrayList<>();
        for (String name : bank.sections()) {
            bank.words(name).forEach(word -> there.add(name + " " + word + " " + bank.said(name, word)));
        }
        assertEquals(listed, there);
    }

    /** The centres of the table are those of the sounds; and they lie where phonetics has them. */
    @ParameterizedTest
    @EnumSource(Register.class)
    void centresAreThoseOfTheSounds(Register register) {
        SyllableBank bank = SyllableBank.of(register);
        for (String section : bank.sections()) {
            for (String word : bank.words(section)) {
                Clip clip = bank.clip(section, word);
                assertEquals(PerceptualCentre.of(clip.samples()), clip.centre(), 0.2, section + " " + word);
                assertTrue(clip.centre() > -0.01 * Clip.RATE && clip.centre() < 0.16 * Clip.RATE, section + " " + word);
            }
        }
        // the more consonants before the vowel, the later: Marcus 1981
        for (String early : List.of("1", "e", "a", "&", "8")) {
            for (String late : List.of("trip", "3")) {
                assertTrue(centre(bank, late) > centre(bank, early), early + " and " + late);
            }
        }
        for (String vowel : List.of("e", "a", "&", "8", "ah")) {
            assertTrue(centre(bank, vowel) < 15, vowel);
        }
        assertTrue(centre(bank, "3") > 40 && centre(bank, "trip") > 40);
    }

    private static double centre(SyllableBank bank, String word) {
        return bank.clip("en", word).centre() * 1000 / Clip.RATE;
    }

    /** Equally loud, cleanly trimmed, short enough to count with. */
    @ParameterizedTest
    @EnumSource(Register.class)
    void wordsAreEquallyLoudAndShort(Register register) {
        SyllableBank bank = SyllableBank.of(register);
        for (String section : bank.sections()) {
            for (String word : bank.words(section)) {
                float[] sound = bank.clip(section, word).samples();
                String name = section + " " + word;
                assertEquals(0.16, loudest(sound), 0.015, name);
                assertTrue(sound.length > 0.07 * Clip.RATE && sound.length < 0.47 * Clip.RATE, name + " " + sound.length);
                for (float sample : sound) {
                    assertTrue(Math.abs(sample) <= 1, name);
                }
                assertTrue(Math.abs(sound[sound.length - 1]) < 0.02, name + " is cut off");
            }
        }
    }

    private static double loudest(float[] sound) {
        int stretch = Clip.RATE * 6 / 100;
        double most = 0;
        for (int from = 0; from < Math.max(1, sound.length - stretch); from += 50) {
            double sum = 0;
            for (int i = from; i < Math.min(sound.length, from + stretch); i++) {
                sum += sound[i] * sound[i];
            }
            most = Math.max(most, sum / stretch);
        }
        return Math.sqrt(most);
    }

    /** What a word that is nowhere is said by; numbers beyond the bank. */
    @Test
    void standInsAreThoseThatAreDocumented() {
        SyllableBank bank = SyllableBank.of(Register.LOW);
        CountingSystem own = CountingSystem.parse("own.system", "name = own\n1 = N\n3 = N kix zlom\n4 = N pfft w y\n");
        Pronunciation said = new Pronunciation(bank, own, null);
        Map<String, String> standIns = Map.of("kix", "ti", "zlom", "jo", "pfft", "ta", "brü", "du", "hé", "te", "хау", "du");
        standIns.forEach((word, standIn) -> assertEquals(
                new Pronunciation.Found(SyllableBank.SYLLABLES, standIn, true), said.find(word)));
        assertEquals(new Pronunciation.Found("en", "7", true), said.find("17"));
        assertEquals(new Pronunciation.Found("en", "10", true), said.find("40"));
        assertEquals(new Pronunciation.Found("en", "16", false), said.find("16"));
        assertEquals(new Pronunciation.Found("ru", "9", true), new Pronunciation(bank, own, "ru").find("29"));
    }

    /** The same printed word is another one in another language, or in a system that belongs to none. */
    @Test
    void aWordIsThatOfItsLanguage() {
        SyllableBank bank = SyllableBank.of(Register.LOW);
        CountingSystem numbers = CountingSystem.named("numbers");
        assertEquals(new Pronunciation.Found("en", "e", false), new Pronunciation(bank, numbers, null).find("e"));
        assertEquals(new Pronunciation.Found("de", "e", false), new Pronunciation(bank, numbers.withAnd("de"), null).find("e"));
        assertEquals(new Pronunciation.Found("de", "de", false), new Pronunciation(bank, numbers.withAnd("de"), null).find("de"));
        assertEquals(new Pronunciation.Found("syllables", "de", false),
                new Pronunciation(bank, CountingSystem.named("gordon"), "de").find("de"));
        // printed in English, spoken in German: the word of the same place
        Pronunciation german = new Pronunciation(bank, numbers, "de");
        assertEquals(new Pronunciation.Found("de", "und", false), german.find("&"));
        assertEquals(new Pronunciation.Found("de", "de", false), german.find("a"));
        assertEquals(new Pronunciation.Found("syllables", "la", false), german.find("trip"));
        // a word of one's own for "and" is said by the first language that has it
        assertEquals(new Pronunciation.Found("fr", "et", false), new Pronunciation(bank, numbers.withAnd("et"), null).find("et"));
        assertFalse(bank.speaks("syllables") || bank.speaks("xx"));
    }
}
