package countstave.chart.engrave;

import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.BarTimeline;
import countstave.score.NoteValue;
import countstave.score.PulseChoice;
import countstave.score.Selection;
import countstave.score.Timeline;
import countstave.time.Duration;
import countstave.time.Ratio;
import java.nio.charset.StandardCharsets;

/**
 * One bar with pitches, for tests of the notation, by way of MusicXML: {@code "G5:8 x/A5+C5:8 (C5):16 r:4 B4~:4"}.
 *
 * <p>A token is {@code [head/]pitch[+pitch]:value}, with dots after the value, {@code r} for a rest, {@code R} for a
 * rest of the whole bar, parentheses for a ghost note, {@code #}, {@code b} or {@code n} after the letter for an
 * accidental, {@code ~} after the pitch for a tie, {@code g} before the value for a grace note, {@code >} at the end
 * for an accent; {@code 3:2{ … }} is a tuplet; {@code |} divides voices.
 */
final class Notes {

    private static final int DIVISIONS = 720720;

    private String clef = "<sign>G</sign><line>2</line>";
    private String meter = "<beats>4</beats><beat-type>4</beat-type>";
    private String details = "";
    private int fifths;

    static Notes treble() {
        return new Notes();
    }

    static Notes drums() {
        return new Notes().clef("percussion", 2);
    }

    Notes clef(String sign, int line) {
        clef = "<sign>" + sign + "</sign><line>" + line + "</line>";
        return this;
    }

    Notes meter(String beats, int unit) {
        meter = "<beats>" + beats + "</beats><beat-type>" + unit + "</beat-type>";
        return this;
    }

    Notes lines(int lines) {
        details = "<staff-details><staff-lines>" + lines + "</staff-lines></staff-details>";
        return this;
    }

    Notes key(int newFifths) {
        fifths = newFifths;
        return this;
    }

    BarTimeline bar(String voices) {
        StringBuilder xml = new StringBuilder("<?xml version=\"1.0\"?><score-partwise version=\"4.0\"><part-list>"
                + "<score-part id=\"P1\"><part-name>Test</part-name></score-part></part-list><part id=\"P1\">"
                + "<measure number=\"1\"><attributes><divisions>" + DIVISIONS + "</divisions><key><fifths>" + fifths
                + "</fifths></key><time>" + meter + "</time><clef>" + clef + "</clef>" + details + "</attributes>");
        Duration filled = Duration.ZERO;
        int number = 1;
        for (String voice : voices.split("\\|")) {
            if (number > 1) {
                xml.append("<backup><duration>").append(divisions(filled)).append("</duration></backup>");
            }
            filled = new VoiceWriter(xml, number++, clef.contains("percussion")).write(voice);
        }
        xml.append("</measure></part></score-partwise>");
        ScoreFile file = ScoreFile.of("test.musicxml", xml.toString().getBytes(StandardCharsets.UTF_8));
        return Timeline.of(ScoreReader.read(file, ReadOptions.DEFAULT).parts().get(0), Selection.ALL,
                PulseChoice.BY_METER, null).bars().get(0);
    }

    private static long divisions(Duration length) {
        return length.times(4L * DIVISIONS).numerator();
    }

    private static final class VoiceWriter {

        private final StringBuilder xml;
        private final int voice;
        private final boolean unpitched;
        private Duration filled = Duration.ZERO;
        private String[] tokens;
        private int next;
        private String opening = "";
        private boolean tied;

        VoiceWriter(StringBuilder xml, int voice, boolean unpitched) {
            this.xml = xml;
            this.voice = voice;
            this.unpitched = unpitched;
        }

        Duration write(String text) {
            tokens = text.replace("{", " { ").replace("}", " } ").strip().split("\\s+");
            while (next < tokens.length) {
                read(Ratio.ONE, 1);
            }
            return filled;
        }

