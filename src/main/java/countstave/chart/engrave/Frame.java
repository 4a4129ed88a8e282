package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.shape.Shape;
import countstave.score.Bar;
import countstave.score.StaffChange;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/** What frames the notes of a bar (or of a run of bars drawn as one): clef, key, time signature and barlines. */
final class Frame {

    /** Distances around clef, key and time signature, in staff spaces: house choice within common practice. */
    private static final double MARGIN = 0.6;
    private static final double GAP = 0.7;
    /** Between the last note's room and the barline. */
    private static final double BEFORE_BARLINE = 0.4;

    final Bar first;
    final Bar last;
    final EngraveContext context;
    final MusicFont font;
    /** In force at the first bar's start, its own changes there included. */
    final StaffState opening;
    final StaffState closing;
    private final SignRow[] prefixes = new SignRow[2];
    private final SignRow[] suffixes = new SignRow[2];

    Frame(Bar first, Bar last, EngraveContext context) {
        this.first = first;
        this.last = last;
        this.context = context;
        this.font = context.music();
        this.opening = atStart(first, context.state());
        this.closing = first == last ? context.state().after(first, context.staff())
                : opening.after(last, context.staff());
    }

    private StaffState atStart(Bar bar, StaffState before) {
        StaffState state = before;
        for (StaffChange change : bar.markings().staves()) {
            if (change.at().compareTo(Offset.ZERO) <= 0 && concerns(change)) {
                state = state.after(change);
            }
        }
        return state;
    }

    private boolean concerns(StaffChange change) {
        return change.staff() == 0 || change.staff() == context.staff();
    }

    int lines() {
        return opening.lines();
    }

    SignRow prefix(boolean lineStart) {
        int i = lineStart ? 1 : 0;
        if (prefixes[i] == null) {
            prefixes[i] = buildPrefix(lineStart);
        }
        return prefixes[i];
    }

    SignRow suffix(boolean lineEnd) {
        int i = lineEnd ? 1 : 0;
        if (suffixes[i] == null) {
            suffixes[i] = buildSuffix(lineEnd);
        }
        return suffixes[i];
    }

    private SignRow buildPrefix(boolean lineStart) {
        SignRow row = new SignRow(font);
        Barlines barlines = new Barlines(font, lines());
        if (!lineStart) {
            barlines.left(row, first, context.previous(), false);
        }
        if (lineStart) {
            row.space(MARGIN);
            Signatures.clef(row, opening.clef(), lines(), false);
            row.space(GAP);
        }
        boolean keyChange = !opening.hasKeyOf(context.state());
        if (lineStart || keyChange) {
            // the old key's naturals stand at the end of the line before
            SignRow key = new SignRow(font);
            Signatures.key(key, keyChange && !lineStart ? context.state() : StaffState.DEFAULT, opening);
            append(row, key, lineStart ? 0 : GAP);
        }
        if (first.look().meterShown()) {
            SignRow meter = new SignRow(font);
            Signatures.meter(meter, first.meter(), lines());
            append(row, meter, lineStart ? 0 : GAP);
        }
        if (lineStart) {
            barlines.left(row, first, null, true);
        }
        row.space(row.isEmpty() ? MARGIN : first.look().meterShown() && !lineStart ? 1 : GAP);
        return row;
    }

    /** Adds one row to another with a gap before it where something stands and a gap after it. */
    private static void append(SignRow row, SignRow part, double before) {
        if (part.isEmpty()) {
            return;
        }
        row.space(before);
        row.append(part);
        row.space(before == 0 ? GAP : 0);
    }

    private SignRow buildSuffix(boolean lineEnd) {
        SignRow row = new SignRow(font);
        row.space(BEFORE_BARLINE);
        Bar next = context.next();
        StaffState coming = next == null ? closing : atStart(next, closing);
        boolean clefAtEnd = last.markings().staves().stream().anyMatch(c -> c.clef() != null && concerns(c)
                && c.at().compareTo(last.end()) >= 0 && c.at().isAfter(Offset.ZERO));
        if (!coming.clef().equals(closing.clef()) || clefAtEnd) {
            Signatures.clef(row, coming.clef(), coming.lines(), true);
            row.space(MARGIN);
        }
        new Barlines(font, closing.lines()).right(row, last, next, lineEnd);
        if (lineEnd && next != null) {
            announce(row, coming, next);
        }
        return row;
    }

    /** What changes at the start of the next line is announced at the end of this one. */
    private void announce(SignRow row, StaffState coming, Bar next) {
        SignRow part = new SignRow(font);
        if (!coming.hasKeyOf(closing)) {
            Signatures.key(part, closing, coming);
            append(row, part, GAP);
        }
        if (next.look().meterShown() && !next.meter().equals(last.meter())) {
            part = new SignRow(font);
            Signatures.meter(part, next.meter(), coming.lines());
            append(row, part, GAP);
        }
        if (!part.isEmpty()) {
            row.space(GAP / 2);
        }
    }

    /** The frame's shapes for a bar of this place. */
    List<Shape> shapes(Placing placing) {
        List<Shape> shapes = new ArrayList<>(prefix(placing.lineStart()).at(0));
        SignRow suffix = suffix(placing.lineEnd());
        shapes.addAll(suffix.at(placing.width() - suffix.width()));
        return shapes;
    }

    /** Left and right end of the room for notes. */
    double contentLeft(Placing placing) {
        return prefix(placing.lineStart()).width();
    }

    double contentRight(Placing placing) {
        return placing.width() - suffix(placing.lineEnd()).width();
    }
}
