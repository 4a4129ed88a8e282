package countstave.take;

import java.util.List;

/**
 * What was played.
 *
 * @param name of its file, for the player
 * @param kind sound or MIDI
 * @param seconds how long it is
 * @param onsets in the order of time
 * @param beats seconds of the quarters that a MIDI file itself counts, from its start; empty for sound
 * @param clicks seconds at which the clicks of a guide track are heard in it, where one was given; else empty
 * @param remarks what of it is not as it should be, in a sentence each
 */
public record Take(String name, Kind kind, double seconds, List<Onset> onsets, List<Double> beats, List<Double> clicks,
        List<String> remarks) {

    /** Of what sort a take is, and how well its onsets are known. */
    public enum Kind {
        /**
         * 95 % of the onsets that are found in drum sounds lie within 4 ms of where they should; with noise or
         * reverberation some stray further. Measured by {@code OnsetAccuracyTest}, figures in {@code docs/listen.md}.
         */
        SOUND("sound", 0.004),
        /** An electronic kit looks at its pads about once a millisecond (common practice, no source). */
        MIDI("MIDI", 0.001);

        private final String title;
        private final double error;

        Kind(String title, double error) {
            this.title = title;
            this.error = error;
        }

        public String title() {
            return title;
        }

        /** How far the onsets of such a take stray from the truth, in seconds: 95 % of them less. */
        public double error() {
            return error;
        }
    }

    /** The name without its folders, for a page. */
    public String shortName() {
        return name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    }
}
