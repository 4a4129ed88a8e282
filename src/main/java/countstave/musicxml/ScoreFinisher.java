package countstave.musicxml;

import countstave.score.Bar;
import countstave.score.Fact;
import countstave.score.Movements;
import countstave.score.Part;
import countstave.score.TempoChange;
import countstave.time.Duration;
import countstave.time.TimeOverflowException;
import java.util.ArrayList;
import java.util.List;

/** Settles what one bar or one part cannot know alone: lengths of empty bars, pickups, runs of rests, tempi, swing. */
final class ScoreFinisher {

    private final List<PartReader> parts;

    ScoreFinisher(List<PartReader> parts) {
        this.parts = parts;
    }

    List<Part> finish(Header header, TempoMap tempi, SwingMap swings) {
        for (PartReader part : parts) {
            ownLengths(part);
        }
        borrowedLengths();
        for (PartReader part : parts) {
            new BarPhases(part.bars).settle();
            movements(part);
        }
        List<List<TempoChange>> changes = tempi.resolve();
        for (PartReader part : parts) {
            new RestRuns(part, parts.get(0), changes).number();
        }
        List<Part> finished = new ArrayList<>();
        for (PartReader part : parts) {
            List<Bar> bars = new ArrayList<>(part.bars.size());
            for (BarDraft draft : part.bars) {
                List<TempoChange> inBar = draft.index < changes.size() ? changes.get(draft.index) : List.of();
                Bar bar = draft.toBar(inBar, swings.changes(draft.index));
                try {
                    BarFacts.report(draft, bar, part.facts);
                } catch (TimeOverflowException e) {
                    throw part.absurd(draft, e);
                }
                bars.add(bar);
            }
            finished.add(new Part(part.id, header.partName(part.id), part.staves(), List.copyOf(bars),
                    part.lastLyricNumber(), header.instruments(part.id)));
        }
        return List.copyOf(finished);
    }

    List<Fact> facts() {
        List<Fact> all = new ArrayList<>();
        for (PartReader part : parts) {
            all.addAll(part.facts.sorted());
        }
        return List.copyOf(all);
    }

    /** A bar is as long as its fullest voice; one of rest or of nothing, as its meter says. */
    private static void ownLengths(PartReader part) {
        for (BarDraft bar : part.bars) {
            Duration full = bar.meter.isSenzaMisura() ? bar.barRest : bar.meter.length();
            if (bar.hasContent && bar.filled.sinceStart().isPositive()) {
                bar.length = bar.filled.sinceStart();
                // a bar's rest beside a voice of notes: the bar is still as long as the rest
                if (bar.barRest != null && !bar.implicit && full != null && bar.barRest.equals(full)
                        && full.isLongerThan(bar.length)) {
                    bar.length = full;
                }
            } else if (bar.implicit && bar.barRest != null) {
                bar.length = bar.barRest;
            } else {
                bar.length = full == null ? Duration.WHOLE : full;
            }
        }
    }

    /** An empty bar is as long as the same bar of the other parts in its meter, where those agree: a pickup is for all. */
    private void borrowedLengths() {
        int most = parts.stream().mapToInt(p -> p.bars.size()).max().orElse(0);
        for (int i = 0; i < most; i++) {
            for (PartReader part : parts) {
                if (i < part.bars.size() && !part.bars.get(i).hasContent) {
                    Duration agreed = agreedLength(i, part.bars.get(i));
                    part.bars.get(i).length = agreed == null ? part.bars.get(i).length : agreed;
                }
            }
        }
    }

    private Duration agreedLength(int index, BarDraft empty) {
        Duration agreed = null;
        for (PartReader other : parts) {
            BarDraft bar = index < other.bars.size() ? other.bars.get(index) : empty;
            if (bar.hasContent && bar.meter.components().equals(empty.meter.components())) {
                if (agreed != null && !agreed.equals(bar.length)) {
                    return null;
                }
                agreed = bar.length;
            }
        }
        return agreed;
    }

    private static void movements(PartReader part) {
        int[] movements = Movements.of(part.bars.stream().map(bar -> bar.number).toList());
        for (int i = 0; i < movements.length; i++) {
            part.bars.get(i).movement = movements[i];
        }
    }
}