        private void read(Ratio ratio, int depth) {
            String token = tokens[next++];
            if (next < tokens.length && tokens[next].equals("{")) {
                next++;
                String[] terms = token.split(":");
                opening += "<tuplet type=\"start\" number=\"" + depth + "\"><tuplet-actual><tuplet-number>" + terms[0]
                        + "</tuplet-number></tuplet-actual><tuplet-normal><tuplet-number>" + terms[1]
                        + "</tuplet-number></tuplet-normal></tuplet>";
                Ratio own = new Ratio(Integer.parseInt(terms[0]), Integer.parseInt(terms[1]));
                while (!tokens[next].equals("}")) {
                    read(ratio.times(own), depth + 1);
                }
                next++;
                int end = xml.lastIndexOf("</notations>");
                xml.insert(end, "<tuplet type=\"stop\" number=\"" + depth + "\"/>");
            } else {
                note(token, ratio);
            }
        }

        private void note(String token, Ratio ratio) {
            boolean accent = token.endsWith(">");
            String[] halves = token.replace(">", "").split(":");
            boolean grace = halves[1].startsWith("g");
            String value = halves[1].replace("g", "");
            int dots = value.length() - value.replace(".", "").length();
            NoteValue type = NoteValue.ofLength(Duration.of(1, Integer.parseInt(value.replace(".", ""))));
            Duration length = ratio.applyTo(type.dotted(dots));
            String what = halves[0];
            boolean ties = what.contains("~");
            String head = what.contains("/") ? what.substring(0, what.indexOf('/')) : null;
            String[] pitches = what.substring(what.indexOf('/') + 1).replace("~", "").split("\\+");
            for (int i = 0; i < pitches.length; i++) {
                xml.append("<note>").append(grace ? "<grace/>" : "").append(i > 0 ? "<chord/>" : "");
                pitch(pitches[i]);
                xml.append(grace ? "" : "<duration>" + divisions(length) + "</duration>");
                xml.append(tied ? "<tie type=\"stop\"/>" : "").append(ties ? "<tie type=\"start\"/>" : "");
                xml.append("<voice>").append(voice).append("</voice>");
                xml.append(pitches[i].equals("R") ? "" : "<type>" + type.xmlName() + "</type>" + "<dot/>".repeat(dots));
                accidental(pitches[i]);
                if (!ratio.isPlain()) {
                    xml.append("<time-modification><actual-notes>").append(ratio.actual()).append("</actual-notes>"
                            + "<normal-notes>").append(ratio.normal()).append("</normal-notes></time-modification>");
                }
                if (pitches[i].startsWith("(")) {
                    xml.append("<notehead parentheses=\"yes\">").append(head == null ? "normal" : head)
                            .append("</notehead>");
                } else if (head != null) {
                    xml.append("<notehead>").append(head).append("</notehead>");
                }
                xml.append("<notations>").append(i == 0 ? opening : "")
                        .append(accent ? "<articulations><accent/></articulations>" : "").append("</notations></note>");
            }
            opening = "";
            tied = ties;
            filled = grace ? filled : filled.plus(length);
        }

        private void pitch(String pitch) {
            String plain = pitch.replaceAll("[()#bn]", "");
            if (plain.equalsIgnoreCase("r")) {
                xml.append(plain.equals("R") ? "<rest measure=\"yes\"/>" : "<rest/>");
                return;
            }
            char step = plain.charAt(0);
            char octave = plain.charAt(1);
            if (unpitched) {
                xml.append("<unpitched><display-step>").append(step).append("</display-step><display-octave>")
                        .append(octave).append("</display-octave></unpitched>");
            } else {
                int alter = pitch.contains("#") ? 1 : pitch.contains("b") ? -1 : 0;
                xml.append("<pitch><step>").append(step).append("</step><alter>").append(alter)
                        .append("</alter><octave>").append(octave).append("</octave></pitch>");
            }
        }

        private void accidental(String pitch) {
            String name = pitch.contains("#") ? "sharp" : pitch.contains("b") ? "flat" : pitch.contains("n") ? "natural"
                    : null;
            if (name != null) {
                xml.append("<accidental>").append(name).append("</accidental>");
            }
        }
    }
}
