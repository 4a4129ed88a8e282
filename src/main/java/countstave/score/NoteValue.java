package countstave.score;

import countstave.time.Duration;

/** The written note values, named as in MusicXML 4.0 ({@code note-type-value}). */
public enum NoteValue {
    MAXIMA("maxima", 8, 1),
    LONG("long", 4, 1),
    BREVE("breve", 2, 1),
    WHOLE("whole", 1, 1),
    HALF("half", 1, 2),
    QUARTER("quarter", 1, 4),
    EIGHTH("eighth", 1, 8),
    SIXTEENTH("16th", 1, 16),
    THIRTY_SECOND("32nd", 1, 32),
    SIXTY_FOURTH("64th", 1, 64),
    N128TH("128th", 1, 128),
    N256TH("256th", 1, 256),
    N512TH("512th", 1, 512),
    N1024TH("1024th", 1, 1024);

    private final String xmlName;
    private final Duration length;

    NoteValue(String xmlName, long numerator, long denominator) {
        this.xmlName = xmlName;
        this.length = Duration.of(numerator, denominator);
    }

    /** The name in MusicXML: {@code quarter}, {@code 16th}. */
    public String xmlName() {
        return xmlName;
    }

    /** Undotted length in fractions of a whole note. */
    public Duration length() {
        return length;
    }

    /** Flags (or beams) of this value: 0 for a quarter and longer, 1 for an eighth, and so on. */
    public int flags() {
        return Math.max(0, ordinal() - QUARTER.ordinal());
    }

    /** The length with augmentation dots: value × (2 − 2<sup>−dots</sup>). */
    public Duration dotted(int dots) {
        return length.times((1L << (dots + 1)) - 1, 1L << dots);
    }

    /** The value with this MusicXML name, or null. */
    public static NoteValue ofXmlName(String name) {
        for (NoteValue value : values()) {
            if (value.xmlName.equals(name)) {
                return value;
            }
        }
        return null;
    }

    /** The undotted value of exactly this length, or null. */
    public static NoteValue ofLength(Duration length) {
        for (NoteValue value : values()) {
            if (value.length.equals(length)) {
                return value;
            }
        }
        return null;
    }
}
