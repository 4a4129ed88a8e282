package countstave.grid;

import countstave.score.BarTimeline;
import countstave.score.PartTimeline;
import countstave.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Why a bar is counted as it is: what the chosen count costs, what of, and what the best plan costs that counts the bar
 * differently somewhere. All costs in thousandths, by the weights of the plan: 1000 is one word that is said and not
 * played.
 *
 * @param bar the bar
 * @param cost of the chosen count: its words and the changes at its cuts
 * @param terms what the cost is made of, only what is not zero; they add up to it
 * @param extra how much more the whole part costs in the best plan without this bar's count; −1 where there is none
 * @param other how that plan counts the bar; empty where there is none
 */
public record Explanation(BarTimeline bar, long cost, Map<Term, Long> terms, long extra, List<Segment> other) {

    /** One explanation for each bar; linear in the number of bars. */
    public static List<Explanation> of(PartTimeline part, PlanOptions options) {
        return new Maker(part, options).explain();
    }

    private static final class Maker {

        private final PartTimeline part;
        private final PlanGraph graph;
        private final Search search;
        private final RunnerUp runnerUp;
        private final Map<Term, PlanGraph> byTerm = new EnumMap<>(Term.class);

        Maker(PartTimeline part, PlanOptions options) {
            this.part = part;
            this.graph = new PlanGraph(part, options);
            this.search = new Search(graph);
            this.runnerUp = new RunnerUp(graph, search);
            for (Term term : Term.values()) {
                // a cost is a sum of weights: with the others at nothing, a plan costs what this term adds
                byTerm.put(term, new PlanGraph(part, new PlanOptions(options.weights().only(term), options.voiceLimit(),
                        options.felt(), options.against())));
            }
        }

        List<Explanation> explain() {
            List<Explanation> all = new ArrayList<>();
            int slot = Search.START;
            Duration before = null;
            for (int b = 0; b < graph.size(); b++) {
                int entered = slot;
                Search.Path path = search.path(b, entered);
                List<Search.Step> chosen = path.steps();
                slot = path.slotAtEnd();
                BarTimeline timeline = part.bars().get(b);
                Map<Term, Long> terms = new EnumMap<>(Term.class);
                for (Map.Entry<Term, PlanGraph> term : byTerm.entrySet()) {
                    long cost = cost(term.getValue(), b, entered, chosen);
                    if (cost != 0) {
                        terms.put(term.getKey(), cost);
                    }
                }
                RunnerUp.Found other = runnerUp.of(b, chosen);
                all.add(new Explanation(timeline, cost(graph, b, entered, chosen), terms,
                        other == null ? -1 : (other.cost() - search.total()) >> Changes.TIE_SHIFT,
                        other == null ? List.of()
                                : Segments.of(timeline, graph.bar(b), graph.units(), other.path(), before)));
                if (!chosen.isEmpty()) {
                    before = graph.units().unit(chosen.get(chosen.size() - 1).state());
                }
            }
            return all;
        }

        private long cost(PlanGraph weighed, int b, int entered, List<Search.Step> path) {
            long cost = 0;
            int slot = entered;
            for (Search.Step step : path) {
                cost += weighed.stepCost(b, slot, step);
                slot = graph.changes().after(slot, step.state(), step.tuplet() >= 0, step.from());
            }
            return cost >> Changes.TIE_SHIFT;
        }
    }
}
