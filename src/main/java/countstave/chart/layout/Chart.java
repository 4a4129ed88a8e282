package countstave.chart.layout;

import countstave.chart.shape.Shape;
import java.util.List;

/**
 * A chart laid out on pages, ready for any drawing.
 *
 * @param about what the document says of itself
 * @param paper on what it is drawn, and how large
 * @param pages in order
 * @param bookmarks in order of pages
 * @param notes what the reader must be told: things that are not drawn, lines that had to be reduced
 */
public record Chart(About about, Paper paper, List<Page> pages, List<Bookmark> bookmarks, List<String> notes) {

    /**
     * What a document says of itself.
     *
     * @param title title of the document
     * @param composer composer, or an empty text
     * @param subject names of the parts
     * @param language BCP 47 language tag
     */
    public record About(String title, String composer, String subject, String language) {
    }

    /**
     * A size of paper and of staff, in millimetres.
     *
     * @param space one staff space
     * @param width width of a page
     * @param height height of a page
     */
    public record Paper(double space, double width, double height) {
    }

    /**
     * A page.
     *
     * @param shapes in staff spaces from its lower left corner
     * @param bars where the bars of a chart stand; of a practice sheet none
     */
    public record Page(List<Shape> shapes, List<BarPlace> bars) {

        Page(List<Shape> shapes) {
            this(shapes, List.of());
        }
    }

    /**
     * A bookmark.
     *
     * @param text its words
     * @param page page index from 0
     * @param top y of its target in staff spaces
     * @param inner bookmarks within
     */
    public record Bookmark(String text, int page, double top, List<Bookmark> inner) {
    }
}
