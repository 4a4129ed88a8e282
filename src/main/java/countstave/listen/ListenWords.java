package countstave.listen;

import countstave.count.NoteNames;
import countstave.score.Beat;
import countstave.score.Tempo;
import countstave.time.Exact;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What is told of a take in sentences, the plainest first. The same in the text, on the page and in the data. */
public final class ListenWords {

    private static final int WHOLE_PERCENT = 100;
    /** More places than these are not named in a sentence; the table has them all. */
    private static final int NAMED = 8;

    private final Listening listening;
    private final NoteNames names;

    private ListenWords(Listening listening, NoteNames names) {
        this.listening = listening;
        this.names = names;
    }

    /** All sentences, in the order in which they are told. */
    public static List<String> of(Listening listening, NoteNames names) {
        ListenWords words = new ListenWords(listening, names);
        List<String> lines = new ArrayList<>();
        lines.add(words.played());
        if (listening.isCutShort()) {
            Stroke last = listening.strokes().get(listening.strokes().size() - 1);
            lines.add("It ends in bar " + words.number(last.planned().spot()) + (listening.repeats() == 1 ? "."
                    : ", the " + listening.repeats() + ". time through."));
        }
        lines.add(words.whole());
        listening.runs().stream().filter(run -> !run.isEven()).forEach(run -> lines.add(words.run(run)));
        lines.addAll(words.even());
        lines.addAll(words.speeds());
        lines.add(words.tempo());
        lines.addAll(words.missed());
        return List.copyOf(lines);
    }

    /** The worst changes with what to give {@code practice}, in a sentence each. */
    public static List<String> seams(Listening listening, String score) {
        return listening.worstSeams().stream().map(seam -> "countstave practice " + score + " --bars "
                + listening.practiceBars(seam)).distinct().toList();
    }

    private String played() {
        int repeats = listening.repeats();
        int planned = listening.strokes().size();
        return (listening.pass().stretch().size() == 1 ? "Bar " : "Bars ") + listening.pass().stretch().numbers() + ", " + (repeats == 1 ? "once" : repeats == 2 ? "twice" : repeats + " times")
                + " at " + tempoOf(listening.tempo().mean()) + ": " + listening.heard() + " of " + planned + " strokes heard"
                + (listening.missed() > 0 ? ", " + listening.missed() + " missed" : "")
                + (listening.extras().isEmpty() ? "" : ", " + listening.extras().size() + " extra")
                + (listening.unsure() > 0 ? ", " + listening.unsure() + " not told apart from their neighbours" : "") + ".";
    }

    private String tempoOf(double speed) {
        Tempo plan = listening.pass().stretch().tempo();
        BigDecimal played = plan.perMinute().multiply(BigDecimal.valueOf(speed)).setScale(1, RoundingMode.HALF_UP);
        return names.tempo(new Tempo(plan.unit(), played)) + (played.compareTo(plan.perMinute()) == 0 ? ""
                : " (planned: " + plan.perMinute().stripTrailingZeros().toPlainString() + ")");
    }

    private String whole() {
        String spread = "The strokes spread by " + ms(listening.spread()) + " around "
                + listening.reference().title();
        if (listening.reference() == Reference.OWN_BEAT) {
            return spread + ".";
        }
        double limit = Limits.of(listening.take().kind(), listening.pass().runs().get(0).beatSeconds().toDouble());
        return spread + (Math.abs(listening.mean()) <= limit ? " and are on it on the average."
                : "; on the average they are " + late(listening.mean()) + ".");
    }

    /** {@code Bar 3, beat 2: the quintuplets start late by 18 ms and rush: 9 % too fast by the last.} */
    private String run(RunFigures figures) {
        List<String> parts = new ArrayList<>();
        if (figures.isStartOff()) {
            parts.add("start " + (figures.start() > 0 ? "late" : "early") + " by " + ms(figures.start()) + unitShare(figures));
        }
        if (figures.pace() != 0) {
            boolean fast = figures.pace() > 0;
            String more = Math.abs(figures.lastPace()) > Math.abs(figures.pace()) ? " by the last" : "";
            double pace = more.isEmpty() ? figures.pace() : figures.lastPace();
            parts.add((fast ? "rush: " : "drag: ") + percent(pace) + " too " + (fast ? "fast" : "slow") + more);
        }
        if (figures.uneven() != null) {
            parts.add("are uneven: " + place(figures.uneven().place()) + " comes " + (figures.uneven().late() > 0 ? "late" : "early") + " by "
                    + ms(figures.uneven().late()) + " among them");
        }
        return where(figures) + ": the " + figures.run().unit().name(names) + " " + joined(parts) + ".";
    }

    private static String joined(List<String> parts) {
        int last = parts.size() - 1;
        return last == 0 ? parts.get(0) : String.join(", ", parts.subList(0, last)) + (last > 1 ? "," : "") + " and " + parts.get(last);
    }

    private String unitShare(RunFigures figures) {
        double share = Math.abs(figures.start()) / figures.run().unitSeconds().toDouble();
        return share < 0.01 ? "" : String.format(Locale.ROOT, " (%.0f %% of one of them)", WHOLE_PERCENT * share);
    }

