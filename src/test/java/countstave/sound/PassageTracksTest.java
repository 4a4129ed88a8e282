package countstave.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.NoteNames;
import countstave.practice.Passage;
import countstave.practice.Plans;
import countstave.practice.Stage;
import countstave.practice.StepCount;
import countstave.practice.TempoLadder;
import countstave.score.ScoreException;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the two guide tracks of a passage are made of: every tempo step in order, and every stage at the slowest one. */
class PassageTracksTest {

    private static final GuideOptions NO_COUNT_IN = new GuideOptions(GuideOptions.DEFAULT.layers(), false, true, List.of(),
            GuideOptions.DEFAULT_PEAK);

    private static List<String> markers(GuideTrack track) {
        return track.notes().stream().filter(note -> note.meter() == null).map(GuideTrack.Note::text).toList();
    }

    @ParameterizedTest
    @ValueSource(strings = {"groove", "dense"})
    void everyStepAndEveryStage(String score) {
        for (Passage passage : Plans.of(Plans.counted(score)).get(0).different()) {
            PassageTracks tracks = PassageTracks.of(passage, 1, NO_COUNT_IN);
            List<String> steps = new ArrayList<>();
            for (StepCount count : passage.counts()) {
                for (TempoLadder.Rung rung : count.steps()) {
                    steps.add(NoteNames.SYMBOLS.tempo(rung.tempo()));
                }
            }
            List<String> heard = markers(tracks.steps());
            assertEquals(steps.size(), heard.size(), heard.toString());
            for (int i = 0; i < steps.size(); i++) {
                assertTrue(heard.get(i).contains(steps.get(i)), heard.get(i));
            }
            List<String> stages = markers(tracks.stages());
            List<String> titles = Arrays.stream(Stage.values()).map(Stage::title).toList();
            assertEquals(titles.size(), stages.size(), stages.toString());
            for (int i = 0; i < titles.size(); i++) {
                assertTrue(stages.get(i).contains(titles.get(i)), stages.get(i));
            }
            assertEquals(steps.get(0), tracks.slowest());
            // every stage lasts as long as the first step, which is the slowest
            List<GuideTrack.Note> legs = tracks.steps().notes().stream().filter(note -> note.meter() == null).toList();
            Offset end = legs.size() > 1 ? legs.get(1).at() : tracks.steps().end();
            assertEquals(tracks.steps().clock().at(end).times(titles.size()), tracks.stages().seconds());
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, Leg.MOST_REPEATS + 1})
    void repeatsOutOfRange(int repeats) {
        Passage passage = Plans.of(Plans.counted("groove")).get(0).different().get(0);
        assertThrows(ScoreException.class, () -> PassageTracks.of(passage, repeats, GuideOptions.DEFAULT));
    }
}
