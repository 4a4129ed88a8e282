package countstave.practice;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.count.Count;
import countstave.musicxml.ScoreFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Practice plans of whole scores for tests, and what has to be said at a stage, taken from the plan itself. */
public final class Plans {

    private Plans() {
    }

    public static CountedScore counted(String score) {
        return CountedScore.of(ScoreFile.load(Path.of("scores", score + ".musicxml")), CountingOptions.defaults());
    }

    public static CountedScore countedXml(String xml) {
        return CountedScore.of(ScoreFile.of("test.musicxml", xml.getBytes(StandardCharsets.UTF_8)),
                CountingOptions.defaults());
    }

    public static List<PracticePlan> of(CountedScore counted) {
        return counted.parts().stream().map(part -> PracticePlan.of(part, PracticeOptions.DEFAULT)).toList();
    }

    /**
     * The said counts of a bar in order, the breath sign before those before which one breathes.
     *
     * @param bar from the passage's first bar
     */
    public static List<String> said(Passage passage, Stage stage, int bar) {
        List<String> said = new ArrayList<>();
        for (Thinning.Thinned thinned : Thinning.of(passage.stretch(), stage)) {
            Count count = thinned.count();
            if (thinned.bar() == bar && thinned.said()) {
                boolean breath = passage.breaths().stream()
                        .anyMatch(mark -> mark.bar() == bar && mark.at().equals(count.at()));
                said.add((breath ? "^" : "") + count.say());
            }
        }
        return said;
    }

    /** The said counts of all bars of a passage. */
    public static List<String> said(Passage passage, Stage stage) {
        List<String> said = new ArrayList<>();
        for (int bar = 0; bar < passage.stretch().size(); bar++) {
            said.addAll(said(passage, stage, bar));
        }
        return said;
    }
}
