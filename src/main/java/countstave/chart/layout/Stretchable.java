package countstave.chart.layout;

/** Something that takes a stretch of a line: a part that keeps its width, and one that gives. In staff spaces. */
interface Stretchable {

    /** The width that does not stretch. */
    double fixedWidth(boolean lineStart, boolean lineEnd);

    /** The least width of what stretches. */
    double leastStretch();

    /** The width of what stretches when nothing pulls or pushes; at least the least. */
    double naturalStretch();
}