    String where(RunFigures figures) {
        Spot spot = figures.first().spot();
        Beat beat = listening.pass().stretch().timeline(spot.bar()).beatAt(spot.at());
        return "Bar " + number(spot) + ", " + (beat.start().equals(spot.at()) ? "" : "inside ") + "beat " + beat.number();
    }

    private String number(Spot spot) {
        return listening.pass().stretch().timeline(spot.bar()).bar().number();
    }

    private List<String> even() {
        List<RunFigures> even = listening.runs().stream().filter(RunFigures::isEven).toList();
        if (even.isEmpty()) {
            return List.of();
        }
        if (even.size() == listening.runs().size()) {
            Place first = listening.places().get(0);
            return List.of(first.scatter() <= first.limit() ? "Everything is even, as far as an ear can tell."
                    : "Nothing stands out of the strokes' own scatter of " + ms(first.scatter()) + (listening.repeats() == 1
                            ? "; played through more often, more can be told." : "."));
        }
        List<String> each = new ArrayList<>();
        for (RunFigures figures : even) {
            each.add(figures.run().unit().name(names) + " from " + where(figures).replace("Bar", "bar"));
        }
        return List.of("Even: the " + String.join("; the ", each) + ".");
    }

    /** How soon the new speed is met, where it is not met at once. */
    private List<String> speeds() {
        List<String> lines = new ArrayList<>();
        for (RunFigures figures : listening.runs()) {
            if (figures.pace() != 0 || figures.isEven()) {
                // that has been said, or is no more than chance
                continue;
            }
            if (figures.met() < 0) {
                lines.add(where(figures) + ": the speed of the " + figures.run().unit().name(names) + " is not met before they end.");
            } else if (figures.met() >= 0.5) {
                lines.add(String.format(Locale.ROOT, "%s: the speed of the %s is met after %s.", where(figures),
                        figures.run().unit().name(names), beats(figures.met())));
            }
        }
        return lines;
    }

    private static String beats(double beats) {
        String number = BigDecimal.valueOf(beats).setScale(1, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString();
        return number + (number.equals("1") ? " beat" : " beats");
    }

    private String tempo() {
        double drift = listening.tempo().drift();
        if (!listening.tempo().isDrifting()) {
            return "The tempo is steady.";
        }
        String from = tempoAlone(listening.tempo().atStart());
        String to = tempoAlone(listening.tempo().atEnd());
        return "The tempo " + (drift > 0 ? "gains" : "loses") + " " + percent(drift) + " from start to end, from " + from + " to "
                + to + ".";
    }

    private String tempoAlone(double speed) {
        Tempo plan = listening.pass().stretch().tempo();
        return plan.perMinute().multiply(BigDecimal.valueOf(speed)).setScale(1, RoundingMode.HALF_UP).toPlainString();
    }

    private List<String> missed() {
        List<String> lines = new ArrayList<>();
        List<String> places = new ArrayList<>();
        for (Place place : listening.places()) {
            if (place.missed() > 0) {
                places.add(place(place.planned()) + (listening.repeats() > 1 ? " (" + place.missed() + " of " + listening.repeats()
                        + ")" : ""));
            }
        }
        if (!places.isEmpty()) {
            lines.add("Missed: " + some(places) + ".");
        }
        if (!listening.extras().isEmpty()) {
            List<String> extras = listening.extras().stream().map(e -> String.format(Locale.ROOT, "after %s at %.2f s",
                    place(e.after()), e.second())).toList();
            lines.add("Extra: " + some(extras) + ".");
        }
        return lines;
    }

    private static String some(List<String> all) {
        return all.size() <= NAMED ? String.join("; ", all)
                : String.join("; ", all.subList(0, NAMED)) + "; and " + (all.size() - NAMED) + " more";
    }

    /** {@code bar 3, "trip" of beat 2}; a place that is felt has no word. */
    public String place(PlannedStroke stroke) {
        int beat = listening.pass().stretch().timeline(stroke.spot().bar()).beatAt(stroke.spot().at()).number();
        String word = stroke.word();
        return "bar " + number(stroke.spot()) + (word.isEmpty() ? ", a felt note of beat " + beat
                : word.equals(String.valueOf(beat)) ? ", beat " + beat : ", \"" + word + "\" of beat " + beat);
    }

    /** How a place is named, for writers. */
    public static ListenWords naming(Listening listening, NoteNames names) {
        return new ListenWords(listening, names);
    }

    private static String late(double seconds) {
        return ms(seconds) + (seconds > 0 ? " late" : " early");
    }

    private static String ms(double seconds) {
        return Math.round(Math.abs(seconds) * 1000) + " ms";
    }

    private static String percent(double share) {
        return Math.round(Math.abs(share) * WHOLE_PERCENT) + " %";
    }

    /** A time in fractions of what is counted: {@code +1/12}, to the nearest of a few; empty where it is next to nothing. */
    public static String ofUnit(double late, Exact unitSeconds) {
        double share = late / unitSeconds.toDouble();
        return String.format(Locale.ROOT, "%+.0f %%", WHOLE_PERCENT * share);
    }
}
