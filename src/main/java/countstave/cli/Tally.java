package countstave.cli;

/** How the work on many scores went. */
final class Tally {

    int done;
    int failed;
    int leftOut;

    /** Whether whoever read the results has gone away, such as {@code head} behind a pipe. */
    boolean brokenOff;

    /** {@code 12 scores done, 1 failed, 2 left out}. */
    String summary() {
        return done + (done == 1 ? " score" : " scores") + " done" + (failed == 0 ? "" : ", " + failed + " failed")
                + (leftOut == 0 ? "" : ", " + leftOut + " left out");
    }
}
