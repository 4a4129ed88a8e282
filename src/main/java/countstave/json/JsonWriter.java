package countstave.json;

import countstave.count.BarCounts;
import countstave.count.Count;
import countstave.count.PartCounts;
import countstave.count.SegmentCounts;
import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.time.Offset;
import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Locale;

/**
 * Writes plans and their words as JSON: the contract {@code countstave/2} of {@code docs/json.md}, one bar a line.
 *
 * <p>It writes as it goes: {@link #begin}, {@link #part} for each part, {@link #end}. Nothing is kept, so a part may be
 * forgotten as soon as it is written.
 */
public final class JsonWriter {

    /** Name and version of the contract. */
    public static final String SCHEMA = "countstave/2";

    /** Parts and bars. */
    private static final int LINES = 4;

    private final JsonStream out;

    /** @param out where the text goes; not closed here */
    public JsonWriter(Writer out) {
        this.out = new JsonStream(out, LINES);
    }

    /** Writes a whole score at once. */
    public static void write(String title, String source, List<PartCounts> parts, Writer out) throws IOException {
        JsonWriter writer = new JsonWriter(out);
        writer.begin(title, source);
        for (PartCounts part : parts) {
            writer.part(part);
        }
        writer.end();
    }

    /**
     * @param title title of the score
     * @param source name of its file
     */
    public void begin(String title, String source) throws IOException {
        out.object().text("schema", SCHEMA);
        out.object("score").text("title", title).text("source", source).endObject();
        out.array("parts");
    }

    public void part(PartCounts counts) throws IOException {
        out.object().text("id", counts.part().id())
                .text("name", counts.part().name())
                .text("system", counts.system().name());
        out.array("bars");
        for (BarCounts bar : counts.bars()) {
            bar(bar);
        }
        out.endArray().endObject().flush();
    }

    public void end() throws IOException {
        out.endArray().endObject().end();
    }

    private void bar(BarCounts counts) throws IOException {
        BarTimeline bar = counts.timeline();
        out.object().number("index", bar.bar().index())
                .text("number", bar.bar().number());
        if (bar.bar().name().movement() > 0) {
            out.number("movement", bar.bar().name().movement());
        }
        out.text("meter", bar.bar().meter().toString())
                .text("length", bar.bar().length().toString());
        // a pickup may begin inside a beat: only beats of the bar itself are listed
        List<Beat> beats = bar.beats().stream().filter(b -> b.start().compareTo(Offset.ZERO) >= 0).toList();
        offsets("beats", beats.stream().map(Beat::start).toList());
        if (bar.irregular()) {
            offsets("groups", beats.stream().filter(Beat::isGroupStart).map(Beat::start).toList());
        }
        out.object("tempo").text("unit", bar.tempo().unit().toString())
                .number("perMinute", bar.tempo().perMinute()).endObject();
        offsets("attacks", bar.attacks());
        if (bar.swung() != null) {
            offsets("written", bar.swung().written());
        }
        out.array("segments");
        for (SegmentCounts segment : counts.segments()) {
            segment(segment);
        }
        out.endArray().endObject();
    }

    private void segment(SegmentCounts counts) throws IOException {
        Segment segment = counts.segment();
        out.object().text("start", segment.start().toString())
                .text("end", segment.end().toString())
                .text("unit", segment.unit().toString());
        if (segment.isSwung()) {
            out.text("swing", segment.swung().ratio());
        }
        out.text("kind", segment.kind().name().toLowerCase(Locale.ROOT))
                .flag("change", segment.change())
                .number("rate", segment.rate());
        if (segment.hasFelt()) {
            out.text("grid", segment.grid().toString());
            offsets("felt", segment.felt());
        }
        out.array("counts");
        for (Count count : counts.counts()) {
            out.object().text("at", count.at().toString()).text("say", count.say()).flag("played", count.played())
                    .endObject();
        }
        out.endArray().endObject();
    }

    private void offsets(String name, List<Offset> offsets) throws IOException {
        out.array(name);
        for (Offset offset : offsets) {
            out.text(offset.toString());
        }
        out.endArray();
    }
}
