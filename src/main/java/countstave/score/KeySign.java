package countstave.score;

/**
 * One sign of a key signature that is not made of fifths (MusicXML {@code key-step}, {@code key-alter}).
 *
 * @param step letter, A to G
 * @param accidental MusicXML name of the accidental ("sharp", "flat", "quarter-sharp" ...)
 * @param octave octave it is printed in (MusicXML {@code key-octave}), or null where the file leaves it open
 */
public record KeySign(char step, String accidental, Integer octave) {
}
