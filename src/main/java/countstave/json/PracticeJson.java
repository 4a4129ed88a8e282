package countstave.json;

import countstave.grid.Segment;
import countstave.practice.Breath;
import countstave.practice.Figures;
import countstave.practice.Passage;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.practice.StepCount;
import countstave.practice.Stretch;
import countstave.practice.TempoLadder;
import countstave.practice.Thinning;
import countstave.score.Bar;
import countstave.score.Part;
import countstave.score.Tempo;
import countstave.time.Offset;
import java.io.IOException;
import java.util.List;

/** Writes practice plans as JSON: the contract {@code countstave-practice/2} of {@code docs/practice.md}. */
public final class PracticeJson {

    /** Name and version of the contract. */
    public static final String SCHEMA = "countstave-practice/2";

    private final JsonText out;

    private PracticeJson(Appendable out) {
        this.out = new JsonText(out);
    }

    /**
     * @param title title of the score
     * @param source name of its file
     * @param plans one for each part
     * @param out where the text goes; not closed here
     */
    public static void write(String title, String source, List<PracticePlan> plans, Appendable out)
            throws IOException {
        new PracticeJson(out).document(title, source, plans);
    }

    private void document(String title, String source, List<PracticePlan> plans) throws IOException {
        out.raw("{\"schema\":").text(SCHEMA).raw(",\n \"score\":{\"title\":").text(title).raw(",\"source\":").text(source)
                .raw("},\n \"parts\":[");
        String separator = "\n";
        for (PracticePlan plan : plans) {
            out.raw(separator);
            part(plan);
            separator = ",\n";
        }
        out.raw("]}\n").flush();
    }

    private void part(PracticePlan plan) throws IOException {
        Part part = plan.counts().part();
        out.raw("  {\"id\":").text(part.id()).raw(",\"name\":").text(part.name())
                .raw(",\"system\":").text(plan.counts().system().name())
                .raw(",\"voiceLimit\":").number(plan.options().voiceLimit())
                .raw(",\"breathSeconds\":").number(plan.options().breath())
                .raw(",\"tempoAssumed\":").raw(Boolean.toString(plan.counts().timeline().tempoAssumed()))
                .raw(",\n   \"whole\":");
        figures(plan.whole());
        out.raw(",\n   \"passages\":[");
        String separator = "\n";
        for (Passage passage : plan.passages()) {
            out.raw(separator);
            passage(passage);
            separator = ",\n";
        }
        out.raw("]}");
    }

    private void passage(Passage passage) throws IOException {
        Stretch stretch = passage.stretch();
        Bar first = stretch.timeline(0).bar();
        Bar last = stretch.timeline(stretch.size() - 1).bar();
        out.raw("    {\"rank\":").raw(Integer.toString(passage.rank()))
                .raw(",\"sameAs\":").raw(Integer.toString(passage.sameAs()))
                .raw(",\"first\":{\"index\":").raw(Integer.toString(first.index())).raw(",\"number\":").text(first.number())
                .raw("},\"last\":{\"index\":").raw(Integer.toString(last.index())).raw(",\"number\":").text(last.number())
                .raw("},\"tempo\":");
        tempo(passage.written());
        out.raw(",\n     \"figures\":");
        figures(passage.figures());
        out.raw(",\n     \"bars\":[");
        for (int bar = 0; bar < stretch.size(); bar++) {
            out.raw(bar == 0 ? "\n      {" : ",\n      {");
            bar(stretch, bar);
            out.raw(",\"figures\":");
            figures(passage.bars().get(bar));
            out.raw("}");
        }
        out.raw("],\n     \"ladder\":[");
        String separator = "";
        for (StepCount count : passage.counts()) {
            for (TempoLadder.Rung rung : count.steps()) {
                out.raw(separator).raw("{\"perMinute\":").number(rung.tempo().perMinute())
                        .raw(",\"clean\":").raw(Integer.toString(rung.clean()))
                        .raw(",\"count\":").raw(Integer.toString(count.number()))
                        .raw(",\"stage\":").text(count.sayableStage(rung).id()).raw("}");
                separator = ",";
            }
        }
        out.raw("],\n     \"counts\":[");
        separator = "\n";
        for (StepCount count : passage.counts()) {
            out.raw(separator);
            count(count);
            separator = ",\n";
        }
        out.raw("]}");
    }

    private void count(StepCount count) throws IOException {
        Stretch stretch = count.stretch();
        out.raw("      {\"number\":").raw(Integer.toString(count.number()))
                .raw(",\"from\":").number(count.from().perMinute()).raw(",\"to\":").number(count.to().perMinute())
                .raw(",\"felt\":[");
        String separator = "";
        for (int bar = 0; bar < stretch.size(); bar++) {
            for (Segment segment : stretch.bars().get(bar).plan().segments()) {
                for (Offset at : segment.felt()) {
                    out.raw(separator).raw("{\"index\":")
                            .raw(Integer.toString(stretch.timeline(bar).bar().index()))
                            .raw(",\"at\":").text(at.toString()).raw("}");
                    separator = ",";
                }
            }
        }
        out.raw("],\n       \"breaths\":[");
        separator = "";
        for (Breath.Mark mark : count.breaths()) {
            out.raw(separator).raw("{");
            bar(stretch, mark.bar());
            out.raw(",\"at\":").text(mark.at().toString()).raw(",\"seconds\":").number(mark.since().toDouble())
                    .raw(",\"reason\":").text(mark.reason().title()).raw("}");
            separator = ",";
        }
        out.raw("],\n       \"stages\":[");
        separator = "\n";
        for (Stage stage : Stage.values()) {
            out.raw(separator).raw("        {\"id\":").text(stage.id()).raw(",\"counts\":[");
            counts(stretch, stage);
            out.raw("]}");
            separator = ",\n";
        }
        out.raw("]}");
    }

    private void counts(Stretch stretch, Stage stage) throws IOException {
        String separator = "";
        for (Thinning.Thinned thinned : Thinning.of(stretch, stage)) {
            out.raw(separator).raw("{\"index\":")
                    .raw(Integer.toString(stretch.timeline(thinned.bar()).bar().index()))
                    .raw(",\"at\":").text(thinned.count().at().toString()).raw(",\"say\":").text(thinned.count().say())
                    .raw(",\"played\":").raw(Boolean.toString(thinned.count().played()))
                    .raw(",\"said\":").raw(Boolean.toString(thinned.said())).raw("}");
            separator = ",";
        }
    }

    private void bar(Stretch stretch, int bar) throws IOException {
        Bar written = stretch.timeline(bar).bar();
        out.raw("\"index\":").raw(Integer.toString(written.index())).raw(",\"number\":").text(written.number());
    }

    private void tempo(Tempo tempo) throws IOException {
        out.raw("{\"unit\":").text(tempo.unit().toString()).raw(",\"perMinute\":").number(tempo.perMinute()).raw("}");
    }

    private void figures(Figures figures) throws IOException {
        out.raw("{\"changes\":").raw(Integer.toString(figures.changes()))
                .raw(",\"changesPerBar\":").number(figures.changesPerBar())
                .raw(",\"peak\":").number(figures.peak().toDouble())
                .raw(",\"fastest\":").number(figures.fastest().toDouble())
                .raw(",\"rarity\":").raw(Integer.toString(figures.rarity()))
                .raw(",\"distance\":").number(figures.distance())
                .raw(",\"difficulty\":").number(figures.difficulty())
                .raw(",\"sayableTempo\":").raw(Integer.toString(figures.sayable())).raw("}");
    }
}
