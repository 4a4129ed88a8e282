package countstave.take;

import java.io.Closeable;
import java.io.IOException;

/** Samples of one channel, one after the other, between −1 and 1. */
interface Samples extends Closeable {

    /** How many {@link #read} gives at most at a time. */
    int BLOCK = 4096;

    /** Something whose samples can be read from the start as often as needed. */
    @FunctionalInterface
    interface Source {
        Samples open() throws IOException;
    }

    /** Samples a second. */
    double rate();

    /**
     * The next samples.
     *
     * @param into at least {@link #BLOCK} long
     * @return how many there are; 0 at the end
     */
    int read(float[] into) throws IOException;

    @Override
    default void close() throws IOException {
    }
}
