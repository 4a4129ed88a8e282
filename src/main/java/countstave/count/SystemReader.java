package countstave.count;

import countstave.plain.SettingsText;
import countstave.plain.SettingsText.Setting;
import countstave.plain.SettingsText.Word;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Understands the settings of a system file. */
final class SystemReader {

    /** Of system files, and of the words for the half beat. */
    static final SettingsText.Form FORM = new SettingsText.Form("4 = N e & a", true);

    private static final int LONGEST_WORD = 16;

    /** In the place of a filler: none, whatever the system has that this one is based on. */
    private static final String NONE = "none";

    private final SettingsText text;
    private final Map<String, String> texts = new HashMap<>();
    private final Map<String, String> spoken = new LinkedHashMap<>();
    private final Map<RowKey, Row> rows = new LinkedHashMap<>();
    private final Map<RowKey, Row> inherited = new LinkedHashMap<>();
    private final Map<Feel, OtherRule> others = new HashMap<>();
    private final Set<RowKey> unfilled = new HashSet<>();
    private List<String> fillers = List.of();
    private final Map<RowKey, CountingSystem.Note> notes = new HashMap<>();
    private final Map<String, Word> seen = new HashMap<>();
    private CountingSystem.Asymmetric asymmetric = CountingSystem.Asymmetric.UNITS;
    private boolean spanAsBeat;

    SystemReader(SettingsText text, String fileName) {
        this.text = text;
        texts.put("name", fileName.replaceAll("^.*[/\\\\]", "").replaceAll("\\.system$", ""));
    }

    SystemData read() {
        for (Setting setting : text.settings()) {
            read(setting);
        }
        Map<RowKey, Row> all = new LinkedHashMap<>(inherited);
        all.putAll(rows);
        if (!all.containsKey(new RowKey(1, null))) {
            throw text.error("the row 1 is missing: what is said in a beat that is not divided; for example: 1 = N");
        }
        if (seen.containsKey("filler")) {
            unfilled.clear();
        }
        others.putIfAbsent(null, new OtherRule.FirstOf(List.of(
                new OtherRule.Inside(List.of(4, 3, 2), CountingSystem.NUMBERS),
                new OtherRule.Inside(List.of(1), CountingSystem.NUMBERS))));
        String name = texts.get("name");
        SystemTexts own = new SystemTexts(name, texts.getOrDefault("title", name), texts.getOrDefault("about", ""),
                texts.getOrDefault("limits", ""), texts.getOrDefault("language", ""), "");
        return new SystemData(own, asymmetric, spanAsBeat, spoken, all, fillers, unfilled, others, notes);
    }

    private void read(Setting setting) {
        Word first = setting.key().get(0);
        if (!setting.section().isEmpty()) {
            throw text.error(first, "a counting system has no [" + setting.section() + "] sections");
        }
        Word before = seen.putIfAbsent(setting.keyText(), first);
        if (before != null) {
            throw text.error(first, "\u201c" + setting.keyText() + "\u201d was already given in line " + before.line());
        }
        switch (first.text()) {
            case "name", "title", "about", "limits", "language" -> {
                alone(setting);
                texts.put(first.text(), setting.valueText());
            }
            case "based" -> basedOn(setting);
            case "asymmetric" -> asymmetric = switch (choice(setting, "units", "groups", "restart")) {
                case "groups" -> CountingSystem.Asymmetric.GROUPS;
                case "restart" -> CountingSystem.Asymmetric.RESTART;
                default -> CountingSystem.Asymmetric.UNITS;
            };
            case "span" -> spanAsBeat = choice(setting, "numbers", "beat").equals("beat");
            case "spoken" -> spoken(setting);
            case "source", "uncertain" -> note(setting);
            case "filler" -> fillers = fillers(setting);
            case "other" -> other(setting);
            default -> row(setting);
        }
    }

