package countstave.score;

/**
 * How a bar is drawn, as far as the file says.
 *
 * @param meterShown whether the time signature is printed in it
 * @param left barline at the left, or null for none
 * @param right barline at the right, or null for a plain one
 * @param style shorthand in force
 */
public record BarLook(boolean meterShown, Barline left, Barline right, BarStyle style) {

    public static final BarLook PLAIN = new BarLook(false, null, null, BarStyle.NONE);

    /** {@link #PLAIN} where nothing is said. */
    public static BarLook of(boolean meterShown, Barline left, Barline right, BarStyle style) {
        boolean plain = !meterShown && left == null && right == null && style == BarStyle.NONE;
        return plain ? PLAIN : new BarLook(meterShown, left, right, style);
    }

    /** The same with or without the time signature printed. */
    public BarLook withMeterShown(boolean shown) {
        return new BarLook(shown, left, right, style);
    }
}
