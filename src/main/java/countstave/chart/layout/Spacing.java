package countstave.chart.layout;

import countstave.chart.engrave.Column;
import countstave.chart.engrave.Placing.XOfTime;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * How a bar's time is spread over its width.
 *
 * <p>The bar is cut into <em>pieces</em> (beats, or whole spans of a tuplet counted through), and within a piece x is
 * proportional to time: equal syllables stand equally far apart. Each piece has a least width, at which nothing in it
 * touches, and a natural one, at which pieces of one unit are alike and faster units do not crowd slower ones out. Any
 * width from the least upwards keeps everything apart, since each distance grows with the pieces it spans.
 */
final class Spacing {

    /** Natural width over the least one. */
    private static final double EASE = 1.12;
    /**
     * With which power of its length the least room of a unit grows; the natural one grows with the square root, by 1.4 where
     * the length is doubled. House choice.
     */
    private static final double LEAST_GROWTH = 0.2;
    /** Natural width of a quarter that needs no more. */
    private static final double NATURAL_QUARTER = 4.2;

    private final Offset[] cuts;
    private final double[] least;
    private final double[] natural;
    private final double leastWidth;
    private final double naturalWidth;

    /** What must stay apart: the room of each moment of one kind (notes, syllables, lyrics) and the gap between. */
    record Track(List<Column> columns, double gap) {
    }

    /**
     * A piece of time.
     *
     * @param unit what is counted in it
     * @param leastUnit the least room for one unit, whatever stands there
     */
    record Piece(Offset start, Offset end, Duration unit, double leastUnit) {

        double length() {
            return end.minus(start).toDouble();
        }
    }

    /**
     * @param pieces in order and without gaps, covering the bar
     * @param tracks what must stay apart
     */
    Spacing(List<Piece> pieces, List<Track> tracks) {
        int n = pieces.size();
        cuts = new Offset[n + 1];
        least = new double[n];
        for (int i = 0; i < n; i++) {
            cuts[i] = pieces.get(i).start();
            Piece piece = pieces.get(i);
            least[i] = piece.leastUnit() * piece.length() / piece.unit().toDouble();
        }
        cuts[n] = pieces.get(n - 1).end();
        List<Need> needs = new ArrayList<>();
        tracks.forEach(t -> addNeeds(t, needs));
        // first the needs within one piece, each of which has one remedy; then those that reach over several
        needs.stream().filter(Need::isWithinOnePiece).forEach(this::satisfy);
        needs.stream().filter(need -> !need.isWithinOnePiece()).forEach(this::satisfy);
        grow(pieces);
        natural = naturalWidths(pieces);
        leastWidth = Arrays.stream(least).sum();
        naturalWidth = Arrays.stream(natural).sum();
    }

    /** Two positions, as shares of pieces, that must stand {@code room} apart. */
    private record Need(int firstPiece, int lastPiece, double firstShare, double lastShare, double room) {

        boolean isWithinOnePiece() {
            return firstPiece == lastPiece;
        }

        /** How much of piece {@code i} lies between the two. */
        double share(int i) {
            return (i == lastPiece ? lastShare : 1) - (i == firstPiece ? firstShare : 0);
        }
    }

    private void addNeeds(Track track, List<Need> needs) {
        Column previous = null;
        for (Column column : track.columns()) {
            if (previous != null && column.at().isAfter(previous.at())) {
                needs.add(need(previous.at(), column.at(), previous.right() + column.left() + track.gap()));
            }
            previous = column;
        }
        if (previous != null && previous.at().isBefore(cuts[cuts.length - 1])) {
            needs.add(need(previous.at(), cuts[cuts.length - 1], previous.right() + track.gap()));
        }
    }

    private Need need(Offset from, Offset to, double room) {
        int first = pieceAt(from);
        int last = pieceAt(to);
        double lastShare = share(last, to);
        if (lastShare == 0 && last > first) {
            last--;
            lastShare = 1;
        }
        return new Need(first, last, share(first, from), lastShare, room);
    }

    private void satisfy(Need need) {
        double have = 0;
        for (int i = need.firstPiece(); i <= need.lastPiece(); i++) {
            have += need.share(i) * least[i];
        }
        if (have < need.room()) {
            double factor = need.room() / have;
            for (int i = need.firstPiece(); i <= need.lastPiece(); i++) {
                least[i] *= factor;
            }
        }
    }

    /** The room of a unit grows with its length: no quarter is narrower than a 16th of the same bar, however little it needs. */
    private void grow(List<Piece> pieces) {
        Integer[] finestFirst = new Integer[least.length];
        Arrays.setAll(finestFirst, i -> i);
        Arrays.sort(finestFirst, Comparator.comparing(i -> pieces.get(i).unit()));
        for (int i : finestFirst) {
            Piece piece = pieces.get(i);
            double units = piece.length() / piece.unit().toDouble();
            for (int j : finestFirst) {
                Piece finer = pieces.get(j);
                if (finer.unit().isShorterThan(piece.unit())) {
                    double room = least[j] / finer.length() * finer.unit().toDouble();
                    least[i] = Math.max(least[i], units * room * Math.pow(piece.unit().toDouble() / finer.unit().toDouble(), LEAST_GROWTH));
                }
            }
        }
    }

    private double[] naturalWidths(List<Piece> pieces) {
        double[] perUnit = new double[least.length];
        double most = 0;
        for (int i = 0; i < least.length; i++) {
            for (int j = 0; j < least.length; j++) {
                if (pieces.get(j).unit().equals(pieces.get(i).unit())) {
                    perUnit[i] = Math.max(perUnit[i], least[j] / pieces.get(j).length());
                }
            }
            most = Math.max(most, perUnit[i]);
        }
        double[] widths = new double[least.length];
        for (int i = 0; i < least.length; i++) {
            // halfway (geometrically) between strict proportion to time and no more room than needed
            double rate = Math.max(Math.sqrt(perUnit[i] * most) * EASE, 4 * NATURAL_QUARTER);
            widths[i] = Math.max(least[i], rate * pieces.get(i).length());
        }
        return widths;
    }

    double leastWidth() {
        return leastWidth;
    }

    double naturalWidth() {
        return naturalWidth;
    }

    /** The places of all moments when the bar's time is spread from {@code left} over {@code width}. */
    XOfTime spread(double left, double width) {
        double[] edges = new double[cuts.length];
        edges[0] = left;
        for (int i = 0; i < least.length; i++) {
            edges[i + 1] = edges[i] + pieceWidth(i, width);
        }
        return at -> {
            int i = pieceAt(at);
            return edges[i] + share(i, at) * (edges[i + 1] - edges[i]);
        };
    }

    private double pieceWidth(int i, double width) {
        if (width >= naturalWidth) {
            return natural[i] * width / naturalWidth;
        }
        if (width <= leastWidth) {
            return least[i] * width / leastWidth;
        }
        double ease = (width - leastWidth) / (naturalWidth - leastWidth);
        return least[i] + ease * (natural[i] - least[i]);
    }

    /** The piece that holds a position; the last one at and after the end. */
    private int pieceAt(Offset at) {
        int i = cuts.length - 2;
        while (i > 0 && at.isBefore(cuts[i])) {
            i--;
        }
        return i;
    }

    private double share(int piece, Offset at) {
        return at.minus(cuts[piece]).toDouble() / cuts[piece + 1].minus(cuts[piece]).toDouble();
    }
}
