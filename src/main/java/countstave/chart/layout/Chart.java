package countstave.chart.layout;

import countstave.chart.shape.Shape;
import java.util.List;

/**
 * A chart laid out on pages, ready for any drawing.
 *
 * @param title title of the document
 * @param composer composer, or an empty text
 * @param subject names of the parts
 * @param language BCP 47 language tag
 * @param spaceMm one staff space in millimetres
 * @param widthMm width of a page
 * @param heightMm height of a page
 * @param pages in order
 * @param bookmarks in order of pages
 * @param notes what the reader must be told: things that are not drawn, lines that had to be reduced
 */
public record Chart(String title, String composer, String subject, String language, double spaceMm, double widthMm,
        double heightMm, List<Page> pages, List<Bookmark> bookmarks, List<String> notes) {

    /** Shapes in staff spaces from the lower left corner of the page. */
    public record Page(List<Shape> shapes) {
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
