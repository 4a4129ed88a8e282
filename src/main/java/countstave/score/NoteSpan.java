package countstave.score;

/**
 * The beginning or end of a sign that leads from one note to another: a slur, a slide; it changes nothing that is counted.
 *
 * @param kind which sign
 * @param number MusicXML number, which tells signs of one kind apart that overlap
 * @param start whether it begins here; else it ends here
 * @param placement above or below, or null where the file leaves it open
 * @param text what is written at it, or an empty text
 */
public record NoteSpan(Kind kind, int number, boolean start, Placement placement, String text) {

    /** GLISSANDO is wavy, SLIDE straight; TRILL is the wavy line behind a trill. */
    public enum Kind {
        SLUR("slur"), GLISSANDO("glissando"), SLIDE("slide"), HAMMER_ON("hammer-on"), PULL_OFF("pull-off"), TRILL("wavy-line");

        private final String name;

        Kind(String name) {
            this.name = name;
        }

        /** The name of its element. */
        public String xmlName() {
            return name;
        }
    }
}
