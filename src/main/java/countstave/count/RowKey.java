package countstave.count;

/**
 * Which beats a row of words is for.
 *
 * @param parts how many parts the beat is cut into; 0 for the rule beyond the rows
 * @param feel the kind of beat, or null for every kind that has no row of its own
 */
public record RowKey(int parts, Feel feel) {

    /** As it stands in a system file: {@code 6 compound}, {@code other}. */
    @Override
    public String toString() {
        return (parts == 0 ? "other" : Integer.toString(parts)) + (feel == null ? "" : " " + feel.fileName());
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
