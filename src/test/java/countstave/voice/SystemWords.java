package countstave.voice;

import countstave.count.AndWords;
import countstave.count.CountingSystem;
import countstave.count.Feel;
import countstave.count.Row;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;

/** Every word that a counting system can say. */
final class SystemWords {

    static final int MOST_PARTS = 16;

    /** Asked for by several tests, of one system often in several languages of the voice. */
    private static final List<CountingSystem> ALL = shipped();
    private static final Map<CountingSystem, Set<String>> WORDS = new ConcurrentHashMap<>();

    private SystemWords() {
    }

    /** The shipped systems, those of a language in every language of {@code --and}. */
    static List<CountingSystem> all() {
        return ALL;
    }

    private static List<CountingSystem> shipped() {
        List<CountingSystem> systems = new ArrayList<>();
        for (String name : CountingSystem.names()) {
            CountingSystem system = CountingSystem.named(name);
            systems.add(system);
            if (!system.language().isEmpty()) {
                AndWords.languages().stream().filter(language -> !language.code().equals(system.language()))
                        .forEach(language -> systems.add(system.withAnd(language.code())));
            }
        }
        return List.copyOf(systems);
    }

    /** What it says in beats of up to 16 parts, in groups of irregular meters, in tuplets that are counted through. */
    static Set<String> of(CountingSystem system) {
        return WORDS.computeIfAbsent(system, SystemWords::words);
    }

    private static Set<String> words(CountingSystem system) {
        Set<String> words = new TreeSet<>();
        for (int parts = 1; parts <= MOST_PARTS; parts++) {
            for (Feel feel : Feel.values()) {
                add(words, system.row(parts, feel), parts);
            }
            add(words, system.spanRow(parts, false), parts);
            add(words, system.spanRow(parts, true), parts);
        }
        for (int units = 2; units <= 4; units++) {
            for (int parts = 1; parts <= 4; parts++) {
                add(words, system.groupRow(units, parts), units * parts);
            }
        }
        return Collections.unmodifiableSet(words);
    }

    private static void add(Set<String> words, Row row, int parts) {
        for (int part = 0; part < parts; part++) {
            for (int beat = 1; beat <= MOST_PARTS; beat++) {
                words.add(row.say(part, beat));
            }
        }
    }
}
