package countstave.count;

import countstave.plain.Phrases;
import countstave.plain.SafeText;
import countstave.plain.SettingsText;
import countstave.score.ScoreException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.StringJoiner;

/**
 * A counting system: which word is spoken at which part of a beat.
 *
 * <p>A word belongs to a division and a part of it, never to the part alone: in some systems the half of a beat of six
 * has another name than the half of a beat of two. Systems are data ({@code resources/countstave/systems/*.system});
 * their format is described in {@code docs/systems.md}. Immutable and safe to share between threads.
 */
public final class CountingSystem {

    /** The default system. */
    public static final String DEFAULT = "numbers";

    /** In a row of a system file: the number of the beat. */
    public static final String NUMBER = "N";

    /** In a rule of a system file: 2, 3, 4 … instead of a word. */
    public static final String NUMBERS = "numbers";

    /** The largest division a system file may give a row for. */
    public static final int LARGEST_ROW = 64;

    /** How the units of 5/8, 7/8 … are named. */
    public enum Asymmetric {
        /** Every written unit is a numbered beat: 1 2 3 4 5. */
        UNITS,
        /** Every group is a beat, cut into its units. */
        GROUPS,
        /** Every written unit is numbered, from 1 again in each group: 1 2 1 2 1 2 3. */
        RESTART
    }

    /**
     * Who says so, and how sure it is.
     *
     * @param source where a row comes from, or an empty text where the system's own source holds
     * @param uncertain why it is not certain, or an empty text
     */
    public record Note(String source, String uncertain) {

        static final Note NONE = new Note("", "");
    }

    private final SystemData data;
    private final MadeRows rows;

    CountingSystem(SystemData data) {
        this.data = data;
        this.rows = new MadeRows(data);
    }

    /** Names of the systems that come with countstave, in the order they are listed. */
    public static List<String> names() {
        return ShippedSystems.names();
    }

    /**
     * The shipped system of this name.
     *
     * @throws ScoreException if there is none
     */
    public static CountingSystem named(String name) {
        return ShippedSystems.get(name);
    }

    /**
     * The system a user asks for: a shipped name, else a file of their own.
     *
     * @throws ScoreException if it is neither, or the file is faulty
     */
    public static CountingSystem find(String nameOrFile) {
        if (names().contains(nameOrFile)) {
            return named(nameOrFile);
        }
        Path file;
        try {
            file = Path.of(nameOrFile);
        } catch (java.nio.file.InvalidPathException e) {
            return named(nameOrFile);
        }
        return nameOrFile.endsWith(".system") || Files.isRegularFile(file) ? load(file) : named(nameOrFile);
    }

    /**
     * Reads a user's own system.
     *
     * @throws ScoreException with file, line and column if it cannot be read or understood
     */
    public static CountingSystem load(Path file) {
        String name = SafeText.of(file.toString());
        try {
            if (Files.size(file) > SettingsText.MAX_CHARS) {
                throw new ScoreException(name + ": is too long for a counting system");
            }
            return parse(name, Utf8.decode(name, Files.readAllBytes(file)));
        } catch (IOException e) {
            throw new ScoreException(name + ": this counting system cannot be read; check the name and the permissions", e);
        }
    }

    /**
     * Reads a system from its text.
     *
     * @param fileName for messages, and the system's name where the text gives none
     * @throws ScoreException with file, line and column
     */
    public static CountingSystem parse(String fileName, String text) {
        return new CountingSystem(new SystemReader(SettingsText.parse(fileName, text, SystemReader.FORM), fileName).read());
    }

    /** Its short name, as {@code --system} takes it. */
    public String name() {
        return data.texts().name();
    }

    /** One line for lists and headers, in English. */
    public String title() {
        return title(Phrases.ENGLISH);
    }

    /**
     * One line for lists and headers. What the shipped systems are called is among the phrases, other systems are called as
     * their file says; a word for "and" that is not that of the language is named behind it.
     */
    public String title(Phrases phrases) {
        SystemTexts texts = data.texts();
        String title = phrases.textOr("system." + texts.name(), texts.title());
        boolean usual = texts.and().isEmpty() || texts.language().equals(phrases.code());
        return usual ? title : phrases.text("system.with-and", title, texts.and());
    }

    /** A sentence or two for whoever wants to choose; may be empty. */
    public String about() {
        return data.texts().about();
    }

