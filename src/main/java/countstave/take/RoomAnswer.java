package countstave.take;

/** What a room, or a loudspeaker, makes of each frequency of a sound; transforms as JTransforms lays them out. */
final class RoomAnswer {

    private RoomAnswer() {
    }

    /**
     * What comes through of a sound: its transform times the answer's, without what is constant and without the highest frequency.
     *
     * @param sound changed in place
     */
    static void apply(float[] answer, float[] sound) {
        sound[0] = 0;
        sound[1] = 0;
        for (int k = 1; k < sound.length / 2; k++) {
            float re = sound[2 * k];
            float im = sound[2 * k + 1];
            sound[2 * k] = re * answer[2 * k] - im * answer[2 * k + 1];
            sound[2 * k + 1] = re * answer[2 * k + 1] + im * answer[2 * k];
        }
    }
}
