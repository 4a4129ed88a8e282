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

    private final JsonText out;
    private boolean firstPart = true;

    /** @param out where the text goes; not closed here */
    public JsonWriter(Appendable out) {
        this.out = new JsonText(out);
    }

    /** Writes a whole score at once. */
    public static void write(String title, String source, List<PartCounts> parts, Appendable out) throws IOException {
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
        out.raw("{\"schema\":").text(SCHEMA).raw(",\n \"score\":{\"title\":").text(title).raw(",\"source\":").text(source)
                .raw("},\n \"parts\":[");
    }

    public void part(PartCounts counts) throws IOException {
        out.raw(firstPart ? "\n" : ",\n");
        firstPart = false;
        out.raw("  {\"id\":").text(counts.part().id())
                .raw(",\"name\":").text(counts.part().name())
                .raw(",\"system\":").text(counts.system().name()).raw(",\n   \"bars\":[");
        boolean first = true;
        for (BarCounts bar : counts.bars()) {
            out.raw(first ? "\n" : ",\n");
            first = false;
            bar(bar);
        }
        out.raw("]}").flush();
    }

    public void end() throws IOException {
        out.raw("]}\n").flush();
    }

    private void bar(BarCounts counts) throws IOException {
        BarTimeline bar = counts.timeline();
        out.raw("    {\"index\":").raw(Integer.toString(bar.bar().index()))
                .raw(",\"number\":").text(bar.bar().number())
                .raw(",\"meter\":").text(bar.bar().meter().toString())
                .raw(",\"length\":").text(bar.bar().length().toString());
        // a pickup may begin inside a beat: only beats of the bar itself are listed
        List<Beat> beats = bar.beats().stream().filter(b -> b.start().compareTo(Offset.ZERO) >= 0).toList();
        out.raw(",\"beats\":");
        offsets(beats.stream().map(Beat::start).toList());
        if (bar.irregular()) {
            out.raw(",\"groups\":");
            offsets(beats.stream().filter(Beat::isGroupStart).map(Beat::start).toList());
        }
        out.raw(",\"tempo\":{\"unit\":").text(bar.tempo().unit().toString())
                .raw(",\"perMinute\":").number(bar.tempo().perMinute()).raw("}");
        out.raw(",\"attacks\":");
        offsets(bar.attacks());
        if (bar.swung() != null) {
            out.raw(",\"written\":");
            offsets(bar.swung().written());
        }
        out.raw(",\"segments\":[");
        boolean first = true;
        for (SegmentCounts segment : counts.segments()) {
            out.raw(first ? "" : ",");
            first = false;
            segment(segment);
        }
        out.raw("]}");
    }

    private void segment(SegmentCounts counts) throws IOException {
        Segment segment = counts.segment();
        out.raw("{\"start\":").text(segment.start().toString())
                .raw(",\"end\":").text(segment.end().toString())
                .raw(",\"unit\":").text(segment.unit().toString());
        if (segment.isSwung()) {
            out.raw(",\"swing\":").text(segment.swung().ratio());
        }
        out.raw(",\"kind\":").text(segment.kind().name().toLowerCase(Locale.ROOT))
                .raw(",\"change\":").raw(Boolean.toString(segment.change()))
                .raw(",\"rate\":").number(segment.rate());
        if (segment.hasFelt()) {
            out.raw(",\"grid\":").text(segment.grid().toString()).raw(",\"felt\":");
            offsets(segment.felt());
        }
        out.raw(",\"counts\":[");
        boolean first = true;
        for (Count count : counts.counts()) {
            out.raw(first ? "{\"at\":" : ",{\"at\":").text(count.at().toString())
                    .raw(",\"say\":").text(count.say())
                    .raw(count.played() ? ",\"played\":true}" : ",\"played\":false}");
            first = false;
        }
        out.raw("]}");
    }

    private void offsets(List<Offset> offsets) throws IOException {
        out.raw("[");
        boolean first = true;
        for (Offset offset : offsets) {
            out.raw(first ? "" : ",").text(offset.toString());
            first = false;
        }
        out.raw("]");
    }
}
