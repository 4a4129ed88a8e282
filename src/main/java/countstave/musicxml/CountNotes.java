package countstave.musicxml;

import countstave.count.BarCounts;
import countstave.count.ChangeMark;
import countstave.count.Count;
import countstave.count.NoteNames;
import countstave.count.SegmentCounts;
import countstave.grid.Segment;
import countstave.plain.MarkupText;
import countstave.score.Beat;
import countstave.score.ScoreException;
import countstave.score.Written;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import countstave.time.Ratio;
import java.util.List;

/**
 * Writes what is said in one bar as notes: beat by beat, each beat beamed and, where it is a tuplet, bracketed. Swung
 * pairs are written as even ones; a felt note makes none.
 */
final class CountNotes {

    private final BarCounts bar;
    private final List<ChangeMark> marks;
    private final NoteNames names;
    private final long divisions;
    private final StringBuilder out;

    CountNotes(BarCounts bar, List<ChangeMark> marks, NoteNames names, long divisions, StringBuilder out) {
        this.bar = bar;
        this.marks = marks;
        this.names = names;
        this.divisions = divisions;
        this.out = out;
    }

    void write() {
        for (SegmentCounts segment : bar.segments()) {
            segment(segment);
        }
    }

    /** A span is one group of notes; in fill every beat is one. */
    private void segment(SegmentCounts counts) {
        Segment segment = counts.segment();
        int done = 0;
        while (done < counts.counts().size()) {
            // as written: of swung pairs the sounding places would not fit the beat
            Offset at = segment.start().plus(segment.unit().times(done));
            int size = counts.counts().size() - done;
            if (!segment.isSpan()) {
                Beat beat = bar.timeline().beatAt(at);
                size = Math.min(size, Math.toIntExact(beat.end().minus(at).floorOver(segment.unit())));
            }
            group(counts.counts().subList(done, done + size), segment.unit());
            done += size;
        }
    }

    private void group(List<Count> counts, Duration unit) {
        Written written = GridNote.of(unit);
        if (written == null) {
            throw new ScoreException("bar " + bar.bar().called()
                    + ": a grid of " + unit + " of a whole note has no note value; use --as lyrics");
        }
        int size = counts.size();
        Ratio ratio = written.ratio();
        // six of 3:2 in one group are read more easily as 6:4
        if (size % ratio.actual() == 0) {
            int times = size / ratio.actual();
            ratio = new Ratio(ratio.actual() * times, ratio.normal() * times);
        }
        for (int i = 0; i < size; i++) {
            note(counts.get(i), unit, written, ratio, i == 0, i == size - 1);
        }
    }

    private void note(Count count, Duration unit, Written written, Ratio ratio, boolean first, boolean last) {
        for (ChangeMark mark : marks) {
            if (mark.at().equals(count.at())) {
                out.append("\n<direction placement=\"above\"><direction-type><words font-style=\"italic\">")
                        .append(MarkupText.text(mark.text(names))).append("</words></direction-type></direction>");
            }
        }
        out.append("\n<note><unpitched/><duration>").append(inDivisions(unit, divisions))
                .append("</duration><voice>1</voice><type").append(count.played() ? ">" : " size=\"cue\">")
                .append(written.value().xmlName()).append("</type>").append("<dot/>".repeat(written.dots()));
        boolean tuplet = !written.ratio().isPlain();
        if (tuplet) {
            out.append("<time-modification><actual-notes>").append(ratio.actual()).append("</actual-notes><normal-notes>")
                    .append(ratio.normal()).append("</normal-notes></time-modification>");
        }
        out.append("<stem>up</stem>");
        if (!count.played()) {
            out.append("<notehead parentheses=\"yes\">normal</notehead>");
        }
        if (!(first && last)) {
            String beam = first ? "begin" : last ? "end" : "continue";
            for (int level = 1; level <= Math.min(8, written.value().flags()); level++) {
                out.append("<beam number=\"").append(level).append("\">").append(beam).append("</beam>");
            }
        }
        if (tuplet && (first || last)) {
            out.append("<notations>").append(first ? "<tuplet type=\"start\"/>" : "")
                    .append(last ? "<tuplet type=\"stop\"/>" : "").append("</notations>");
        }
        String say = MarkupText.text(count.say());
        out.append("<lyric number=\"1\" name=\"count\"><syllabic>single</syllabic><text>")
                .append(count.played() ? say : "(" + say + ")").append("</text></lyric></note>");
    }

    static long inDivisions(Duration length, long divisions) {
        Proportion exact = length.over(Duration.QUARTER).times(divisions);
        if (!exact.isWhole()) {
            throw new IllegalStateException(length + " is not whole in " + divisions + " divisions");
        }
        return exact.numerator();
    }
}
