package countstave.json;

import countstave.grid.Segment;
import countstave.practice.Breath;
import countstave.practice.DayOptions;
import countstave.practice.DayPlan;
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
import java.io.Writer;
import java.util.List;

/** Writes practice plans as JSON: the contract {@code countstave-practice/3} of {@code docs/practice.md}. */
public final class PracticeJson {

    /** Name and version of the contract. */
    public static final String SCHEMA = "countstave-practice/3";

    /** Parts, passages, and what a passage is made of. */
    private static final int LINES = 8;

    private final JsonStream out;
    private final WorkJson work;

    private PracticeJson(Writer out) {
        this.out = new JsonStream(out, LINES);
        this.work = new WorkJson(this.out);
    }

    /**
     * @param title title of the score
     * @param source name of its file
     * @param plans one for each part
     * @param top how many passages of a part the days hold, the hardest first; all are written
     * @param days what is set for the plan of days, or null for none
     * @param out where the text goes; not closed here
     */
    public static void write(String title, String source, List<PracticePlan> plans, int top, DayOptions days, Writer out)
            throws IOException {
        new PracticeJson(out).document(title, source, plans, top, days);
    }

    private void document(String title, String source, List<PracticePlan> plans, int top, DayOptions days) throws IOException {
        out.object().text("schema", SCHEMA);
        out.object("score").text("title", title).text("source", source).endObject();
        out.array("parts");
        for (PracticePlan plan : plans) {
            part(plan, days == null ? null : DayPlan.of(plan, top, days));
        }
        out.endArray().endObject().end();
    }

    private void part(PracticePlan plan, DayPlan days) throws IOException {
        Part part = plan.counts().part();
        out.object().text("id", part.id()).text("name", part.name())
                .text("system", plan.counts().system().name())
                .number("voiceLimit", plan.options().voiceLimit())
                .number("breathSeconds", plan.options().breath())
                .flag("tempoAssumed", plan.counts().timeline().tempoAssumed());
        figures("whole", plan.whole());
        work.order(plan);
        if (days != null) {
            work.days(days);
        }
        out.array("passages");
        for (Passage passage : plan.passages()) {
            passage(passage, plan.isLeft(passage));
        }
        out.endArray().endObject();
    }

    private void passage(Passage passage, boolean atSight) throws IOException {
        Stretch stretch = passage.stretch();
        out.object().number("rank", passage.rank()).number("sameAs", passage.sameAs()).flag("atSight", atSight);
        out.object("first");
        bar(stretch, 0);
        out.endObject().object("last");
        bar(stretch, stretch.size() - 1);
        out.endObject();
        Tempo tempo = passage.written();
        out.object("tempo").text("unit", tempo.unit().toString()).number("perMinute", tempo.perMinute()).endObject();
        figures("figures", passage.figures());
        out.array("bars");
        for (int bar = 0; bar < stretch.size(); bar++) {
            out.object();
            bar(stretch, bar);
            figures("figures", passage.bars().get(bar));
            out.endObject();
        }
        out.endArray();
        work.seams(passage);
        out.array("ladder");
        for (StepCount count : passage.counts()) {
            for (TempoLadder.Rung rung : count.steps()) {
                out.object().number("perMinute", rung.tempo().perMinute()).number("clean", rung.clean())
                        .number("count", count.number()).text("stage", count.sayableStage(rung).id()).endObject();
            }
        }
        out.endArray();
        counts("counts", passage.counts());
        if (!passage.asked().isEmpty()) {
            counts("asked", passage.asked());
        }
        out.endObject();
    }

    private void counts(String name, List<StepCount> counts) throws IOException {
        out.array(name);
        for (StepCount count : counts) {
            count(count);
        }
        out.endArray();
    }

    private void count(StepCount count) throws IOException {
        Stretch stretch = count.stretch();
        out.object().number("number", count.number())
                .number("from", count.from().perMinute()).number("to", count.to().perMinute());
        out.array("felt");
        for (int bar = 0; bar < stretch.size(); bar++) {
            for (Segment segment : stretch.bars().get(bar).plan().segments()) {
                for (Offset at : segment.felt()) {
                    out.object().number("index", stretch.timeline(bar).bar().index()).text("at", at.toString()).endObject();
                }
            }
        }
        out.endArray().array("breaths");
        for (Breath.Mark mark : count.breaths()) {
            out.object();
            bar(stretch, mark.bar());
            out.text("at", mark.at().toString()).number("seconds", mark.since().toDouble())
                    .text("reason", mark.reason().title()).flag("beat", mark.beat()).endObject();
        }
        out.endArray().array("stages");
        for (Stage stage : count.stages()) {
            out.object().text("id", stage.id()).number("sayableTempo", count.sayable().get(stage));
            counts(stretch, stage);
            out.endObject();
        }
        out.endArray().endObject();
    }

    private void counts(Stretch stretch, Stage stage) throws IOException {
        out.array("counts");
        for (Thinning.Thinned thinned : Thinning.of(stretch, stage)) {
            out.object().number("index", stretch.timeline(thinned.bar()).bar().index())
                    .text("at", thinned.count().at().toString()).text("say", thinned.count().say())
                    .flag("played", thinned.count().played()).flag("said", thinned.said()).endObject();
        }
        out.endArray();
    }

    private void bar(Stretch stretch, int bar) throws IOException {
        Bar written = stretch.timeline(bar).bar();
        out.number("index", written.index()).text("number", written.number());
    }

    private void figures(String name, Figures figures) throws IOException {
        out.object(name).number("changes", figures.changes())
                .number("changesPerBar", figures.changesPerBar())
                .number("peak", figures.peak().toDouble())
                .number("fastest", figures.fastest().toDouble())
                .number("rarity", figures.rarity())
                .number("distance", figures.distance())
                .number("difficulty", figures.difficulty())
                .number("sayableTempo", figures.sayable()).endObject();
    }
}
