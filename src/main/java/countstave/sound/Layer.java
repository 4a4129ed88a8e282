package countstave.sound;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;

/**
 * What is heard. Each layer is complete in itself (the beats include the first of the bar), so that any of them can be
 * switched off; where several clicks fall together they add up to a stronger one. The voice says the counts; it is no
 * click, and not in MIDI files.
 *
 * <p>MIDI keys are those of the General MIDI percussion map (from memory).
 */
public enum Layer {
    /** High wood block. */
    BAR("bar", "bar starts", 76, 110, 1760, 0.30),
    /** Low wood block. */
    BEAT("beat", "beats", 77, 96, 1175, 0.25),
    /** Closed hi-hat. */
    GRID("grid", "counted positions", 42, 64, 784, 0.15),
    /** Side stick. */
    RHYTHM("rhythm", "played rhythm", 37, 100, 440, 0.30),
    /** Spoken. */
    VOICE("voice", "spoken counts", 0, 0, 0, 0);

    /** Those that click. */
    public static final Set<Layer> CLICKS = Collections.unmodifiableSet(EnumSet.range(BAR, RHYTHM));

    private final String id;
    private final String title;
    private final int key;
    private final int velocity;
    private final double hertz;
    private final double share;

    Layer(String id, String title, int key, int velocity, double hertz, double share) {
        this.id = id;
        this.title = title;
        this.key = key;
        this.velocity = velocity;
        this.hertz = hertz;
        this.share = share;
    }

    /** Its name in options. */
    public String id() {
        return id;
    }

    /** Its name for the player, and of its MIDI track. */
    public String title() {
        return title;
    }

    int key() {
        return key;
    }

    int velocity() {
        return velocity;
    }

    double hertz() {
        return hertz;
    }

    /** Its share of the highest level of all clicks; those of all layers that click add up to 1. */
    double share() {
        return share;
    }
}
