package countstave.page;

import countstave.count.NoteNames;
import countstave.json.JsonStream;
import countstave.practice.Passage;
import countstave.practice.PracticePlan;
import countstave.practice.Seam;
import countstave.practice.StepCount;
import countstave.practice.Stretch;
import countstave.practice.TempoLadder;
import countstave.score.Bar;
import countstave.score.Direction;
import countstave.score.Part;
import countstave.score.Tempo;
import countstave.time.Offset;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The loops that are ready: passages with their tempo steps, seams in their growing pieces, and what lies between the
 * rehearsal letters. Positions are those from the start of the part's first counted bar.
 */
final class PageLoops {

    private final PracticePlan plan;
    private final PageWords words;
    private final Stretch whole;
    private final NoteNames names;
    private final JsonStream out;

    PageLoops(PracticePlan plan, PageWords words, NoteNames names, JsonStream out) {
        this.plan = plan;
        this.words = words;
        this.whole = Stretch.of(plan.counts());
        this.names = names;
        this.out = out;
    }

    /** @param leading the part in which the letters stand */
    void write(Part leading) throws IOException {
        out.array("loops");
        for (Passage passage : plan.passages()) {
            if (passage.sameAs() == 0) {
                passage(passage);
            }
        }
        letters(leading);
        out.endArray();
    }

    private void passage(Passage passage) throws IOException {
        Stretch stretch = passage.stretch();
        Offset from = whole.starts().get(stretch.first());
        open("passage", names.phrase("bars", stretch.size(), stretch.numbers()), passage.rank() + "", from,
                from.plus(stretch.length()));
        out.array("steps");
        Tempo written = stretch.timeline(0).tempo();
        for (StepCount count : passage.counts()) {
            String ways = words.steps().get(count).stream().map(String::valueOf).collect(Collectors.joining(" "));
            for (TempoLadder.Rung rung : count.steps()) {
                // the page has its tempi in the written unit, a step may be in that of the beat
                out.object().number("perMinute", rung.tempo().perMinute(written.unit())).number("clean", rung.clean())
                        .number("stage", count.sayableStage(rung).ordinal()).text("ways", ways).endObject();
            }
        }
        out.endArray().endObject();
        for (Seam seam : passage.seams()) {
            for (Seam.Loop loop : seam.loops()) {
                Offset start = whole.starts().get(seam.around().first());
                open("seam", loop.size().title(names.phrases()), seam.name(), start.plus(loop.from().sinceStart()),
                        start.plus(loop.to().sinceStart()));
                out.endObject();
            }
        }
    }

    private void letters(Part leading) throws IOException {
        List<Offset> starts = new ArrayList<>();
        List<String> letters = new ArrayList<>();
        for (int bar = 0; bar < whole.size(); bar++) {
            Bar written = whole.timeline(bar).bar();
            List<Bar> bars = leading.bars();
            Bar led = written.index() < bars.size() ? bars.get(written.index()) : written;
            for (Direction direction : led.directions()) {
                if (direction.kind() == Direction.Kind.REHEARSAL && !direction.text().isBlank()) {
                    starts.add(whole.starts().get(bar));
                    letters.add(direction.text().strip());
                    break;
                }
            }
        }
        starts.add(whole.end());
        for (int i = 0; i < letters.size(); i++) {
            open("letter", letters.get(i), "", starts.get(i), starts.get(i + 1));
            out.endObject();
        }
    }

    private void open(String kind, String title, String name, Offset from, Offset to) throws IOException {
        out.object().text("kind", kind).text("name", name).text("title", title).text("from", from.toString())
                .text("to", to.toString());
    }
}
