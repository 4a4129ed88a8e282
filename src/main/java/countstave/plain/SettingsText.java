package countstave.plain;

import countstave.score.ScoreException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text of {@code key = value} lines, read into words that remember their line and column.
 *
 * <p>{@code #} at the start of a line, or after a blank, begins a comment; where the form has it so, a line
 * that begins with a blank goes on with the value of the line above; {@code [name]} alone on a line opens a section.
 *
 * <p>What is said of a line that is not understood begins with file, line and column.
 */
public final class SettingsText {

    /** Longer files are refused: nothing that is set needs a megabyte. */
    public static final int MAX_CHARS = 1_000_000;

    /** A word of the text with its 1-based place. */
    public record Word(String text, int line, int column) {
    }

    /**
     * One setting.
     *
     * @param section the {@code [name]} above it, or an empty text
     * @param key words left of the {@code =}
     * @param value words right of it, at least one
     * @param end the place just behind the value, where a missing word would stand
     */
    public record Setting(String section, List<Word> key, List<Word> value, Word end) {

        public String keyText() {
            return joined(key);
        }

        public String valueText() {
            return joined(value);
        }
    }

    /**
     * What a text of some kind looks like.
     *
     * @param example a line as it should be, for messages
     * @param longValues values of many words, which go on in lines that begin with a blank; else a value is one word, and
     *     the key may be anything, such as the name of a file that has {@code #} and {@code =} in it
     */
    public record Form(String example, boolean longValues) {
    }

    /** The {@code =} before a value of one word. */
    private static final Pattern BEFORE_A_WORD = Pattern.compile("=\\s*[^\\s#=]*\\s*(?:#.*)?$");

    private final String name;
    private final Form form;
    private final List<Setting> settings = new ArrayList<>();

    private SettingsText(String name, Form form) {
        this.name = name;
        this.form = form;
    }

    /**
     * @param name name of the file, for messages
     * @param form what a text of this kind looks like
     * @throws ScoreException with file, line and column if a line is not understood
     */
    public static SettingsText parse(String name, String text, Form form) {
        SettingsText result = new SettingsText(name, form);
        if (text.length() > MAX_CHARS) {
            throw new ScoreException(name + ": is too long; settings have at most " + MAX_CHARS + " characters");
        }
        result.read(text.startsWith("\uFEFF") ? text.substring(1) : text);
        return result;
    }

    public List<Setting> settings() {
        return settings;
    }

    public ScoreException error(Word at, String message) {
        return new ScoreException(SafeText.of(name + ", line " + at.line + ", column " + at.column + ": " + message));
    }

    public ScoreException error(String message) {
        return new ScoreException(SafeText.of(name + ": " + message));
    }

    private void read(String text) {
        String section = "";
        int number = 0;
        for (String line : text.split("\r\n|\r|\n", -1)) {
            number++;
            List<Word> words = words(line, number);
            if (words.isEmpty()) {
                continue;
            }
            Word first = words.get(0);
            if (form.longValues && first.column > 1 && !settings.isEmpty() && settings.get(settings.size() - 1).section.equals(section)) {
                goOn(words);
            } else if (words.size() == 1 && first.text.startsWith("[") && first.text.endsWith("]")) {
                section = first.text.substring(1, first.text.length() - 1);
            } else {
                settings.add(setting(section, words, number));
            }
        }
    }

    private void goOn(List<Word> more) {
        Setting last = settings.remove(settings.size() - 1);
        List<Word> value = new ArrayList<>(last.value);
        value.addAll(more);
        settings.add(new Setting(last.section, last.key, List.copyOf(value), behind(more)));
    }

    private Setting setting(String section, List<Word> words, int line) {
        int sign = 0;
        while (sign < words.size() && !words.get(sign).text.equals("=")) {
            sign++;
        }
        if (sign == words.size()) {
            throw error(behind(words), "an = is missing; a line reads like: " + form.example);
        }
        if (sign == 0) {
            throw error(words.get(0), "nothing stands left of the =; a line reads like: " + form.example);
        }
        if (sign == words.size() - 1) {
            throw error(behind(words), "nothing stands right of the =");
        }
        return new Setting(section, List.copyOf(words.subList(0, sign)),
                List.copyOf(words.subList(sign + 1, words.size())), behind(words));
    }

    /** Where the {@code =} of a line stands, or -1. */
    private int sign(String line) {
        Matcher word = BEFORE_A_WORD.matcher(line);
        return !form.longValues && word.find() ? word.start() : line.indexOf('=');
    }

    /** Words are separated by blanks; the {@code =} is a word of its own even without blanks around it. */
    private List<Word> words(String line, int number) {
        List<Word> words = new ArrayList<>();
        int sign = sign(line);
        int at = 0;
        while (at < line.length()) {
            char c = line.charAt(at);
            if (c == ' ' || c == '\t') {
                at++;
                continue;
            }
            if (c == '#' && (form.longValues || words.isEmpty() || at > sign)) {
                break;
            }
            int start = at;
            if (at == sign) {
                at++;
            } else {
                while (at < line.length() && line.charAt(at) != ' ' && line.charAt(at) != '\t'
                        && at != sign) {
                    if (Character.isISOControl(line.charAt(at))) {
                        throw error(new Word("", number, at + 1), "a control character is not allowed");
                    }
                    at++;
                }
            }
            words.add(new Word(line.substring(start, at), number, start + 1));
        }
        return words;
    }

    private static Word behind(List<Word> words) {
        Word last = words.get(words.size() - 1);
        return new Word("", last.line, last.column + last.text.length() + 1);
    }

    private static String joined(List<Word> words) {
        StringBuilder text = new StringBuilder();
        for (Word word : words) {
            text.append(text.isEmpty() ? "" : " ").append(word.text);
        }
        return text.toString();
    }
}
