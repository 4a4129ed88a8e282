package countstave.score;

import java.util.List;

/**
 * A score as read: what is written, exact in time, without any library's types.
 *
 * @param title work or movement title; the file name without its ending where there is none
 * @param composer composer, or an empty text
 * @param source name of the file
 * @param parts in the order of the part list
 * @param facts what in the file contradicts itself, part by part in the order of bars
 */
public record Score(String title, String composer, String source, List<Part> parts, List<Fact> facts) {
}
