package countstave;

import countstave.count.CountingSystem;
import countstave.count.FeltNotes;
import countstave.grid.PlanOptions;
import countstave.score.BarChoice;
import countstave.score.PartChoice;
import countstave.score.PulseChoice;
import countstave.score.Selection;
import countstave.score.Swing;
import countstave.score.Tempo;

/**
 * What is counted and how: one value, built at the edge and handed down.
 *
 * @param parts which parts
 * @param selection which voices and staves of them
 * @param bars which bars of them
 * @param system whose words
 * @param beat what is the beat
 * @param tempo a tempo in place of the score's, or null
 * @param plan the weights and the voice limit
 * @param openTremolo whether measured tremolos are opened
 * @param swing a swing in place of the score's, or null
 * @param felt what becomes of felt notes in the annotated score; {@code plan} says whether there are any
 * @param countHidden whether notes that are not printed are counted wherever they stand
 */
public record CountingOptions(PartChoice parts, Selection selection, BarChoice bars, CountingSystem system,
        PulseChoice beat, Tempo tempo, PlanOptions plan, boolean openTremolo, Swing swing, FeltNotes felt,
        boolean countHidden) {

    /** Notes that are not printed are left out where something printed stands for them. */
    public CountingOptions(PartChoice parts, Selection selection, BarChoice bars, CountingSystem system,
            PulseChoice beat, Tempo tempo, PlanOptions plan, boolean openTremolo, Swing swing, FeltNotes felt) {
        this(parts, selection, bars, system, beat, tempo, plan, openTremolo, swing, felt, false);
    }

    /** Everything in the score, by the meter, in numbers. */
    public static CountingOptions defaults() {
        return new CountingOptions(PartChoice.ALL, Selection.ALL, BarChoice.ALL,
                CountingSystem.named(CountingSystem.DEFAULT), PulseChoice.BY_METER, null, PlanOptions.DEFAULT, false,
                null, FeltNotes.YES);
    }
}
