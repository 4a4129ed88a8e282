package countstave.chart.layout;

import java.util.Map;

/** What a musician calls the signs that the reader knows by the names of MusicXML's elements; these stand behind in brackets. */
final class SignNames {

    private static final Map<String, String> OWN = Map.ofEntries(
            Map.entry("other", "a mark that only its program knows"),
            Map.entry("other-direction", "a mark that only its program knows"),
            Map.entry("other-notation", "a sign that only its program knows"),
            Map.entry("other-ornament", "an ornament that only its program knows"),
            Map.entry("other-technical", "a playing sign that only its program knows"),
            Map.entry("other-articulation", "an articulation that only its program knows"),
            Map.entry("technical", "a playing sign"),
            Map.entry("arpeggiate", "a broken chord"),
            Map.entry("non-arpeggiate", "the bracket of a chord that is not broken"),
            Map.entry("string-mute", "a mute"),
            Map.entry("accord", "a tuning of strings"),
            Map.entry("scordatura", "a tuning of strings"),
            Map.entry("staff-divide", "an arrow where a staff divides"),
            Map.entry("principal-voice", "the bracket of a leading voice"),
            Map.entry("pluck", "a letter for a plucking finger"),
            Map.entry("frame", "a fret diagram"),
            Map.entry("fret", "a number of a fret"),
            Map.entry("string", "a number of a string"),
            Map.entry("dashes", "a dashed line"));

    private SignNames() {
    }

    /** {@code trill-mark} is a {@code trill mark [trill-mark]}; what is no element's name stays as it is. */
    static String of(String name) {
        String own = OWN.get(name);
        if (own != null) {
            return own + " [" + name + "]";
        }
        return name.indexOf('-') < 0 || name.indexOf(' ') >= 0 ? name : name.replace('-', ' ') + " [" + name + "]";
    }
}
