package countstave.batch;

import java.nio.file.Path;

/** How outputs are called. */
public interface Naming {

    /** Name of the output in a folder of outputs; {@code stem}: what stands for the score's name in it. */
    String inFolder(NamedScore score, String stem);

    /** Where the output goes without {@code -o}; null if {@code -o} must say it. */
    Path beside(NamedScore score, String stem);

    /** Where an earlier run may have put an output of this score among the scores; null if there is no such place. */
    default Path formerly(NamedScore score) {
        return null;
    }

    /** Whether outputs beside many scores must be asked for; not where each replaces its score, which needs more. */
    default boolean asksBeside() {
        return false;
    }

    /** Whether a score has several outputs, which lie in one folder. */
    default boolean severalFiles() {
        return false;
    }

    /** Whether an output may replace its own score. */
    default boolean mayReplaceItself() {
        return false;
    }
}