    /** Code of the language that its words are in; empty where they belong to none. */
    public String language() {
        return data.texts().language();
    }

    /** Where it is published. */
    public String source() {
        return data.note(null).source();
    }

    /** Why the system as a whole is not certain; empty where it is. */
    public String uncertain() {
        return data.note(null).uncertain();
    }

    /** What of the published system it does not say; empty where nothing is left out. */
    public String limits() {
        return data.texts().limits();
    }

    /** How the units of asymmetric meters are named. */
    public Asymmetric asymmetric() {
        return data.asymmetric();
    }

    /** The rows given word by word, in the order of the file. */
    public Map<RowKey, Row> rows() {
        return data.rows();
    }

    /**
     * What is said on places of the beat that no coarser division has, in the order of their use; empty where
     * divisions without a row go by another rule.
     */
    public List<String> fillers() {
        return data.fillers();
    }

    /** Source and doubt of one row (or of the rules beyond the rows, {@link RowKey#FILLER} and {@link RowKey#OTHER}). */
    public Note note(RowKey key) {
        return data.note(key);
    }

    /** Source and doubt of what is said in a beat cut into {@code parts}: its row's, or those of the rule that makes it. */
    public Note note(int parts, Feel feel) {
        for (RowKey key : new RowKey[] {new RowKey(parts, feel), new RowKey(parts, null)}) {
            if (data.rows().containsKey(key)) {
                return data.note(key);
            }
        }
        if (row(parts, feel) instanceof KeptPlaces) {
            return data.note(RowKey.FILLER);
        }
        Note own = data.note(data.rule(feel));
        Note plain = data.note(RowKey.OTHER);
        return own.uncertain().isEmpty() ? new Note(own.source(), plain.uncertain()) : own;
    }

    /**
     * What is said in a beat cut into {@code parts}.
     *
     * @param parts at least 1
     * @param feel SIMPLE or COMPOUND
     */
    public Row row(int parts, Feel feel) {
        return rows.row(parts, feel);
    }

    /**
     * What is said in a group of an asymmetric meter. Units that are cut further go as the beat of so many parts does,
     * as long as that says the group's own words on the units: 1 e &amp; a in a group that goes 1 &amp;.
     *
     * @param units how many written units it holds
     * @param parts how many parts each unit is cut into
     */
    public Row groupRow(int units, int parts) {
        return rows.groupRow(units, parts);
    }

    /**
     * What is said over a tuplet of {@code parts} notes that is counted through: 1 … n unless the system has phrases
     * for it. One that begins on a beat begins with what is said there: 3 2 3 4 5 from the third beat.
     */
    public Row spanRow(int parts, boolean onBeat) {
        if (data.spanAsBeat()) {
            return row(parts, Feel.SIMPLE);
        }
        return onBeat ? new Row.Filled(row(1, Feel.SIMPLE), parts, NUMBERS) : new Row.Numbers(parts);
    }

    /**
     * This system with the words of another language.
     *
     * @param choice a language code ({@code de}), or a single word of one's own for "and"
     * @throws ScoreException if the system's words belong to no language, or the choice is neither
     */
    public CountingSystem withAnd(String choice) {
        return AndWords.apply(this, data, choice);
    }

    /**
     * The same system as it is said in a language, if its own words are English ones that the language has too; else itself.
     */
    public CountingSystem spokenIn(Phrases phrases) {
        boolean exchanged = !phrases.code().equals("en") && data.texts().language().equals("en")
                && AndWords.language(phrases.code()) != null;
        return exchanged ? withAnd(phrases.code()) : this;
    }

    /** One line that explains how all its printed words are spoken; empty where they are spoken as printed. */
    public String key() {
        return key(data.spoken().keySet(), Phrases.ENGLISH);
    }

    /**
     * One line that explains how the printed words are spoken; empty where they are spoken as printed.
     *
     * @param used the words that occur; the others are not explained
     */
    public String key(Set<String> used, Phrases phrases) {
        StringJoiner key = new StringJoiner(", ");
        data.spoken().forEach((printed, said) -> {
            if (used.contains(printed)) {
                key.add(phrases.text("spoken", printed, said));
            }
        });
        return key.toString();
    }

    void copyTo(SystemReader reader) {
        reader.inherit(data);
    }

    @Override
    public String toString() {
        return name();
    }
}
