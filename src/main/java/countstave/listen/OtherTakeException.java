package countstave.listen;

/** The take is of something else than the passage, or begins elsewhere. */
final class OtherTakeException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final String bars;
    private final double share;

    OtherTakeException(String bars, double share) {
        super("the take is of something else");
        this.bars = bars;
        this.share = share;
    }

    /** The printed numbers of the bars that were asked for. */
    public String bars() {
        return bars;
    }

    /** How much of what is planned and of what is heard belongs to each other, 0 to 1. */
    public double share() {
        return share;
    }
}
