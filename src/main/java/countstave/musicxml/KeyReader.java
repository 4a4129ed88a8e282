package countstave.musicxml;

import countstave.score.KeySign;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import org.audiveris.proxymusic.Key;
import org.audiveris.proxymusic.KeyAccidental;
import org.audiveris.proxymusic.KeyOctave;
import org.audiveris.proxymusic.Step;

/**
 * Keys that are not made of fifths: a list of {@code key-step}, {@code key-alter} and perhaps {@code key-accidental},
 * each with an octave if a {@code key-octave} of its place in the list says so (MusicXML 4.0, {@code key}).
 */
final class KeyReader {

    /** By semitones: compared as numbers, since 1e999999999 is a short text and a very long number. */
    private static final NavigableMap<BigDecimal, String> NAMES = new TreeMap<>();

    static {
        String[] names = {"flat-flat", "three-quarters-flat", "flat", "quarter-flat", "natural", "quarter-sharp", "sharp",
            "three-quarters-sharp", "double-sharp"};
        for (int i = 0; i < names.length; i++) {
            NAMES.put(BigDecimal.valueOf(5L * i - 20, 1), names[i]);
        }
    }

    private static final int MOST = 14;

    private KeyReader() {
    }

    static List<KeySign> signs(Key key) {
        List<KeySign> signs = new ArrayList<>();
        Step step = null;
        for (Object item : key.getNonTraditionalKey()) {
            int last = signs.size() - 1;
            if (item instanceof Step letter) {
                step = letter;
            } else if (item instanceof BigDecimal alter && step != null && signs.size() < MOST) {
                String name = NAMES.getOrDefault(alter, "alter " + alter);
                signs.add(new KeySign(step.value().charAt(0), name, octave(key, signs.size() + 1)));
                step = null;
            } else if (item instanceof KeyAccidental accidental && accidental.getValue() != null && last >= 0) {
                KeySign plain = signs.get(last);
                signs.set(last, new KeySign(plain.step(), accidental.getValue().value(), plain.octave()));
            }
        }
        return List.copyOf(signs);
    }

    private static Integer octave(Key key, int place) {
        for (KeyOctave octave : key.getKeyOctave()) {
            if (octave.getNumber() != null && octave.getNumber().bitLength() < 8 && octave.getNumber().intValue() == place) {
                return NoteConverter.inRange(octave.getValue());
            }
        }
        return null;
    }
}
