package countstave.count;

/**
 * Which beats a row of words is for.
 *
 * @param parts how many parts the beat is cut into; 0 for the rule beyond the rows, -1 for the filler
 * @param feel the kind of beat, or null for every kind that has no row of its own
 */
public record RowKey(int parts, Feel feel) {

    /** What a system file says of its filler. */
    public static final RowKey FILLER = new RowKey(-1, null);

    /** What a system file says of its rule beyond the rows, for every feel without a rule of its own. */
    public static final RowKey OTHER = new RowKey(0, null);

    /** As it stands in a system file: {@code 6 compound}, {@code other}, {@code filler}. */
    @Override
    public String toString() {
        String what = switch (parts) {
            case -1 -> "filler";
            case 0 -> "other";
            default -> Integer.toString(parts);
        };
        return what + (feel == null ? "" : " " + feel.fileName());
    }

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof RowKey that && parts == that.parts && feel == that.feel;
    }

    @Override
    public int hashCode() {
        return 31 * parts + (feel == null ? 0 : feel.ordinal() + 1);
    }
}
