package countstave.musicxml;

import countstave.score.Event;
import countstave.score.NoteValue;
import countstave.score.Remark;
import countstave.score.Written;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.List;
import java.util.Map;

/** What a bar's own notes contradict in each other, found when the bar is complete. */
final class BarChecks {

    private final RemarkList remarks;
    private final LengthReader lengths;

    BarChecks(RemarkList remarks, LengthReader lengths) {
        this.remarks = remarks;
        this.lengths = lengths;
    }

    void endBar(BarDraft bar) {
        for (Map.Entry<String, List<EventDraft>> voice : bar.drafts.entrySet()) {
            wholeBarRest(bar, voice.getValue());
            differing(bar, voice.getKey(), voice.getValue());
            overlaps(bar, voice.getKey(), voice.getValue());
        }
        rounded(bar);
    }

    /** A whole rest that stands alone is the sign for a bar of rest, however long the bar is. */
    private static void wholeBarRest(BarDraft bar, List<EventDraft> events) {
        EventDraft rest = events.get(0);
        if (events.size() > 1 || rest.kind != Event.Kind.REST || rest.barRest || rest.written == null
                || !rest.start.equals(Offset.ZERO)) {
            return;
        }
        boolean wholeSign = rest.written.value() == NoteValue.WHOLE && rest.written.dots() == 0
                && rest.written.ratio().isPlain();
        if (wholeSign && !bar.meter.isSenzaMisura() && bar.meter.length().equals(rest.length)) {
            rest.barRest = true;
            rest.differs = false;
            bar.barRest = rest.length;
            if (bar.drafts.size() == 1) {
                bar.hasContent = false;
            }
        }
    }

    private void differing(BarDraft bar, String voice, List<EventDraft> events) {
        Duration written = Duration.ZERO;
        boolean plainDiffers = false;
        boolean any = false;
        for (EventDraft event : events) {
            any |= event.differs;
            plainDiffers |= event.differs && event.written.ratio().isPlain();
            written = written.plus(event.written == null || event.grace != Event.Grace.NONE ? event.length
                    : event.written.length());
        }
        if (!any) {
            return;
        }
        boolean local = plainDiffers && !bar.meter.isSenzaMisura()
                && (written.isLongerThan(bar.meter.length()) || bar.filled.isAfter(Offset.at(bar.meter.length())));
        if (local) {
            remarks.addOnce(Remark.Kind.LOCAL_METER, bar, voice, firstDiffering(events).start,
                    "its notes are written in one meter and last in another; they are counted as they last");
        }
        for (EventDraft event : events) {
            if (event.differs && !(local && event.written.ratio().isPlain())) {
                remarks.add(Remark.Kind.VALUE_DIFFERS, bar, voice, event.start, "written as " + shown(event.written)
                        + ", which is " + event.written.length() + " of a whole note, but it lasts " + event.length);
            }
        }
    }

    private static EventDraft firstDiffering(List<EventDraft> events) {
        return events.stream().filter(e -> e.differs).findFirst().orElseThrow();
    }

    private static String shown(Written written) {
        String dots = written.dots() == 0 ? "" : written.dots() == 1 ? "dotted " : written.dots() + "-dotted ";
        return dots + written.value().xmlName() + (written.ratio().isPlain() ? "" : " in " + written.ratio());
    }

    private void overlaps(BarDraft bar, String voice, List<EventDraft> events) {
        // in the order of the file: a voice that is written in one run never goes back
        Offset end = Offset.ZERO;
        for (EventDraft event : events) {
            if (event.start.isBefore(end) && event.grace == Event.Grace.NONE && event.length.isPositive()) {
                remarks.addOnce(Remark.Kind.OVERLAP, bar, voice, event.start,
                        "voice " + Plain.shown(voice) + " overlaps itself");
            }
            Offset ownEnd = event.start.plus(event.length);
            end = ownEnd.isAfter(end) ? ownEnd : end;
        }
    }

    /** Names the divisions that would have done without rounding. */
    private void rounded(BarDraft bar) {
        EventDraft first = null;
        String voiceOfFirst = null;
        long needed = 1;
        for (Map.Entry<String, List<EventDraft>> voice : bar.drafts.entrySet()) {
            for (EventDraft event : voice.getValue()) {
                if (event.sounding == null || event.barRest || event.differs || event.length.equals(event.sounding)) {
                    continue;
                }
                if (first == null) {
                    first = event;
                    voiceOfFirst = voice.getKey();
                }
                long own = event.length.times(4).denominator();
                needed = needed < 1 || needed > 1_000_000_000L ? 0 : needed / gcd(needed, own) * own;
            }
        }
        if (first != null) {
            Duration whole = lengths.divisions();
            long exact = whole.denominator() != 1 || needed < 1 ? 0
                    : whole.numerator() / gcd(whole.numerator(), needed) * needed;
            remarks.add(Remark.Kind.ROUNDED, bar, voiceOfFirst, first.start, "durations are rounded"
                    + (exact < 1 || exact > Integer.MAX_VALUE ? "" : "; " + exact + " divisions of a quarter would be exact"));
        }
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }
}
