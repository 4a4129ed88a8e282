package countstave.spelling;

import java.util.List;

/**
 * A file and what was found in it.
 *
 * @param name as the user named it, or as it was found in a folder
 * @param findings in the order of parts, bars and beats; where some are known, those that are new
 * @param known those that are known from an earlier state and not told; null where nothing is known of any
 * @param problem why it could not be read, or null
 */
public record CheckedFile(String name, List<Finding> findings, List<Finding> known, String problem) {

    /** All of it is to be told. */
    public CheckedFile(String name, List<Finding> findings, String problem) {
        this(name, findings, null, problem);
    }
}