    private void basedOn(Setting setting) {
        Word first = setting.key().get(0);
        if (!setting.keyText().equals("based on")) {
            throw unknown(first, setting.keyText());
        }
        if (seen.size() > 1 && !(seen.size() == 2 && seen.containsKey("name"))) {
            throw text.error(first, "\u201cbased on\u201d has to be the first setting (after the name)");
        }
        String base = setting.valueText();
        if (!CountingSystem.names().contains(base) || base.equals(texts.get("name"))) {
            throw text.error(setting.value().get(0), "there is no counting system \u201c" + base + "\u201d to build on; choose one of "
                    + String.join(", ", CountingSystem.names()));
        }
        CountingSystem.named(base).copyTo(this);
    }

    /** Takes over everything but the name. */
    void inherit(SystemData base) {
        texts.put("title", base.texts().title());
        texts.put("about", base.texts().about());
        texts.put("limits", base.texts().limits());
        texts.put("language", base.texts().language());
        spoken.putAll(base.spoken());
        inherited.putAll(base.rows());
        fillers = base.fillers();
        unfilled.addAll(base.unfilled());
        others.putAll(base.others());
        notes.putAll(base.notes());
        asymmetric = base.asymmetric();
        spanAsBeat = base.spanAsBeat();
    }

    private void spoken(Setting setting) {
        if (setting.key().size() != 2) {
            throw text.error(setting.key().get(0), "\u201cspoken\u201d needs the printed word, for example: spoken 7 = sev");
        }
        spoken.put(setting.key().get(1).text(), setting.valueText());
    }

    private void note(Setting setting) {
        RowKey key = setting.key().size() == 1 ? null : key(setting.key().subList(1, setting.key().size()));
        CountingSystem.Note old = notes.getOrDefault(key, CountingSystem.Note.NONE);
        notes.put(key, setting.key().get(0).text().equals("source")
                ? new CountingSystem.Note(setting.valueText(), old.uncertain())
                : new CountingSystem.Note(old.source(), setting.valueText()));
    }

    private void row(Setting setting) {
        RowKey key = key(setting.key());
        List<String> words = new ArrayList<>();
        for (Word word : setting.value()) {
            checkWord(word);
            if (words.size() == key.parts()) {
                throw text.error(word, "one word too many: the row \u201c" + key + "\u201d has exactly " + key.parts()
                        + (key.parts() == 1 ? " word" : " words"));
            }
            words.add(word.text());
        }
        if (words.size() < key.parts()) {
            throw text.error(setting.end(), "the row \u201c" + key + "\u201d needs " + key.parts() + " words, one a part; here are "
                    + words.size());
        }
        rows.put(key, new Row.Given(words));
        if (inherited.remove(key) != null) {
            // another's row with other words: that row's source no longer speaks for it
            notes.remove(key);
        }
    }

    private void checkWord(Word word) {
        if (word.text().codePointCount(0, word.text().length()) > LONGEST_WORD) {
            throw text.error(word, "a word of more than " + LONGEST_WORD + " letters cannot be spoken in one syllable");
        }
        word.text().codePoints().forEach(c -> {
            if (c == '(' || c == ')' || c == '[' || c == ']') {
                throw text.error(word, "brackets are not allowed in a word: they mark what is not played");
            }
            if (Character.isISOControl(c) || Character.getType(c) == Character.FORMAT
                    || Character.isSpaceChar(c) || !Character.isDefined(c)) {
                throw text.error(word, "an invisible character is not allowed in a word");
            }
        });
    }

    /** {@code 6}, {@code 6 compound}, {@code other compound}. */
    private RowKey key(List<Word> words) {
        Word first = words.get(0);
        int parts = switch (first.text()) {
            case "filler" -> RowKey.FILLER.parts();
            case "other" -> RowKey.OTHER.parts();
            default -> parts(first);
        };
        if (words.size() == 1) {
            return new RowKey(parts, null);
        }
        if (parts == RowKey.FILLER.parts()) {
            throw text.error(words.get(1), "after \u201cfiller\u201d nothing can stand: it holds for every beat");
        }
        for (Feel feel : Feel.values()) {
            if (words.size() == 2 && words.get(1).text().equals(feel.fileName())) {
                return new RowKey(parts, feel);
            }
        }
        throw text.error(words.get(1), "after the number only simple, compound or asymmetric can stand");
    }

