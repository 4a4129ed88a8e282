package countstave.musicxml;

import countstave.score.NoteSpan;
import java.util.List;
import org.audiveris.proxymusic.AccidentalMark;
import org.audiveris.proxymusic.Glissando;
import org.audiveris.proxymusic.HammerOnPullOff;
import org.audiveris.proxymusic.LineType;
import org.audiveris.proxymusic.Slide;
import org.audiveris.proxymusic.StartStop;
import org.audiveris.proxymusic.StartStopContinue;
import org.audiveris.proxymusic.WavyLine;

/** Signs that lead from one note to another, beside slurs. */
final class SpanReader {

    private SpanReader() {
    }

    /** A glissando (wavy unless the file says otherwise: MusicXML 4.0) or a slide (straight); null for anything else. */
    static NoteSpan line(Object notation) {
        if (notation instanceof Glissando line) {
            boolean straight = line.getLineType() != null && line.getLineType() != LineType.WAVY;
            return span(straight ? NoteSpan.Kind.SLIDE : NoteSpan.Kind.GLISSANDO, line.getNumber(), line.getType(), line.getValue());
        }
        if (notation instanceof Slide line) {
            return span(line.getLineType() == LineType.WAVY ? NoteSpan.Kind.GLISSANDO : NoteSpan.Kind.SLIDE, line.getNumber(), line.getType(),
                    line.getValue());
        }
        return null;
    }

    static NoteSpan hammer(String element, HammerOnPullOff sign) {
        NoteSpan.Kind kind = element.equals("pull-off") ? NoteSpan.Kind.PULL_OFF : NoteSpan.Kind.HAMMER_ON;
        String text = Plain.line(sign.getValue());
        return span(kind, sign.getNumber(), sign.getType(), text.isEmpty() ? kind == NoteSpan.Kind.PULL_OFF ? "P" : "H" : text);
    }

    private static NoteSpan span(NoteSpan.Kind kind, Integer number, StartStop type, String text) {
        return new NoteSpan(kind, number == null ? 1 : number, type != StartStop.STOP, null, Plain.line(text));
    }

    /** The line behind a trill; one that begins and ends at a note is a sign of that note. */
    static void trill(WavyLine line, List<NoteSpan> spans, List<String> signs) {
        if (line.getType() != StartStopContinue.START && line.getType() != StartStopContinue.STOP) {
            return;
        }
        int number = line.getNumber() == null ? 1 : line.getNumber();
        boolean stop = line.getType() == StartStopContinue.STOP;
        if (stop && spans.removeIf(s -> s.kind() == NoteSpan.Kind.TRILL && s.start() && s.number() == number)) {
            signs.add("wavy-line");
        } else {
            spans.add(new NoteSpan(NoteSpan.Kind.TRILL, number, !stop, NotationReader.placement(line.getPlacement()), ""));
        }
    }

    /** {@code accidental-mark flat}. */
    static String accidental(AccidentalMark mark) {
        return "accidental-mark" + (mark.getValue() == null ? "" : " " + mark.getValue().value());
    }
}
