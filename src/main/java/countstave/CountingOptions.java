package countstave;

import countstave.count.CountingSystem;
import countstave.count.FeltNotes;
import countstave.grid.PlanOptions;
import countstave.musicxml.ReadOptions;
import countstave.score.BarChoice;
import countstave.score.PartChoice;
import countstave.score.Selection;
import countstave.score.TimeOptions;

/**
 * What is counted and how: one value, built at the edge and handed down.
 *
 * @param parts which parts
 * @param selection which voices and staves of them
 * @param bars which bars of them
 * @param system whose words
 * @param time a beat, a tempo and a swing in place of the score's
 * @param plan the weights and the voice limit
 * @param felt what becomes of felt notes in the annotated score; {@code plan} says whether there are any
 * @param reading how the score is read: tremolos, notes that are not printed
 */
public record CountingOptions(PartChoice parts, Selection selection, BarChoice bars, CountingSystem system,
        TimeOptions time, PlanOptions plan, FeltNotes felt, ReadOptions reading) {

    /** Everything in the score, by the meter, in numbers. */
    public static CountingOptions defaults() {
        return new CountingOptions(PartChoice.ALL, Selection.ALL, BarChoice.ALL,
                CountingSystem.named(CountingSystem.DEFAULT), TimeOptions.AS_WRITTEN, PlanOptions.DEFAULT,
                FeltNotes.YES, ReadOptions.DEFAULT);
    }

    /** The same of these voices and staves. */
    public CountingOptions with(Selection other) {
        return new CountingOptions(parts, other, bars, system, time, plan, felt, reading);
    }

    /** The same of these bars. */
    public CountingOptions with(BarChoice other) {
        return new CountingOptions(parts, selection, other, system, time, plan, felt, reading);
    }

    /** The same in these words. */
    public CountingOptions with(CountingSystem other) {
        return new CountingOptions(parts, selection, bars, other, time, plan, felt, reading);
    }

    /** The same in this time. */
    public CountingOptions with(TimeOptions other) {
        return new CountingOptions(parts, selection, bars, system, other, plan, felt, reading);
    }

    /** The same by these weights, with felt notes annotated so. */
    public CountingOptions with(PlanOptions weights, FeltNotes feltNotes) {
        return new CountingOptions(parts, selection, bars, system, time, weights, feltNotes, reading);
    }
}
