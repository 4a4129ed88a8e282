package countstave.count;

import countstave.score.ScoreException;
import java.util.ArrayList;
import java.util.List;

/**
 * A text of {@code key = value} lines, read into words that remember their line and column.
 *
 * <p>{@code #} at the start of a line, or after a blank, begins a comment; a line that begins with a blank goes on
 * with the value of the line above; {@code [name]} alone on a line opens a section.
 */
final class SettingsText {

    /** Longer files are refused: no counting system needs a megabyte. */
    static final int MAX_CHARS = 1_000_000;

    /** A word of the text with its 1-based place. */
    record Word(String text, int line, int column) {
    }

    /**
     * One setting.
     *
     * @param section the {@code [name]} above it, or an empty text
     * @param key words left of the {@code =}
     * @param value words right of it, at least one
     * @param end the place just behind the value, where a missing word would stand
     */
    record Setting(String section, List<Word> key, List<Word> value, Word end) {

        String keyText() {
            return joined(key);
        }

        String valueText() {
            return joined(value);
        }
    }

    private final String name;
    private final List<Setting> settings = new ArrayList<>();

    private SettingsText(String name) {
        this.name = name;
    }

    /**
     * @param name name of the file, for messages
     * @throws ScoreException with file, line and column if a line is not understood
     */
    static SettingsText parse(String name, String text) {
        SettingsText result = new SettingsText(name);
        if (text.length() > MAX_CHARS) {
            throw new ScoreException(name + ": is too long for a counting system; more than " + MAX_CHARS + " characters");
        }
        result.read(text.startsWith("\uFEFF") ? text.substring(1) : text);
        return result;
    }

    List<Setting> settings() {
        return settings;
    }

    ScoreException error(Word at, String message) {
        return new ScoreException(printable(name + ", line " + at.line + ", column " + at.column + ": " + message));
    }

    ScoreException error(String message) {
        return new ScoreException(printable(name + ": " + message));
    }

    /** Messages quote the file: nothing invisible of it may reach a terminal. */
    static String printable(String message) {
        StringBuilder text = new StringBuilder(message.length());
        message.codePoints().forEach(c -> text.appendCodePoint(
                Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? '?' : c));
        return text.toString();
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
            if (first.column > 1 && !settings.isEmpty() && settings.get(settings.size() - 1).section.equals(section)) {
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
            throw error(behind(words), "an = is missing; a line reads like: 4 = N e & a");
        }
        if (sign == 0) {
            throw error(words.get(0), "nothing stands left of the =; a line reads like: 4 = N e & a");
        }
        if (sign == words.size() - 1) {
            throw error(behind(words), "nothing stands right of the =");
        }
        return new Setting(section, List.copyOf(words.subList(0, sign)),
                List.copyOf(words.subList(sign + 1, words.size())), behind(words));
    }

    /** Words are separated by blanks; an {@code =} is a word of its own even without blanks around it. */
    private List<Word> words(String line, int number) {
        List<Word> words = new ArrayList<>();
        boolean equalsSeen = false;
        int at = 0;
        while (at < line.length()) {
            char c = line.charAt(at);
            if (c == ' ' || c == '\t') {
                at++;
                continue;
            }
            if (c == '#') {
                break;
            }
            int start = at;
            if (c == '=' && !equalsSeen) {
                equalsSeen = true;
                at++;
            } else {
                while (at < line.length() && line.charAt(at) != ' ' && line.charAt(at) != '\t'
                        && (equalsSeen || line.charAt(at) != '=')) {
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
