package countstave.chart.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class PageBreakerTest {

    @Test
    void allLinesOnOnePageWhenTheyFit() {
        assertEquals(List.of(5), PageBreaker.breakPages(Collections.nCopies(5, 10.0), 2, 60, 70));
    }

    /** Six lines fit the first page; the seventh would stand alone on the second. */
    @Test
    void noLineStandsAloneOnAPage() {
        List<Integer> pages = PageBreaker.breakPages(Collections.nCopies(7, 10.0), 2, 70, 80);
        assertEquals(2, pages.size());
        assertTrue(pages.stream().allMatch(p -> p >= 2), pages.toString());
        assertEquals(7, pages.stream().mapToInt(Integer::intValue).sum());
    }

    @Test
    void aLineHigherThanThePageStillHasOne() {
        assertEquals(List.of(1, 1, 1), PageBreaker.breakPages(List.of(10.0, 500.0, 10.0), 2, 60, 70));
    }
}
