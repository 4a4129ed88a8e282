package countstave.practice;

import countstave.count.NoteNames;
import countstave.score.Tempo;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** Why a passage is hard and how far it can be said, in sentences for a player; the same on every page. */
public final class PassageWords {

    /** More of its seams than this are not told in sentences: they stand in the music. */
    private static final int TOLD = 2;
    /** From this share of the voice limit on, the speed is worth a sentence. */
    private static final double FAST = 0.8;

    private PassageWords() {
    }

    /** The hardest changes first, then the speed. */
    public static List<String> of(Passage passage, NoteNames names) {
        List<String> lines = new ArrayList<>();
        passage.seams().stream().limit(TOLD).forEach(seam -> lines.add(SeamWords.of(seam, names)));
        lines.addAll(speed(passage, names));
        return lines;
    }

    /** How near the voice limit it comes; nothing where that is far. */
    public static List<String> speed(Passage passage, NoteNames names) {
        Figures figures = passage.figures();
        double share = figures.peak().toDouble() / figures.voiceLimit().doubleValue();
        if (share < FAST) {
            return List.of();
        }
        return List.of(names.phrase(figures.isTooFastToSay() ? "passage.too-fast" : "passage.fast", names.tempo(passage.written()),
                names.phrases().decimal(figures.peak().toDouble(), 1), names.phrases().decimal(figures.voiceLimit().stripTrailingZeros())));
    }

    /** {@code said up to ♩ = 67}: how fast all the words of a count can be said. */
    public static String sayable(Passage passage, StepCount count, NoteNames names) {
        int most = count.sayable().get(Stage.ALL);
        return most == 0 ? names.phrase("sayable.never") : most >= SpeechRate.TOP_TEMPO ? names.phrase("sayable.always")
                : names.phrase("sayable", names.tempo(new Tempo(passage.written().unit(), BigDecimal.valueOf(most))));
    }
}
