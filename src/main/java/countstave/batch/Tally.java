package countstave.batch;

/** How the work on many scores went. */
final class Tally {

    int done;
    int failed;
    int leftOut;

    /** How many outputs of an earlier run were let be. */
    int there;

    /** How many of those left out have none of the parts that were asked for. */
    int withoutPart;

    /** Whether whoever read the results has gone away, such as {@code head} behind a pipe. */
    boolean brokenOff;

    final WarningSums warnings = new WarningSums();

    /** Whether nothing at all could be done, since no score has such a part: a slip of the pen rather than a choice. */
    boolean partsNowhere() {
        return withoutPart > 0 && done == 0 && failed == 0 && there == 0;
    }

    /** {@code 12 scores done, 1 failed, 2 left out}; {@code 12 of 300 scores done} where nobody read on. */
    String summary(int scores) {
        return done + (brokenOff ? " of " + scores : "") + (done == 1 && !brokenOff ? " score" : " scores") + " done"
                + (failed == 0 ? "" : ", " + failed + " failed") + (leftOut == 0 ? "" : ", " + leftOut + " left out")
                + (there == 0 ? "" : ", " + there + " there already") + (brokenOff ? ", then nobody read on" : "");
    }
}
