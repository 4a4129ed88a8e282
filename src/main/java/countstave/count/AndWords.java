package countstave.count;

import countstave.plain.SettingsText;
import countstave.plain.SettingsText.Setting;
import countstave.plain.SettingsText.Word;
import countstave.score.ScoreException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The words of counting aloud in several languages: "and", the four of "1 e &amp; a", the three of "1 trip let", and
 * what is said between them.
 *
 * <p>They are a choice of their own beside the system, because every system that is spoken in a language can be spoken
 * in another: a word of the system's language is exchanged for the word of the same place in the other.
 */
public final class AndWords {

    private static final String FILE = "and.words";

    /**
     * The words of a language.
     *
     * @param code ISO 639-1 code
     * @param name English name of the language
     * @param fourths second, third and fourth of a beat of four; the second of them is "and"
     * @param thirds second and third of a beat of three
     * @param fillers what is said between these words in finer divisions: none of them sounds like one of them
     * @param spoken printed words that are spoken in another way
     * @param source who says so
     * @param uncertain why it is not certain, or an empty text
     */
    public record Language(String code, String name, List<String> fourths, List<String> thirds,
            List<String> fillers, Map<String, String> spoken, String source, String uncertain) {

        /** What its speakers call it. */
        String ownName() {
            Locale locale = Locale.forLanguageTag(code);
            return locale.getDisplayLanguage(locale);
        }

        public String and() {
            return fourths.get(1);
        }
    }

    private AndWords() {
    }

    /** Read when a language is asked for first. */
    private static final class Shipped {
        static final List<Language> ALL = read();
    }

    /** All languages, in the order of the file. */
    public static List<Language> languages() {
        return Shipped.ALL;
    }

    private static List<Language> read() {
        SettingsText text = SettingsText.parse(FILE, ShippedSystems.text(FILE), SystemReader.FORM);
        Map<String, Map<String, Setting>> sections = new LinkedHashMap<>();
        for (Setting setting : text.settings()) {
            sections.computeIfAbsent(setting.section(), s -> new LinkedHashMap<>()).put(setting.keyText(), setting);
        }
        List<Language> languages = new ArrayList<>();
        sections.forEach((code, settings) -> languages.add(language(code, settings)));
        return List.copyOf(languages);
    }

    /** Source and words of one language, or null. */
    public static Language language(String code) {
        return languages().stream().filter(l -> l.code().equals(code)).findFirst().orElse(null);
    }

    static CountingSystem apply(CountingSystem system, SystemData data, String choice) {
        Language from = language(data.texts().language());
        if (from == null) {
            throw new ScoreException("the words of the counting system " + data.texts().name()
                    + " belong to no language, so \u201cand\u201d cannot be chosen; leave --and away or choose the system numbers");
        }
        Language to = language(choice);
        if (from.equals(to)) {
            return system;
        }
        Map<String, String> exchange = new HashMap<>();
        if (to == null) {
            exchange.put(from.and(), checked(choice));
        } else {
            put(exchange, from.fillers(), to.fillers());
            put(exchange, from.thirds(), to.thirds());
            put(exchange, from.fourths(), to.fourths());
        }
        Map<RowKey, Row> rows = new LinkedHashMap<>();
        data.rows().forEach((key, row) -> rows.put(key,
                new Row.Given(exchanged(row.words(), exchange))));
        Map<String, String> spoken = new LinkedHashMap<>(data.spoken());
        if (to != null) {
            // shortened number words are those of the language they are spoken in
            from.spoken().keySet().forEach(spoken::remove);
            exchange.keySet().forEach(spoken::remove);
            spoken.putAll(to.spoken());
        } else {
            spoken.remove(from.and());
        }
        SystemTexts old = data.texts();
        SystemTexts texts = new SystemTexts(old.name(), old.title(), old.about(), old.limits(),
                to == null ? old.language() : to.code(), exchange.get(from.and()));
        return new CountingSystem(new SystemData(texts, data.asymmetric(), data.spanAsBeat(), spoken, rows,
                exchanged(data.fillers(), exchange), data.unfilled(), data.others(), data.notes()));
    }

    private static List<String> exchanged(List<String> words, Map<String, String> exchange) {
        return words.stream().map(w -> exchange.getOrDefault(w, w)).toList();
    }

    private static void put(Map<String, String> exchange, List<String> from, List<String> to) {
        for (int i = 0; i < from.size(); i++) {
            exchange.put(from.get(i), to.get(i));
        }
    }

    private static String checked(String word) {
        for (Language language : languages()) {
            if (language.name().equalsIgnoreCase(word) || language.ownName().equalsIgnoreCase(word)) {
                throw new ScoreException("\u201c" + word + "\u201d is no word for \u201cand\u201d but a language: --and "
                        + language.code() + " takes its words");
            }
        }
        boolean oneToken = !word.isEmpty() && word.codePointCount(0, word.length()) <= 16
                && word.codePoints().allMatch(c -> Character.isLetter(c) || c == '&' || c == '+' || c == '\''
                        || Character.getType(c) == Character.NON_SPACING_MARK);
        if (!oneToken) {
            throw new ScoreException("the word for \u201cand\u201d has to be a single word; known languages are "
                    + String.join(", ", languages().stream().map(Language::code).toList()));
        }
        return word;
    }

    private static Language language(String code, Map<String, Setting> settings) {
        Map<String, String> spoken = new LinkedHashMap<>();
        settings.forEach((key, setting) -> {
            if (key.startsWith("spoken ")) {
                spoken.put(key.substring("spoken ".length()), setting.valueText());
            }
        });
        return new Language(code, text(settings, "name"), words(settings, "fourths"), words(settings, "thirds"),
                words(settings, "fillers"), spoken, text(settings, "source"), text(settings, "uncertain"));
    }

    private static String text(Map<String, Setting> settings, String key) {
        Setting setting = settings.get(key);
        return setting == null ? "" : setting.valueText();
    }

    private static List<String> words(Map<String, Setting> settings, String key) {
        return settings.get(key).value().stream().map(Word::text).toList();
    }
}
