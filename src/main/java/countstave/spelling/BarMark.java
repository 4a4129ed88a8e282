package countstave.spelling;

import countstave.score.Bar;
import countstave.score.BeamMark;
import countstave.score.Event;
import countstave.score.Head;
import countstave.score.TupletMark;
import countstave.score.Voice;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * What a finding is known by from one state of a score to the next: its part, its rule, what stands in its bar, and the place
 * in it. Neither its line nor the bar's number is in it, so that bars put in before change nothing; what is no rhythm, such
 * as lyrics and dynamics, is not either.
 */
final class BarMark {

    /** Sixteen digits: of a million findings, two are alike by accident once in some forty million scores. */
    private static final int BYTES = 8;

    private BarMark() {
    }

    /** @param content of the bar, as {@link #content} says it */
    static String of(String part, String rule, String content, String voice, String at) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            String text = String.join("\n", part, rule, voice == null ? "" : voice, at, content);
            return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)), 0, BYTES);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** The rhythm and the pitches of a bar, and the signs that rules look at. */
    static String content(Bar bar) {
        StringBuilder text = new StringBuilder(bar.meter().toString());
        for (Voice voice : bar.voices()) {
            text.append("\nvoice ").append(voice.name());
            voice.events().forEach(event -> event(event, text));
        }
        return text.toString();
    }

    private static void event(Event event, StringBuilder text) {
        text.append('\n').append(event.start()).append(' ').append(event.length()).append(' ').append(event.nature().kind())
                .append(' ').append(event.nature().grace()).append(event.cue() ? " cue" : "")
                .append(event.barRest() ? " bar" : "").append(event.printed() ? "" : " hidden");
        if (event.written() != null) {
            text.append(' ').append(event.written().value()).append(' ').append(event.written().dots()).append(' ')
                    .append(event.written().ratio());
        }
        for (Head head : event.heads()) {
            text.append(' ').append(head.pitch().step()).append(head.pitch().octave()).append('/').append(head.pitch().alter())
                    .append(head.tieStop() ? ")" : "").append(head.tieStart() ? "(" : "");
        }
        for (BeamMark beam : event.look().beams()) {
            text.append(" beam ").append(beam.level()).append(beam.kind());
        }
        for (TupletMark mark : event.tupletMarks()) {
            text.append(mark.start() ? " [" : " ]").append(mark.shownRatio());
        }
    }
}
