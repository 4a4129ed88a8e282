package countstave.score;

/**
 * The beginning or end of a sign that is drawn along time: a hairpin, an octave line, a pedal, the dashes behind
 * words.
 *
 * @param kind which sign
 * @param type whether it begins, ends, or ends and begins anew here
 * @param number MusicXML number, which tells signs of one kind apart that overlap
 * @param amount of a hairpin 1 where it grows louder and −1 where it grows softer; of an octave line the octaves by
 *     which notes are printed above (positive) or below where they sound (−1: the line "8va"); else 0
 * @param niente of a hairpin: whether it grows out of, or dies away into, nothing
 * @param signs of a pedal: whether it is shown by signs; else by a line
 */
public record LineMark(Kind kind, Type type, int number, int amount, boolean niente, boolean signs) {

    public enum Kind { HAIRPIN, OCTAVE, PEDAL, DASHES }

    public enum Type { START, STOP, CHANGE }
}
