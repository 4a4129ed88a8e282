package countstave.json;

import countstave.count.NoteNames;
import countstave.plain.Phrases;
import countstave.practice.DayPlan;
import countstave.practice.Passage;
import countstave.practice.PracticePlan;
import countstave.practice.Seam;
import countstave.practice.Stretch;
import countstave.practice.WorkStep;
import countstave.time.Offset;
import java.io.IOException;
import java.util.Locale;

/** The work of a practice plan as JSON: the order of work, the days, and the seams of passages. */
final class WorkJson {

    private final JsonStream out;

    WorkJson(JsonStream out) {
        this.out = out;
    }

    void order(PracticePlan plan) throws IOException {
        out.array("orderOfWork");
        for (WorkStep step : WorkStep.of(plan)) {
            out.object().text("title", step.title(Phrases.ENGLISH)).text("doing", step.doing(Phrases.ENGLISH))
                    .text("click", step.click(Phrases.ENGLISH)).endObject();
        }
        out.endArray();
    }

    void days(DayPlan plan) throws IOException {
        out.object("dayPlan").number("minutes", plan.options().minutes());
        out.array("days");
        for (DayPlan.Day day : plan.days()) {
            out.object().number("day", day.number());
            if (day.date() != null) {
                out.text("date", day.date().toString());
            }
            out.flag("rest", day.isRest()).array("items");
            for (DayPlan.Item item : day.items()) {
                out.object().text("kind", item.kind().id()).text("name", item.name()).number("minutes", item.minutes())
                        .endObject();
            }
            out.endArray().endObject();
        }
        out.endArray().array("left");
        for (Passage passage : plan.left()) {
            out.text(String.valueOf(passage.rank()));
        }
        out.endArray().endObject();
    }

    void seams(Passage passage) throws IOException {
        out.array("seams");
        for (Seam seam : passage.seams()) {
            out.object().text("name", seam.name()).number("count", seam.count().number());
            place(seam.around(), seam.around().position(seam.bar(), seam.at()), false);
            out.text("number", seam.barNumber());
            out.text("before", seam.before().name(NoteNames.SYMBOLS)).text("after", seam.after().name(NoteNames.SYMBOLS))
                    .text("speed", seam.speed().numerator() + "/" + seam.speed().denominator());
            out.number("difficulty", seam.figures().sum()).number("jump", seam.figures().jump())
                    .flag("leavesFamily", seam.figures().leavesFamily())
                    .text("place", seam.figures().place().name().toLowerCase(Locale.ROOT).replace('_', '-'))
                    .number("rarity", seam.figures().rarity());
            out.array("loops");
            for (Seam.Loop loop : seam.loops()) {
                out.object().text("size", loop.size().id());
                out.object("from");
                place(seam.around(), loop.from(), false);
                out.endObject().object("to");
                place(seam.around(), loop.to(), true);
                out.endObject().endObject();
            }
            out.endArray().array("also");
            for (String bar : seam.also()) {
                out.text(bar);
            }
            out.endArray().endObject();
        }
        out.endArray();
    }

    /** A position as a bar and a place in it; an end at a barline belongs to the bar before. */
    private void place(Stretch stretch, Offset position, boolean end) throws IOException {
        int bar = 0;
        while (bar + 1 < stretch.size() && (end ? stretch.starts().get(bar + 1).isBefore(position)
                : !stretch.starts().get(bar + 1).isAfter(position))) {
            bar++;
        }
        out.number("index", stretch.timeline(bar).bar().index())
                .text("at", Offset.at(position.minus(stretch.starts().get(bar))).toString());
    }
}
