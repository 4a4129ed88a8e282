package countstave.spelling;

import countstave.score.Bar;
import countstave.score.Fact;
import countstave.score.Part;
import countstave.score.Score;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** A part as the rules see it. */
public final class PartView {

    private final Score score;
    private final Part part;
    private final List<BarView> bars = new ArrayList<>();

    PartView(Score score, Part part) {
        this.score = score;
        this.part = part;
        Map<Integer, List<Fact>> facts = score.facts().stream().filter(fact -> fact.place().partId().equals(part.id()))
                .collect(Collectors.groupingBy(fact -> fact.place().barIndex()));
        Tempo tempo = Tempo.ASSUMED;
        for (Bar bar : part.bars()) {
            for (TempoChange change : bar.markings().tempi()) {
                tempo = change.at().equals(Offset.ZERO) ? change.tempo() : tempo;
            }
            bars.add(new BarView(bar, facts.getOrDefault(bar.index(), List.of()), tempo));
            for (TempoChange change : bar.markings().tempi()) {
                tempo = change.tempo();
            }
        }
    }

    public Score score() {
        return score;
    }

    public Part part() {
        return part;
    }

    public List<BarView> bars() {
        return bars;
    }

    /** The bar at an index, or null beyond the part. */
    public BarView bar(int index) {
        return index >= 0 && index < bars.size() ? bars.get(index) : null;
    }

    /** Whether it is the first part of the score: what concerns all parts is told there. */
    public boolean isFirst() {
        return score.parts().get(0).id().equals(part.id());
    }
}
