package countstave.voice;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The spoken words that come with countstave: every word of the shipped counting systems, and the numbers 1 to 16 and the
 * words of counting aloud in all languages of {@code --and}. Each has its perceptual centre in the bank's table.
 *
 * <p>Words stand in sections: one a language, named by its code, and {@value #SYLLABLES} for those that belong to none.
 * A table ({@code low.txt}) names the words in the order in which they lie in the sound beside it ({@code low.adpcm}, see
 * {@link StepCode}). How both are made: {@code src/voice/README.md}. Immutable and safe to share between threads.
 */
public final class SyllableBank {

    /** The section of the words that belong to no language. */
    public static final String SYLLABLES = "syllables";

    private static final String FOLDER = "/countstave/voice/";
    private static final Map<Register, SyllableBank> READ = Collections.synchronizedMap(new EnumMap<>(Register.class));

    /** A word of the table; {@code from}: where its bytes begin. {@code centre}: milliseconds from its first sample. */
    private record Entry(String said, int from, int samples, int beginning, double centre) {
    }

    private final Map<String, Map<String, Entry>> sections = new LinkedHashMap<>();
    private final Map<Entry, Clip> decoded = new ConcurrentHashMap<>();
    private final byte[] code;

    private SyllableBank(Register register) {
        code = resource(register.id() + ".adpcm");
        Map<String, Entry> section = null;
        int from = 0;
        for (String line : new String(resource(register.id() + ".txt"), StandardCharsets.UTF_8).split("\n")) {
            if (line.startsWith("[")) {
                section = new LinkedHashMap<>();
                sections.put(line.substring(1, line.length() - 1), section);
            } else if (!line.startsWith("#") && !line.isBlank()) {
                String[] cells = line.split(" *\\| *");
                int samples = Integer.parseInt(cells[2]);
                section.put(cells[0], new Entry(cells[1], from, samples, Integer.parseInt(cells[3]),
                        Double.parseDouble(cells[4])));
                from += (samples + 1) / 2;
            }
        }
        if (from != code.length) {
            throw new IllegalStateException("the program is incomplete: its " + register.id() + " voice and the table of it differ");
        }
    }

    private static byte[] resource(String name) {
        try (InputStream in = SyllableBank.class.getResourceAsStream(FOLDER + name)) {
            if (in == null) {
                throw new IllegalStateException("the program is incomplete: " + FOLDER + name + " is missing");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The words of one voice. */
    public static SyllableBank of(Register register) {
        return READ.computeIfAbsent(register, SyllableBank::new);
    }

    /** {@value #SYLLABLES} and the codes of the languages. */
    public Set<String> sections() {
        return Collections.unmodifiableSet(sections.keySet());
    }

    /** Whether a language has a section. */
    public boolean speaks(String language) {
        return sections.containsKey(language) && !language.equals(SYLLABLES);
    }

    /** The printed words of a section, which is there. */
    public Set<String> words(String section) {
        return Collections.unmodifiableSet(sections.get(section).keySet());
    }

    /** Whether a section has a word. */
    public boolean has(String section, String word) {
        return sections.getOrDefault(section, Map.of()).containsKey(word);
    }

    /** How a word that is there is said, in letters: {@code sev} for 7, {@code and} for &amp;. */
    public String said(String section, String word) {
        return sections.get(section).get(word).said();
    }

    /** The sound of a word that is there. */
    public Clip clip(String section, String word) {
        return decoded.computeIfAbsent(sections.get(section).get(word), entry -> new Clip(
                StepCode.decode(code, entry.from(), entry.samples(), entry.beginning()),
                entry.centre() * Clip.RATE / 1000));
    }
}