    private int parts(Word word) {
        if (!word.text().matches("[0-9]+")) {
            throw unknown(word, word.text());
        }
        int parts = word.text().length() > 4 ? 0 : Integer.parseInt(word.text());
        if (parts < 1 || parts > CountingSystem.LARGEST_ROW) {
            throw text.error(word, "a row is for 1 to " + CountingSystem.LARGEST_ROW + " parts");
        }
        return parts;
    }

    /** {@code ah ta da}, or {@code none}. */
    private List<String> fillers(Setting setting) {
        key(setting.key());
        List<String> words = new ArrayList<>();
        for (Word word : setting.value()) {
            String filler = word.text().replaceAll(",$", "");
            checkWord(new Word(filler, word.line(), word.column()));
            if (filler.isEmpty() || filler.equals(CountingSystem.NUMBER) || filler.equals(CountingSystem.NUMBERS)) {
                throw text.error(word, "a filler is a word that is said between the others, like: filler = ah; numbers are "
                        + "for divisions without a coarser one, like: other = 1 with numbers");
            }
            if (words.contains(filler)) {
                throw text.error(word, "the filler \u201c" + filler + "\u201d stands here twice");
            }
            words.add(filler);
        }
        if (words.contains(NONE) && words.size() > 1) {
            throw text.error(setting.value().get(0), "\u201cnone\u201d stands alone; else a filler is a word, like: filler = ah");
        }
        return words.contains(NONE) ? List.of() : words;
    }

    /** A rule of one's own holds in the stead of a filler taken over from another system. */
    private void other(Setting setting) {
        RowKey key = key(setting.key());
        others.put(key.feel(), rule(setting));
        unfilled.add(key);
    }

    /** {@code 4 3 2 with numbers, 1 with ta} or {@code phrases of 4}. */
    private OtherRule rule(Setting setting) {
        List<OtherRule> rules = new ArrayList<>();
        List<Word> values = setting.value();
        if (values.get(0).text().equals("phrases")) {
            if (values.size() != 3 || !values.get(1).text().equals("of")) {
                throw text.error(values.get(0), "this rule reads like: other = phrases of 4");
            }
            return new OtherRule.InPhrases(parts(values.get(2)));
        }
        List<Integer> outer = new ArrayList<>();
        for (int i = 0; i < values.size(); i++) {
            Word word = values.get(i);
            if (!word.text().equals("with")) {
                if (!word.text().matches("[0-9]+")) {
                    throw text.error(word, "here stands a number or \u201cwith\u201d; the rule reads like: other = 4 3 2 with ta, 1 with ta");
                }
                outer.add(parts(word));
                continue;
            }
            if (outer.isEmpty() || i + 1 == values.size()) {
                throw text.error(word, "\u201cwith\u201d stands between numbers and a word, like: other = 4 3 2 with ta, 1 with ta");
            }
            Word between = values.get(++i);
            String filler = between.text().replaceAll(",$", "");
            checkWord(new Word(filler, between.line(), between.column()));
            if (filler.isEmpty()) {
                throw text.error(between, "a word is missing after \u201cwith\u201d");
            }
            rules.add(new OtherRule.Inside(List.copyOf(outer), filler));
            outer.clear();
        }
        if (!outer.isEmpty()) {
            throw text.error(setting.end(), "\u201cwith\u201d and a word (or numbers) are missing");
        }
        return new OtherRule.FirstOf(List.copyOf(rules));
    }

    private String choice(Setting setting, String... choices) {
        alone(setting);
        for (String choice : choices) {
            if (setting.valueText().equals(choice)) {
                return choice;
            }
        }
        throw text.error(setting.value().get(0), "\u201c" + setting.keyText() + "\u201d can be "
                + String.join(", ", choices).toLowerCase(Locale.ROOT) + ", not \u201c" + setting.valueText() + "\u201d");
    }

    private void alone(Setting setting) {
        if (setting.key().size() > 1) {
            throw unknown(setting.key().get(0), setting.keyText());
        }
    }

    private countstave.score.ScoreException unknown(Word at, String key) {
        return text.error(at, "\u201c" + key + "\u201d is not known; a line begins with a number of parts, filler, other, name, title, about, "
                + "source, uncertain, limits, language, spoken, asymmetric, span or based on");
    }
}
