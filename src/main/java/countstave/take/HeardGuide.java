package countstave.take;

import java.io.IOException;

/**
 * A guide track on the clock of a take: sample {@code n} is what the track sounds like at the moment that is heard at
 * sample {@code n} of the take; silence before its start and after its end. Between its samples stands a windowed sinc.
 */
final class HeardGuide implements Samples {

    /** Samples of the sinc on either side. */
    private static final int REACH = 8;
    /** Places between two samples for which the sinc is kept. */
    private static final int FINE = 512;
    private static final float[][] SINC = new float[FINE + 1][2 * REACH];

    static {
        for (int f = 0; f <= FINE; f++) {
            for (int i = 0; i < 2 * REACH; i++) {
                double x = Math.PI * ((double) f / FINE + REACH - 1 - i);
                double window = 0.5 + 0.5 * Math.cos(x / (REACH + 1));
                SINC[f][i] = (float) ((Math.abs(x) < 1e-9 ? 1 : Math.sin(x) / x) * window);
            }
        }
    }

    private final Samples guide;
    private final double rate;
    private final double lag;
    private final double speed;
    private final SampleRing ring = new SampleRing(2 * BLOCK);
    private final float[] block = new float[BLOCK];
    private boolean ended;
    private long at;

    /**
     * @param rate samples a second of the take
     * @param lag seconds of the take at which the guide's start is heard
     * @param speed seconds of the take for one of the guide
     */
    HeardGuide(Samples guide, double rate, double lag, double speed) {
        this.guide = guide;
        this.rate = rate;
        this.lag = lag;
        this.speed = speed;
    }

    @Override
    public double rate() {
        return rate;
    }

    /** Never ends. */
    @Override
    public int read(float[] into) throws IOException {
        read(into, BLOCK);
        return BLOCK;
    }

    /** The next {@code n}. */
    void read(float[] into, int n) throws IOException {
        for (int i = 0; i < n; i++) {
            double place = (at / rate - lag) / speed * guide.rate();
            long middle = (long) Math.floor(place);
            at++;
            into[i] = 0;
            if (middle < -REACH) {
                continue;
            }
            while (ring.end() <= middle + REACH) {
                feed();
            }
            float[] sinc = SINC[(int) Math.round((place - middle) * FINE)];
            float sum = 0;
            for (int k = 0; k < 2 * REACH; k++) {
                sum += sinc[k] * ring.at(middle - REACH + 1 + k);
            }
            into[i] = sum;
        }
    }

    private void feed() throws IOException {
        int n = ended ? 0 : guide.read(block);
        ended = n == 0;
        for (int i = 0; i < Math.max(1, n); i++) {
            ring.add(i < n ? block[i] : 0);
        }
    }

    @Override
    public void close() throws IOException {
        guide.close();
    }
}
