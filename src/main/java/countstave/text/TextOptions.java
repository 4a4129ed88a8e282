package countstave.text;

import countstave.count.NoteNames;
import countstave.count.Unplayed;

/**
 * How the counts are printed.
 *
 * @param width columns of the terminal; lines are wrapped to it, at least {@link #NARROWEST}
 * @param unplayed which of the words that are not played are shown
 * @param names the language, and whether the terminal can show ●, │ and ♩; else ASCII signs and words take their place
 */
public record TextOptions(int width, Unplayed unplayed, NoteNames names) {

    /** Below this many columns nothing could be aligned. */
    public static final int NARROWEST = 40;

    /** The usual terminal. */
    public static final TextOptions DEFAULT = new TextOptions(80, Unplayed.ALL, NoteNames.SYMBOLS);

    public TextOptions {
        width = Math.max(width, NARROWEST);
    }

    boolean symbols() {
        return names.symbols();
    }

    /** A sentence of the language: {@link countstave.plain.Phrases#text}. */
    String phrase(String key, Object... places) {
        return names.phrase(key, places);
    }

    String played() {
        return symbols() ? "\u25cf" : "*";
    }

    String held() {
        return symbols() ? "\u2500" : "-";
    }

    String silent() {
        return symbols() ? "\u00b7" : ".";
    }

    /** Stands in the line of the words, below a played sign: so it is never taken for {@link #silent()}. */
    String felt() {
        return symbols() ? "\u00b7" : ".";
    }

    String tick() {
        return symbols() ? "\u2502" : "|";
    }

    String heldTick() {
        return symbols() ? "\u253c" : "+";
    }

    String corner() {
        return symbols() ? "\u250c" : ",";
    }

    String rightCorner() {
        return symbols() ? "\u2510" : ".";
    }

    String dot() {
        return symbols() ? " \u00b7 " : " - ";
    }
}
