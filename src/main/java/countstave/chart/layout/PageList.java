package countstave.chart.layout;

import countstave.chart.shape.Shape;
import java.util.ArrayList;
import java.util.List;

/** Pages one after the other, each with the frame that it gets when it is known how many there are. */
final class PageList {

    /** @param first whether it is the first of its frame: titles stand on it */
    private record Entry(Chart.Page page, PageFrame frame, boolean first) {
    }

    private final List<Entry> entries = new ArrayList<>();

    int size() {
        return entries.size();
    }

    /** @param first whether it is the first page of its frame */
    void add(Chart.Page page, PageFrame frame, boolean first) {
        entries.add(new Entry(page, frame, first));
    }

    /** Adds the pages of a frame, from the first on. */
    void addAll(List<List<Shape>> pages, PageFrame frame) {
        for (int i = 0; i < pages.size(); i++) {
            add(new Chart.Page(pages.get(i)), frame, i == 0);
        }
    }

    /**
     * The pages with head and foot, of texts that can be set.
     *
     * @param letters notes down what cannot
     */
    List<Chart.Page> framed(Letters letters) {
        List<Chart.Page> pages = new ArrayList<>();
        for (Entry entry : entries) {
            List<Shape> shapes = new ArrayList<>(entry.page.shapes());
            shapes.addAll(entry.frame.furniture(entry.first, pages.size() + 1, entries.size()));
            pages.add(new Chart.Page(shapes.stream().flatMap(s -> letters.printable(s).stream()).toList(), entry.page.bars()));
        }
        return List.copyOf(pages);
    }
}
