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

    /** Whether its title is only the name of its file, as where the file has none or its exporter made it up from there. */
    public boolean isUntitled() {
        int dot = source.lastIndexOf('.');
        return title.equalsIgnoreCase(source) || title.equalsIgnoreCase((dot > 0 ? source.substring(0, dot) : source).strip());
    }

    /**
     * The score with a title and a composer where it lacks them.
     *
     * @param otherTitle a title, or null
     * @param otherComposer a composer, or null
     */
    public Score completed(String otherTitle, String otherComposer) {
        return new Score(otherTitle != null && isUntitled() ? otherTitle : title,
                otherComposer != null && composer.isEmpty() ? otherComposer : composer, source, parts, facts);
    }
}
