package countstave.chart.layout;

import countstave.chart.shape.Shape;
import java.util.ArrayList;
import java.util.List;

/** Fills pages from top to bottom; what belongs together goes to the next page together. */
final class SheetPages {

    private final PageFrame frame;
    private final List<List<Shape>> pages = new ArrayList<>();
    private final List<SheetBlock> waiting = new ArrayList<>();
    private double y;
    private int headingInWaiting = -1;
    private int headingPage;
    private double headingTop;

    SheetPages(PageFrame frame) {
        this.frame = frame;
        newPage();
    }

    private void newPage() {
        pages.add(new ArrayList<>());
        y = frame.musicTop(pages.size() == 1);
    }

    /** Adds a block; it is placed once it is known what it has to stay with. */
    void add(SheetBlock block) {
        waiting.add(block);
        if (!block.keptWithNext()) {
            place();
        }
    }

    /** Adds the heading of a passage, to which a bookmark leads. */
    void heading(SheetBlock block) {
        headingInWaiting = waiting.size();
        add(block);
    }

    /** What is left of the page. */
    double room() {
        return y - frame.musicBottom();
    }

    int lastHeading() {
        return headingPage;
    }

    double lastHeadingTop() {
        return headingTop;
    }

    /** All pages; nothing can be added afterwards. */
    List<List<Shape>> finished() {
        place();
        return pages;
    }

    private boolean fits(double height) {
        return y - height >= frame.musicBottom();
    }

    private static double height(List<SheetBlock> blocks) {
        return blocks.stream().mapToDouble(SheetBlock::height).sum();
    }

    private void place() {
        boolean fresh = pages.get(pages.size() - 1).isEmpty();
        if (!fresh && !fits(height(waiting))) {
            newPage();
            fresh = true;
        }
        for (int i = 0; i < waiting.size(); i++) {
            SheetBlock block = waiting.get(i);
            boolean distance = block.shapes().isEmpty();
            if (distance && fresh) {
                continue;
            }
            // all but the last of those that wait are kept with the next
            if (!distance && !fresh && !fits(height(waiting.subList(i, waiting.size())))) {
                newPage();
            }
            if (i == headingInWaiting) {
                headingPage = pages.size() - 1;
                headingTop = y;
            }
            for (Shape shape : block.shapes()) {
                pages.get(pages.size() - 1).add(shape.moved(frame.left, y));
            }
            y -= block.height();
            fresh = pages.get(pages.size() - 1).isEmpty();
        }
        waiting.clear();
        headingInWaiting = -1;
    }
}
