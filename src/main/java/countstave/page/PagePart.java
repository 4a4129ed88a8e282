package countstave.page;

import countstave.count.NoteNames;
import countstave.json.JsonStream;
import countstave.practice.Breath;
import countstave.practice.Clock;
import countstave.practice.Passage;
import countstave.practice.PracticePlan;
import countstave.practice.Stretch;
import countstave.score.Bar;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Part;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A part as the page plays it: bars, beats, attacks, counts, tempi and loops, all of them exact fractions. */
final class PagePart {

    private final PracticePlan plan;
    private final PageWords words;
    private final NoteNames names;
    private final JsonStream out;
    private final Map<String, List<Offset>> meters = new LinkedHashMap<>();
    private Tempo tempo;

    PagePart(PracticePlan plan, PageWords words, NoteNames names, JsonStream out) {
        this.plan = plan;
        this.words = words;
        this.names = names;
        this.out = out;
    }

    void write(int systems, Part leading) throws IOException {
        Part part = plan.counts().part();
        Stretch whole = Stretch.of(plan.counts());
        out.object().text("id", part.id()).text("name", part.name()).number("voiceLimit", plan.options().voiceLimit())
                .flag("tempoAssumed", plan.counts().timeline().tempoAssumed()).array("bars");
        for (int bar = 0; bar < whole.size(); bar++) {
            bar(whole, bar);
        }
        out.endArray().object("meters");
        for (Map.Entry<String, List<Offset>> meter : meters.entrySet()) {
            out.array(meter.getKey());
            offsets(meter.getValue());
            out.endArray();
        }
        out.endObject().array("words");
        for (int system = 0; system < systems; system++) {
            words(system);
        }
        out.endArray();
        paces();
        breaths(whole);
        new PageLoops(plan, words, names, out).write(leading);
        out.endObject();
    }

    private void bar(Stretch whole, int index) throws IOException {
        BarTimeline timeline = whole.timeline(index);
        Bar bar = timeline.bar();
        Duration full = bar.meter().isSenzaMisura() ? bar.length() : bar.meter().length();
        String meter = bar.meter() + " " + full + " " + timeline.beats().get(0).length();
        meters.computeIfAbsent(meter, key -> beatsOfFullBar(whole, index, full));
        out.object().number("index", bar.index()).text("number", bar.called()).text("length", bar.length().toString())
                .text("phase", bar.phase().toString()).text("meter", meter).text("full", full.toString())
                .flag("straight", timeline.swung() == null && !timeline.irregular());
        out.array("beats");
        for (Beat beat : timeline.beats()) {
            out.object().text("at", beat.start().toString()).text("length", beat.length().toString())
                    .number("number", beat.number()).endObject();
        }
        out.endArray().array("attacks");
        offsets(timeline.attacks());
        out.endArray().array("ways");
        for (PageWords.Way way : words.bars().get(index)) {
            way(way);
        }
        out.endArray().array("tempi");
        for (TempoChange change : timeline.tempi()) {
            if (!change.tempo().equals(tempo)) {
                tempo = change.tempo();
                tempo(change);
            }
        }
        out.endArray().endObject();
    }

    private void way(PageWords.Way way) throws IOException {
        out.object().array("counts");
        for (PageWords.Place place : way.places()) {
            out.object().text("at", place.at().toString()).flag("played", place.played()).number("stages", place.stages())
                    .endObject();
        }
        out.endArray().array("felt");
        offsets(way.felt());
        out.endArray().array("marks");
        for (PageWords.Mark mark : way.marks()) {
            out.object().text("at", mark.at().toString()).text("text", mark.text()).flag("ofUnit", mark.ofUnit()).endObject();
        }
        out.endArray().endObject();
    }

    private void paces() throws IOException {
        out.array("paces");
        for (PageWords.Pace pace : words.paces()) {
            out.object().number("upTo", pace.upTo()).array("ways");
            for (int way : pace.ways()) {
                out.text(Integer.toString(way));
            }
            out.endArray().endObject();
        }
        out.endArray();
    }

    private void tempo(TempoChange change) throws IOException {
        Tempo at = change.tempo();
        Exact perWhole = Clock.perWhole(at);
        // what stands before the number: the sign alone
        String sign = names.tempo(new Tempo(at.unit(), BigDecimal.ONE)).replaceAll("1$", "");
        out.object().text("at", change.at().toString()).text("unit", at.unit().toString()).number("perMinute", at.perMinute())
                .text("secondsPerWhole", perWhole.numerator() + "/" + perWhole.denominator()).text("sign", sign).endObject();
    }

    private void offsets(List<Offset> offsets) throws IOException {
        for (Offset offset : offsets) {
            out.text(offset.toString());
        }
    }

    /** The beats of a whole bar of the meter: those of the next such bar, else as many of the first beat's length as it holds. */
    private static List<Offset> beatsOfFullBar(Stretch stretch, int index, Duration full) {
        Bar first = stretch.timeline(index).bar();
        for (int bar = index; bar < stretch.size(); bar++) {
            BarTimeline timeline = stretch.timeline(bar);
            if (timeline.bar().phase().isZero() && timeline.bar().meter().equals(first.meter())
                    && timeline.bar().length().equals(full)) {
                return timeline.beats().stream().map(Beat::start).toList();
            }
        }
        List<Offset> beats = new ArrayList<>();
        Duration beat = stretch.timeline(index).beats().get(0).length();
        for (Offset at = Offset.ZERO; at.isBefore(Offset.at(full)); at = at.plus(beat)) {
            beats.add(at);
        }
        return beats;
    }

    /** The words of a system: the different ways of bars once, and for every way of every bar which of them it is. */
    private void words(int system) throws IOException {
        Map<List<String>, Integer> different = new LinkedHashMap<>();
        List<List<String>> bars = new ArrayList<>();
        for (List<PageWords.Way> bar : words.bars()) {
            bars.add(bar.stream().map(way -> String.valueOf(different.computeIfAbsent(
                    way.places().stream().map(place -> place.words().get(system)).toList(), key -> different.size()))).toList());
        }
        out.object().array("rows");
        for (List<String> said : different.keySet()) {
            out.text(String.join(" ", said));
        }
        out.endArray().array("bars");
        for (List<String> bar : bars) {
            out.text(String.join(" ", bar));
        }
        out.endArray().endObject();
    }

    private void breaths(Stretch whole) throws IOException {
        Set<Offset> breaths = new LinkedHashSet<>();
        for (Passage passage : plan.passages()) {
            for (Breath.Mark mark : passage.atWritten().breaths()) {
                breaths.add(whole.position(passage.stretch().first() + mark.bar(), mark.at()));
            }
        }
        out.array("breaths");
        offsets(breaths.stream().sorted().toList());
        out.endArray();
    }
}
