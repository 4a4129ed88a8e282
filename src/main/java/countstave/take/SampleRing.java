package countstave.take;

/** The last second or so of a sound, by the number of each sample from its start; before the start there is silence. */
final class SampleRing {

    final float[] samples;
    private long end;

    /** @param least how many samples it keeps at least */
    SampleRing(int least) {
        samples = new float[Integer.highestOneBit(Math.max(2, least) - 1) << 1];
    }

    void add(float sample) {
        samples[index(end++)] = sample;
    }

    /** How many samples have come. */
    long end() {
        return end;
    }

    /** Where sample {@code number} stands in {@link #samples}. */
    int index(long number) {
        return (int) (number & samples.length - 1);
    }

    float at(long number) {
        return number < 0 || number >= end ? 0 : samples[index(number)];
    }
}
