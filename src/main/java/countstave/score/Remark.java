package countstave.score;

import countstave.time.Offset;

/**
 * Something in the file that contradicts itself or was read with care.
 *
 * @param kind what it is
 * @param partId part it stands in
 * @param barIndex index of the bar
 * @param barNumber printed number of the bar
 * @param voice name of the voice, or null
 * @param at position from the bar's start, or null
 * @param text one sentence in a musician's words, without file, part or bar
 */
public record Remark(Kind kind, String partId, int barIndex, String barNumber, String voice, Offset at, String text) {

    /** WARNING kinds are told when counting; the others are for {@code check}. */
    public enum Kind {
        OVERFULL(true), SHORT(true), LOCAL_METER(true), BACKUP_BEYOND_START(true), BAD_DURATION(true), METER(true),
        VALUE_DIFFERS(false), ROUNDED(false), OVERLAP(false), NO_TEMPO(false);

        private final boolean warning;

        Kind(boolean warning) {
            this.warning = warning;
        }

        public boolean isWarning() {
            return warning;
        }
    }
}
