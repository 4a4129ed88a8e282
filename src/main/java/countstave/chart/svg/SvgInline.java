package countstave.chart.svg;

import java.util.List;

/**
 * The pages of a chart as they stand in one page of the web.
 *
 * @param head fonts and signs of all pages: HTML that stands once in the page's body, before the first of them
 * @param pages one {@code svg} element a page, of class {@code countstave-page}
 */
public record SvgInline(String head, List<String> pages) {

    static final String NAMESPACES = "xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\"";
}
