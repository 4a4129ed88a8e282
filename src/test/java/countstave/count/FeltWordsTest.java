package countstave.count;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.score.Tempo;
import countstave.time.Duration;
import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the page says of notes that nobody could say at the tempo; all figures by hand, with 6.5 syllables a second. */
class FeltWordsTest {

    private static final String[] SIXTEENTHS = {"0/1", "1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "7/16"};

    private final TestPlans plans = TestPlans.part("Drums");

    private List<String> texts(NoteNames names) {
        return ChangeWords.of(plans.plan()).stream()
                .map(bar -> String.join("; ", bar.stream().map(m -> m.at() + " " + m.text(names)).toList())).toList();
    }

    private List<String> texts() {
        return texts(NoteNames.SYMBOLS);
    }

    /** 6.5 · 60 / 4 = 97.5 quarters a minute. */
    @Test
    void doubled() {
        plans.tempo(Tempo.of(152)).bar("2/4", "1/4").felt().attackEvery("1/16").fill("1/8");
        assertEquals(List.of("0/1 8ths; 16ths felt, all said up to ♩ = 97"), texts());
        assertEquals(List.of("0/1 8ths; 16ths felt, all said up to quarter = 97"), texts(NoteNames.WORDS));
    }

    /** At ♩ = 97 the 16ths come 6.47 a second, at 98 6.53. */
    @Test
    void nothingIsSaidOfWhatCouldBeSaid() {
        plans.tempo(Tempo.of(97)).bar("2/4", "1/4").felt().attackEvery("1/16").fill("1/8");
        assertEquals(List.of("0/1 8ths"), texts());
        TestPlans faster = TestPlans.part("A").tempo(Tempo.of(98));
        faster.bar("2/4", "1/4").felt().attackEvery("1/16").fill("1/8");
        assertEquals("8ths; 16ths felt, all said up to ♩ = 97", ChangeWords.of(faster.plan()).get(0).get(0).text());
    }

    /** In the unit of the written tempo: six 16ths to the dotted quarter, 6.5 · 60 / 6 = 65. */
    @Test
    void inTheUnitOfTheTempo() {
        plans.tempo(new Tempo(Duration.of(3, 8), BigDecimal.valueOf(120))).bar("6/8", "3/8").felt().attackEvery("1/16")
                .fill("1/8");
        assertEquals(List.of("0/1 8ths; 16ths felt, all said up to ♩. = 65"), texts());
    }

    /** Where the count goes on, a mark of its own stands before the first felt note, once until the count changes. */
    @Test
    void anOrnamentInAGoingCount() {
        plans.tempo(Tempo.of(80)).bar("2/4", "1/4").attackEvery("1/16").fill("1/16");
        for (int bar = 0; bar < 2; bar++) {
            plans.bar("2/4", "1/4").felt().attackEvery("1/16").attacks("11/32").fill("1/16");
        }
        plans.bar("2/4", "1/4").fill("1/8").bar("2/4", "1/4").felt().attackEvery("1/16").attacks("1/32").fill("1/16");
        assertEquals(List.of("0/1 16ths", "5/16 32nds felt, all said up to ♩ = 48", "", "0/1 8ths, ×1⁄2",
                "0/1 16ths, ×2; 32nds felt, all said up to ♩ = 48"), texts());
        assertEquals(ChangeMark.Kind.FELT, ChangeWords.of(plans.plan()).get(1).get(0).kind());
    }

    /** Quarter-note triplets in one hand against 16ths in the other: twelve to the beat, 6.5 · 60 / 12 = 32.5. */
    @Test
    void against() {
        plans.tempo(Tempo.of(80)).bar("2/4", "1/4").felt().voice(1, "1", SIXTEENTHS).voice(1, "2", "0/1", "1/6", "1/3")
                .fill("1/16");
        assertEquals(List.of("0/1 16ths; felt against, all said up to ♩ = 32"), texts());
    }

    /** An ornament of the hands is not felt against the feet, though the feet lie on the count. */
    @Test
    void anOrnamentIsNotAgainst() {
        plans.tempo(Tempo.of(80)).bar("2/4", "1/4").felt().voice(1, "1", "0/1", "1/16", "3/32", "1/8", "3/16")
                .voice(1, "2", "0/1", "1/4").fill("1/16");
        assertEquals(List.of("0/1 16ths; 32nds felt, all said up to ♩ = 48"), texts());
    }

    /** One voice alone has nothing to go against. */
    @Test
    void oneVoiceIsNotAgainst() {
        plans.tempo(Tempo.of(80)).bar("2/4", "1/4").felt().voice(1, "1", "0/1", "1/16", "1/6", "1/4").fill("1/16");
        assertEquals(List.of("0/1 16ths; 32nd triplets felt, all said up to ♩ = 32"), texts());
    }

    /** 8ths in one staff, 5 over the bar in the other: 20 positions to the bar of 2/4; in a span the tuplet is the frame. */
    @Test
    void againstASpan() {
        plans.tempo(Tempo.of(120)).bar("2/4", "1/4").felt().voice(1, "1", "0/1", "1/10", "1/5", "3/10", "2/5")
                .voice(2, "5", "0/1", "1/8", "1/4", "3/8").span("1/10", "1/2");
        assertEquals(List.of("0/1 5 over 2 ♩; felt against, all said up to ♩ = 39"), texts());
    }

    /** Forty-five positions to the beat could be said up to ♩ = 8, which no metronome gives. */
    @Test
    void noTempoAtAll() {
        plans.tempo(Tempo.of(60)).bar("1/4", "1/4").felt().attacks("0/1", "1/20", "1/36").fill("1/20");
        assertEquals(List.of("0/1 quintuplets; felt"), texts());
    }
}
