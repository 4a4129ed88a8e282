package countstave.spelling.rules;

import countstave.plain.Phrases;
import countstave.score.BeamMark;
import countstave.score.Event;
import countstave.score.NoteValue;
import countstave.score.Voice;
import countstave.spelling.About;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.PartView;
import countstave.spelling.RuleInfo;
import countstave.spelling.Sentence;
import countstave.spelling.Severity;
import countstave.spelling.respell.ValueWords;
import java.util.Map;
import java.util.TreeMap;

/** {@code beam-unmatched}. */
final class BeamUnmatched extends BaseRule {

    private static final int MOST_BEAMS = 8;

    BeamUnmatched() {
        super(new RuleInfo("beam-unmatched", About.FILE, Severity.ERROR,
                "A beam begins and does not end, or ends and did not begin.",
                "Programs draw such a beam to the wrong note or not at all, and the grouping is lost.",
                "Beam these notes anew, or export the score again.",
                "four eighths: begin, continue, continue, and nothing on the fourth",
                "a beam that begins before the barline and ends after it",
                Sources.MUSICXML + ", element beam"));
    }

    @Override
    public void check(PartView part, Findings findings) {
        Map<String, Beams> beams = new TreeMap<>();
        for (BarView bar : part.bars()) {
            for (Voice voice : bar.bar().voices()) {
                beams.computeIfAbsent(voice.name(), name -> new Beams(name, findings)).bar(bar, voice);
            }
        }
        beams.values().forEach(Beams::end);
    }

    /** The beams of one voice that are open at the moment, level by level. */
    private static final class Beams {

        private record Begin(BarView bar, Event event) {
        }

        private final String voice;
        private final Findings findings;
        private final Map<Integer, Begin> open = new TreeMap<>();
        private BarView told;

        Beams(String voice, Findings findings) {
            this.voice = voice;
            this.findings = findings;
        }

        void bar(BarView bar, Voice written) {
            for (Event event : written.events()) {
                // a rest may lie under a beam without saying so
                boolean speaks = event.isNote() || !event.look().beams().isEmpty();
                if (!event.isGrace() && speaks) {
                    for (int level = 1; level <= MOST_BEAMS; level++) {
                        event(bar, event, level);
                    }
                }
            }
        }

        private void event(BarView bar, Event event, int level) {
            BeamMark.Kind kind = BeamRun.kind(event, level);
            boolean goesOn = kind == BeamMark.Kind.CONTINUE || kind == BeamMark.Kind.END;
            if (open.containsKey(level) && !goesOn) {
                neverEnds(level);
            } else if (!open.containsKey(level) && goesOn) {
                String key = kind == BeamMark.Kind.END ? "found.beam.ends" : "found.beam.goes-on";
                tell(bar, event, p -> p.text(key, name(level, p)));
            }
            if (kind == BeamMark.Kind.BEGIN) {
                open.put(level, new Begin(bar, event));
            } else if (kind == BeamMark.Kind.END) {
                open.remove(level);
            }
        }

        private void neverEnds(int level) {
            Begin begin = open.remove(level);
            tell(begin.bar, begin.event, p -> p.text("found.beam.begins", name(level, p)));
        }

        void end() {
            for (int level = 1; level <= MOST_BEAMS; level++) {
                if (open.containsKey(level)) {
                    neverEnds(level);
                }
            }
        }

        /** Once a bar: the rest usually follows from the first. */
        private void tell(BarView bar, Event event, Sentence sentence) {
            if (told != bar) {
                findings.add(bar, voice, event, sentence, null);
            }
            told = bar;
        }

        private static String name(int level, Phrases phrases) {
            if (level == 1) {
                return phrases.text("found.beam");
            }
            NoteValue value = NoteValue.EIGHTH;
            for (NoteValue each : NoteValue.values()) {
                value = each.flags() == level ? each : value;
            }
            return phrases.text("found.beam.of", ValueWords.plural(value, phrases));
        }
    }
}
