package countstave.text;

import countstave.count.NoteNames;

/**
 * Where the columns of the table of a take begin: as far apart as their figures need, and farther where a language's
 * headings do. The first begins at 0.
 */
record ListenColumns(int beat, int count, int late, int share, int spread, int heard, int scale) {

    /** Behind the longest heading of figures, and behind the longest word. */
    private static final int GAP = 2;
    private static final int BAR = 4;
    private static final int BEAT = 5;
    private static final int COUNT = 7;
    /** How wide figures may be; they end there. */
    static final int LATE = 7;
    static final int SHARE = 7;
    static final int SPREAD = 6;
    static final int HEARD = 5;

    static ListenColumns of(NoteNames names) {
        int beat = 1 + Math.max(BAR, names.phrase("listen.table.bar").length());
        int count = beat + 1 + Math.max(BEAT, names.phrase("listen.table.beat").length());
        int late = count + 1 + Math.max(COUNT, names.phrase("listen.table.count").length());
        int share = late + GAP + Math.max(LATE, names.phrase("listen.table.late").length());
        int spread = share + GAP + Math.max(SHARE, names.phrase("listen.table.share").length());
        int heard = spread + GAP + Math.max(SPREAD, names.phrase("listen.table.spread").length());
        int scale = heard + GAP + Math.max(HEARD, names.phrase("listen.table.heard").length());
        return new ListenColumns(beat, count, late, share, spread, heard, scale);
    }
}
