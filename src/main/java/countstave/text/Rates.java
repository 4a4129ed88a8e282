package countstave.text;

import countstave.grid.BarPlan;
import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.score.Tempo;
import countstave.score.VoiceAttacks;
import countstave.time.Offset;
import java.util.List;

/** How fast a bar is said, and how fast it is played: with felt notes, and with words that no note stands on, two things. */
final class Rates {

    private final BarPlan plan;
    private final BarTimeline bar;

    Rates(BarPlan plan) {
        this.plan = plan;
        this.bar = plan.timeline();
    }

    /** {@code said 4.7, played up to 9.3 a second}. */
    String text(TextOptions options) {
        boolean uneven = plan.segments().size() > 1;
        double said = 0;
        for (Segment segment : plan.segments()) {
            uneven |= segment.isSwung();
            said = Math.max(said, said(segment));
        }
        String speech = options.phrase(uneven ? "rates.said.up-to" : "rates.said", options.names().phrases().decimal(said, 1));
        return switch (bar.attacks().size()) {
            case 0 -> options.phrase("rates.nothing-played", speech);
            case 1 -> options.phrase("rates.one-note-played", speech);
            default -> options.phrase("rates.played", speech, options.names().phrases().decimal(played(), 1));
        };
    }

    /** Words a second; of swung pairs from the short one to the next long one. */
    private double said(Segment segment) {
        if (!segment.isSwung()) {
            return segment.rate();
        }
        return bar.tempoAt(segment.start()).rate(segment.unit().times(2).minus(segment.swung().second()));
    }

    /** Notes a second where they follow each other most closely in one voice: two voices are not one hand. */
    private double played() {
        double fastest = 0;
        for (VoiceAttacks voice : bar.lines()) {
            fastest = Math.max(fastest, fastest(voice.attacks()));
        }
        // a note in each of several voices: only together do they follow each other
        return fastest > 0 ? fastest : fastest(bar.attacks());
    }

    private double fastest(List<Offset> attacks) {
        double fastest = 0;
        for (int i = 1; i < attacks.size(); i++) {
            Tempo tempo = bar.tempoAt(attacks.get(i - 1));
            fastest = Math.max(fastest, tempo.rate(attacks.get(i).minus(attacks.get(i - 1))));
        }
        return fastest;
    }
}
