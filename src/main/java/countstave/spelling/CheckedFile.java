package countstave.spelling;

import java.util.List;

/**
 * A file and what was found in it.
 *
 * @param name as the user named it, or as it was found in a folder
 * @param findings in the order of parts, bars and beats
 * @param problem why it could not be read, or null
 */
public record CheckedFile(String name, List<Finding> findings, String problem) {
}
