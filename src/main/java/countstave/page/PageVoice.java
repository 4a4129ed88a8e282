package countstave.page;

import countstave.count.CountingSystem;
import countstave.json.JsonStream;
import countstave.voice.Clip;
import countstave.voice.Speaker;
import countstave.voice.StepCode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The voice of a page: of each counting system the words that the score needs, every sound once, in the light coding of the
 * bank, which the page decodes itself: no browser has to know a format.
 */
final class PageVoice {

    /** The step that a word begins with is chosen by its first samples. */
    private static final int TRIED = 400;

    private final List<Map<String, Integer>> said = new ArrayList<>();
    private final List<Clip> clips = new ArrayList<>();
    private final Map<Clip, Integer> numbers = new IdentityHashMap<>();
    private final Speaker first;

    /**
     * @param choice who speaks
     * @param words of each of the systems, what is said in it
     */
    PageVoice(Speaker.Choice choice, List<CountingSystem> systems, List<? extends Iterable<String>> words) {
        List<Speaker> speakers = systems.stream().map(system -> new Speaker(choice, system)).toList();
        first = speakers.get(0);
        for (int i = 0; i < systems.size(); i++) {
            Map<String, Integer> numbersOf = new LinkedHashMap<>();
            for (String word : words.get(i)) {
                numbersOf.put(word, number(speakers.get(i).clip(word)));
            }
            said.add(numbersOf);
        }
    }

    private int number(Clip clip) {
        return numbers.computeIfAbsent(clip, one -> {
            clips.add(one);
            return clips.size() - 1;
        });
    }

    /** What the player is to be told: of the system that the score is counted in. */
    List<String> notes() {
        return first.notes();
    }

    void write(JsonStream out) throws IOException {
        out.object("voice").number("rate", Clip.RATE).number("gain", first.gain()).array("clips");
        for (Clip clip : clips) {
            int beginning = beginning(clip.samples());
            out.object().text("code", Base64.getEncoder().encodeToString(StepCode.encode(clip.samples(), beginning)))
                    .number("samples", clip.samples().length).number("beginning", beginning).number("centre", clip.centre())
                    .endObject();
        }
        out.endArray().array("said");
        for (Map<String, Integer> words : said) {
            out.object();
            for (Map.Entry<String, Integer> word : words.entrySet()) {
                out.number(word.getKey(), word.getValue());
            }
            out.endObject();
        }
        out.endArray().endObject();
    }

    /** The step with which the code of a word comes nearest to it; that of a word of the bank is found again. */
    private static int beginning(float[] samples) {
        float[] first = java.util.Arrays.copyOf(samples, Math.min(TRIED, samples.length));
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int step = 0; step < StepCode.BEGINNINGS && least > 0; step++) {
            float[] heard = StepCode.decode(StepCode.encode(first, step), 0, first.length, step);
            double off = 0;
            for (int i = 0; i < first.length; i++) {
                off += (double) (heard[i] - first[i]) * (heard[i] - first[i]);
            }
            if (off < least) {
                least = off;
                best = step;
            }
        }
        return best;
    }
}
