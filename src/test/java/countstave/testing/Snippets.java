package countstave.testing;

import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.Part;
import countstave.score.Score;
import countstave.time.Divisors;
import countstave.time.Duration;
import countstave.time.Offset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Small one-part scores for tests, as valid MusicXML 4.0: either from ready XML, {@link #score}, or from rhythms in the
 * notation of {@link Rhythm}, {@link #rhythm}.
 *
 * <p>Durations are exact: divisions are as fine as the rhythm needs, unless {@link Builder#divisions} says otherwise.
 */
public final class Snippets {

    private Snippets() {
    }

    /**
     * A score of one part from the contents of its measures.
     *
     * @param meter "4/4", "3+2+2/8"
     * @param divisions divisions of a quarter
     * @param bars XML of each measure, without the first attributes
     */
    public static String score(String meter, int divisions, String... bars) {
        StringBuilder xml = new StringBuilder(head("", "Drums"));
        for (int i = 0; i < bars.length; i++) {
            xml.append("    <measure number=\"").append(i + 1).append("\">\n");
            if (i == 0) {
                xml.append(attributes(meter, divisions, false));
            }
            xml.append(bars[i]).append("\n    </measure>\n");
        }
        return xml.append(TAIL).toString();
    }

    /** A score in the notation of {@link Rhythm}, one text a bar. */
    public static String rhythm(String meter, String... bars) {
        Builder builder = in(meter);
        for (String bar : bars) {
            builder.bar(bar);
        }
        return builder.xml();
    }

    /** A score in the notation of {@link Rhythm}, step by step. */
    public static Builder in(String meter) {
        return new Builder(meter);
    }

    /** The score that this XML holds. */
    public static Score read(String xml) {
        return ScoreReader.read(ScoreFile.of("snippet.musicxml", xml.getBytes(StandardCharsets.UTF_8)),
                ReadOptions.DEFAULT);
    }

    /** The first part of the score that this XML holds. */
    public static Part part(String xml) {
        return read(xml).parts().get(0);
    }

    /** @param above elements before the list of parts */
    private static String head(String above, String part) {
        return HEAD.replace("PART", part).replace("  <part-list>", above + "  <part-list>");
    }

    private static final String HEAD = """
            <?xml version="1.0" encoding="UTF-8"?>
            <!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" \
            "http://www.musicxml.org/dtds/partwise.dtd">
            <score-partwise version="4.0">
              <part-list>
                <score-part id="P1">
                  <part-name>PART</part-name>
                </score-part>
              </part-list>
              <part id="P1">
            """;
    private static final String TAIL = "  </part>\n</score-partwise>\n";

    private static String attributes(String meter, long divisions, boolean percussion) {
        StringBuilder xml = new StringBuilder("      <attributes>");
        if (divisions > 0) {
            xml.append("<divisions>").append(divisions).append("</divisions>");
        }
        if (meter != null) {
            xml.append("<time><beats>").append(meter, 0, meter.lastIndexOf('/')).append("</beats><beat-type>")
                    .append(meter.substring(meter.lastIndexOf('/') + 1)).append("</beat-type></time>");
        }
        if (percussion) {
            xml.append("<clef><sign>percussion</sign></clef>");
        }
        return xml.append("</attributes>\n").toString();
    }

    /** Builds a score bar by bar. */
    public static final class Builder {

        private record Measure(List<List<Rhythm.Item>> voices, String meter, String before) {
        }

        private final List<Measure> measures = new ArrayList<>();
        private String meter;
        private boolean meterChanged = true;
        private long divisions;
        private boolean percussion;
        private boolean oneDrum;
        private String before = "";
        private String above = "";
        private String name = "Drums";

        private Builder(String meter) {
            this.meter = meter;
        }

        /** Another meter from the next bar on. */
        public Builder meter(String next) {
            meter = next;
            meterChanged = true;
            return this;
        }

        /** Quarters a minute from the next bar on. */
        public Builder tempo(int quarters) {
            return before("      <direction placement=\"above\"><direction-type><metronome><beat-unit>quarter</beat-unit>"
                    + "<per-minute>" + quarters + "</per-minute></metronome></direction-type><sound tempo=\"" + quarters
                    + "\"/></direction>\n");
        }

        /** Quarters a minute from the next bar on, for playback only: no mark is printed. */
        public Builder playback(int quarters) {
            return before("      <sound tempo=\"" + quarters + "\"/>\n");
        }

        /** The title, and who wrote it. */
        public Builder title(String title, String composer) {
            above = "  <movement-title>" + title + "</movement-title>\n  <identification><creator type=\"composer\">" + composer
                    + "</creator></identification>\n";
            return this;
        }

        /** The name of the part. */
        public Builder part(String partName) {
            name = partName;
            return this;
        }

        /** Unpitched notes, all at the place of C5. */
        public Builder oneDrum() {
            oneDrum = true;
            return this;
        }

        /** Any XML before the first note of the next bar. */
        public Builder before(String xml) {
            before += xml;
            return this;
        }

        /** Rounds durations to this many divisions of a quarter, as exporters do: each note ends on a whole one. */
        public Builder divisions(int ofQuarter) {
            divisions = ofQuarter;
            return this;
        }

        /** Unpitched notes: the first voice a cymbal above the staff, the second a drum in it. */
        public Builder percussion() {
            percussion = true;
            return this;
        }

        /** A bar in the notation of {@link Rhythm}. */
        public Builder bar(String rhythm) {
            int mark = rhythm.indexOf('|');
            if (mark > 0) {
                before("      <direction placement=\"above\"><direction-type><rehearsal>" + rhythm.substring(0, mark)
                        + "</rehearsal></direction-type></direction>\n");
            }
            List<List<Rhythm.Item>> voices = new ArrayList<>();
            for (String voice : rhythm.substring(mark + 1).split("/")) {
                voices.add(Rhythm.parse(voice));
            }
            measures.add(new Measure(voices, meterChanged ? meter : null, before));
            before = "";
            meterChanged = false;
            return this;
        }

        /** The score as MusicXML. */
        public String xml() {
            long used = divisions > 0 ? divisions : exactDivisions();
            StringBuilder xml = new StringBuilder(head(above, name));
            String running = null;
            Set<Integer> held = new HashSet<>();
            for (int i = 0; i < measures.size(); i++) {
                Measure measure = measures.get(i);
                running = measure.meter() == null ? running : measure.meter();
                xml.append("    <measure number=\"").append(i + 1).append("\">\n");
                if (measure.meter() != null) {
                    xml.append(attributes(measure.meter(), i == 0 ? used : 0, i == 0 && percussion));
                }
                xml.append(measure.before());
                int voice = 1;
                long back = 0;
                for (List<Rhythm.Item> items : measure.voices()) {
                    if (back > 0) {
                        xml.append("      <backup><duration>").append(back).append("</duration></backup>\n");
                    }
                    back = new VoiceWriter(xml, used, pitch(voice), voice++, barLength(running)).write(items, held);
                }
                xml.append("    </measure>\n");
            }
            return xml.append(TAIL).toString();
        }

        private String pitch(int voice) {
            if (oneDrum) {
                return unpitched('C', 5);
            }
            return !percussion ? "<pitch><step>C</step><octave>5</octave></pitch>"
                    : voice == 1 ? unpitched('G', 5) : unpitched('F', 4);
        }

        private static String unpitched(char step, int octave) {
            return "<unpitched><display-step>" + step + "</display-step><display-octave>" + octave
                    + "</display-octave></unpitched>";
        }

        /** The score, read. */
        public Score score() {
            return read(xml());
        }

        /** Its only part, read. */
        public Part part() {
            return score().parts().get(0);
        }

        private long exactDivisions() {
            long divisions = 1;
            for (Measure measure : measures) {
                for (List<Rhythm.Item> items : measure.voices()) {
                    for (Rhythm.Item item : items) {
                        divisions = Divisors.lcm(divisions, item.length().times(4).denominator());
                    }
                }
            }
            // so that a bar rest is whole in any meter
            return divisions % 8 == 0 ? divisions : divisions * 8;
        }

        private static Duration barLength(String meter) {
            String[] terms = meter.substring(0, meter.lastIndexOf('/')).split("\\+");
            long sum = 0;
            for (String term : terms) {
                sum += Long.parseLong(term.strip());
            }
            return Duration.of(sum, Long.parseLong(meter.substring(meter.lastIndexOf('/') + 1)));
        }
    }

    /** Writes the notes of one voice of a bar. */
    private static final class VoiceWriter {

        private final StringBuilder xml;
        private final long divisions;
        private final String pitch;
        private final int voice;
        private final Duration barLength;

        VoiceWriter(StringBuilder xml, long divisions, String pitch, int voice, Duration barLength) {
            this.xml = xml;
            this.divisions = divisions;
            this.pitch = pitch;
            this.voice = voice;
            this.barLength = barLength;
        }

        /**
         * @param held voices whose last note is tied on, before and after
         * @return the sum of the durations written, in divisions
         */
        long write(List<Rhythm.Item> items, Set<Integer> held) {
            Offset exact = Offset.ZERO;
            long written = 0;
            boolean tied = held.remove(voice);
            for (Rhythm.Item item : items) {
                exact = exact.plus(item.barRest() ? barLength : item.length());
                long end = nearest(exact);
                note(item, end - written, tied && !item.rest());
                tied = item.tied() || tied && item.grace();
                written = end;
            }
            if (tied) {
                held.add(voice);
            }
            return written;
        }

        private long nearest(Offset at) {
            return at.sinceStart().over(Duration.QUARTER).times(divisions).nearest();
        }

        private void note(Rhythm.Item item, long duration, boolean tieStop) {
            xml.append("      <note>").append(item.grace() ? "<grace/>" : "");
            if (item.rest()) {
                xml.append(item.barRest() ? "<rest measure=\"yes\"/>" : "<rest/>");
            } else {
                xml.append(pitch);
            }
            if (!item.grace()) {
                xml.append("<duration>").append(duration).append("</duration>");
            }
            xml.append(tieStop ? "<tie type=\"stop\"/>" : "").append(item.tied() ? "<tie type=\"start\"/>" : "");
            xml.append("<voice>").append(voice).append("</voice>");
            if (!item.barRest()) {
                xml.append("<type>").append(item.written().value().xmlName()).append("</type>")
                        .append("<dot/>".repeat(item.written().dots()));
            }
            if (!item.written().ratio().isPlain()) {
                xml.append("<time-modification><actual-notes>").append(item.written().ratio().actual())
                        .append("</actual-notes><normal-notes>").append(item.written().ratio().normal())
                        .append("</normal-notes></time-modification>");
            }
            notations(item, tieStop);
            xml.append("</note>\n");
        }

        private void notations(Rhythm.Item item, boolean tieStop) {
            StringBuilder notations = new StringBuilder();
            notations.append(tieStop ? "<tied type=\"stop\"/>" : "").append(item.tied() ? "<tied type=\"start\"/>" : "");
            for (Rhythm.Group group : item.closes()) {
                notations.append("<tuplet type=\"stop\" number=\"").append(group.number()).append("\"/>");
            }
            for (Rhythm.Group group : item.opens()) {
                notations.append("<tuplet type=\"start\" number=\"").append(group.number()).append("\">");
                portion(notations, "tuplet-actual", group.ratio().actual(), group);
                portion(notations, "tuplet-normal", group.ratio().normal(), group);
                notations.append("</tuplet>");
            }
            notations.append(item.accent() ? "<articulations><accent/></articulations>" : "");
            if (!notations.isEmpty()) {
                xml.append("<notations>").append(notations).append("</notations>");
            }
        }

        private static void portion(StringBuilder out, String name, int number, Rhythm.Group group) {
            out.append('<').append(name).append("><tuplet-number>").append(number).append("</tuplet-number>");
            if (group.unit() != null) {
                out.append("<tuplet-type>").append(group.unit().xmlName()).append("</tuplet-type>");
            }
            out.append("</").append(name).append('>');
        }
    }
}
