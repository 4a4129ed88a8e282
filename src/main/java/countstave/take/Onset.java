package countstave.take;

/**
 * A moment at which something begins to sound.
 *
 * @param second from the take's start
 * @param level how strong it is, in decibels below the strongest that the take's format can hold: 0 and less
 */
public record Onset(double second, double level) implements Comparable<Onset> {

    @Override
    public int compareTo(Onset other) {
        return Double.compare(second, other.second);
    }
}
