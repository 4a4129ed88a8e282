package countstave.batch;

/** How the work on many scores went. */
final class Tally {

    int done;
    int failed;
    int leftOut;

    /** How many of those left out have none of the parts that were asked for. */
    int withoutPart;

    /** Whether whoever read the results has gone away, such as {@code head} behind a pipe. */
    boolean brokenOff;

    /** Whether nothing at all could be done, since no score has such a part: a slip of the pen rather than a choice. */
    boolean partsNowhere() {
        return withoutPart > 0 && done == 0 && failed == 0;
    }

    /** {@code 12 scores done, 1 failed, 2 left out}. */
    String summary() {
        return done + (done == 1 ? " score" : " scores") + " done" + (failed == 0 ? "" : ", " + failed + " failed")
                + (leftOut == 0 ? "" : ", " + leftOut + " left out");
    }
}
