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
            String bar = words.number(listening.strokes().get(listening.strokes().size() - 1).planned().spot());
            lines.add(listening.repeats() == 1 ? names.phrase("listen.ends", bar)
                    : names.phrase("listen.ends.repeat", bar, names.phrases().ordinal(listening.repeats())));
        }
        lines.addAll(words.pauses());
        lines.add(words.whole());
        listening.runs().stream().filter(run -> !run.isEven()).forEach(run -> lines.add(words.run(run)));
        lines.addAll(words.even());
        lines.addAll(words.speeds());
        if (listening.tempo().told()) {
            lines.add(words.tempo());
        }
        lines.addAll(words.missed());
        return List.copyOf(lines);
    }

    /** The worst changes with what to give {@code practice}, in a sentence each. */
    public static List<String> seams(Listening listening, String score) {
        return listening.practised().stream().map(bars -> "countstave practice " + score + " --bars " + bars).toList();
    }

    private String played() {
        int bars = listening.pass().stretch().size() == 1 ? 1 : 2;
        return names.phrase("listen.played", names.phrase("bars", bars, listening.pass().stretch().numbers()), listening.repeats(),
                tempoOf(listening.tempo().mean()), String.valueOf(listening.heard()), String.valueOf(listening.strokes().size()),
                some("listen.played.missed", listening.missed()) + some("listen.played.extra", listening.extras().size())
                        + some("listen.played.unsure", listening.unsure()));
    }

    private String some(String key, int number) {
        return number == 0 ? "" : names.phrase(key, number);
    }

    /** Where the player stopped, and that this is not held against what follows. */
    private List<String> pauses() {
        List<Pause> pauses = listening.tempo().pauses();
        if (pauses.isEmpty()) {
            return List.of();
        }
        String each = some(pauses.stream().map(pause -> names.phrase("listen.pause.before", beats(Math.round(2 * pause.beats()) / 2.0),
                names.phrases().ordinal(pause.repeat() + 1))).toList());
        return List.of(names.phrase(listening.reference() == Reference.OWN_BEAT ? "listen.pause.own" : "listen.pause", each));
    }

    private String tempoOf(double speed) {
        Tempo plan = listening.pass().stretch().tempo();
        BigDecimal played = plan.perMinute().multiply(BigDecimal.valueOf(speed)).setScale(1, RoundingMode.HALF_UP);
        String shown = names.tempo(new Tempo(plan.unit(), played));
        return played.compareTo(plan.perMinute()) == 0 ? shown
                : names.phrase("listen.planned", shown, names.phrases().decimal(plan.perMinute().stripTrailingZeros()));
    }

    private String whole() {
        String spread = ms(listening.spread());
        String around = reference(listening.reference());
        if (listening.reference() == Reference.OWN_BEAT) {
            return names.phrase("listen.spread", spread, around);
        }
        double limit = Limits.of(listening.take().kind(), listening.pass().runs().get(0).beatSeconds().toDouble());
        if (Math.abs(listening.mean()) <= limit) {
            return names.phrase("listen.spread.on-it", spread, around);
        }
        return names.phrase(listening.mean() > 0 ? "listen.spread.late" : "listen.spread.early", spread, around, ms(listening.mean()));
    }

    private String reference(Reference reference) {
        return names.phrase(switch (reference) {
            case OWN_BEAT -> "listen.reference.own-beat";
            case CLICK -> "listen.reference.click";
            case FILE_BEAT -> "listen.reference.file-beat";
        });
    }

    /** {@code Bar 3, beat 2: the quintuplets start late by 18 ms and rush: 9 % too fast by the last.} */
    private String run(RunFigures figures) {
        List<String> parts = new ArrayList<>();
        if (figures.isStartOff()) {
            parts.add(names.phrase(figures.start() > 0 ? "listen.unit.late" : "listen.unit.early", ms(figures.start())) + unitShare(figures));
        }
        if (figures.pace() != 0) {
            boolean fast = figures.pace() > 0;
            parts.add(Math.abs(figures.lastPace()) > Math.abs(figures.pace())
                    ? names.phrase(fast ? "listen.unit.rush.last" : "listen.unit.drag.last", percent(figures.lastPace()))
                    : names.phrase(fast ? "listen.unit.rush" : "listen.unit.drag", percent(figures.pace())));
        }
        if (figures.uneven() != null) {
            parts.add(names.phrase(figures.uneven().late() > 0 ? "listen.unit.uneven.late" : "listen.unit.uneven.early",
                    place(figures.uneven().place()), ms(figures.uneven().late())));
        }
        return unit(figures, parts);
    }

    /** {@code Bar 3, beat 2: the quintuplets} and what is said of them. */
    String unit(RunFigures figures, List<String> parts) {
        int last = parts.size() - 1;
        String said = last == 0 ? parts.get(0) : names.phrase(last > 1 ? "listen.and.last" : "and",
                String.join(", ", parts.subList(0, last)), parts.get(last));
        return names.phrase("listen.unit", where(figures), name(figures), said);
    }

    private String name(RunFigures figures) {
        return figures.run().unit().name(names);
    }

    private String unitShare(RunFigures figures) {
        double share = Math.abs(figures.start()) / figures.run().unitSeconds().toDouble();
        return share < 0.01 ? "" : names.phrase("listen.unit.share", String.format(Locale.ROOT, "%.0f", WHOLE_PERCENT * share));
    }

    private String where(RunFigures figures) {
        return names.phrase(isInside(figures) ? "seam.inside-beat" : "seam.at-beat", number(figures.first().spot()), beat(figures));
    }

    private boolean isInside(RunFigures figures) {
        Spot spot = figures.first().spot();
        return !beatAt(spot).start().equals(spot.at());
    }

    private String beat(RunFigures figures) {
        return String.valueOf(beatAt(figures.first().spot()).number());
    }

    private Beat beatAt(Spot spot) {
        return listening.pass().stretch().timeline(spot.bar()).beatAt(spot.at());
    }

    private String number(Spot spot) {
        return listening.pass().stretch().timeline(spot.bar()).bar().number();
    }

    /** Of what was hardly heard, behind the end of a take above all, nothing good is told either. */
    private boolean isHeard(RunFigures figures) {
        long heard = listening.places().stream().filter(place -> !place.lates().isEmpty()
                && listening.pass().runs().get(place.planned().run()) == figures.run()).count();
        return 2 * heard > figures.strokes();
    }

    private List<String> even() {
        List<RunFigures> even = listening.runs().stream().filter(RunFigures::isEven).filter(this::isHeard).toList();
        if (even.isEmpty()) {
            return List.of();
        }
        if (even.size() == listening.runs().size()) {
            Place first = listening.places().get(0);
            return List.of(first.scatter() <= first.limit() ? names.phrase("listen.even.all")
                    : names.phrase(listening.repeats() == 1 ? "listen.scatter.once" : "listen.scatter", ms(first.scatter())));
        }
        List<String> each = new ArrayList<>();
        for (RunFigures figures : even) {
            each.add(names.phrase(isInside(figures) ? "listen.even.unit.inside" : "listen.even.unit", name(figures),
                    number(figures.first().spot()), beat(figures)));
        }
        return List.of(names.phrase("listen.even", String.join("; ", each)));
    }

    /** How soon the new speed is met, where it is not met at once. */
    private List<String> speeds() {
        List<String> lines = new ArrayList<>();
        for (RunFigures figures : listening.runs()) {
            boolean later = figures.uneven() != null && !figures.uneven().place().equals(figures.first());
            if (figures.pace() != 0 || figures.isEven() || later) {
                // that has been said, is no more than chance, or comes of one stroke that was named
                continue;
            }
            if (figures.met() < 0) {
                lines.add(names.phrase("listen.speed.never", where(figures), name(figures)));
            } else if (figures.met() >= 0.5) {
                lines.add(names.phrase("listen.speed.after", where(figures), name(figures), beats(figures.met())));
            }
        }
        return lines;
    }

    private String beats(double beats) {
        BigDecimal number = BigDecimal.valueOf(beats).setScale(1, RoundingMode.HALF_UP).stripTrailingZeros();
        return names.phrase("listen.beats", number.compareTo(BigDecimal.ONE) == 0 ? 1 : 2, names.phrases().decimal(number));
    }

    private String tempo() {
        if (!listening.tempo().isDrifting()) {
            return names.phrase("listen.tempo.steady");
        }
        double drift = listening.tempo().drift();
        return names.phrase(drift > 0 ? "listen.tempo.gains" : "listen.tempo.loses", percent(drift),
                tempoAlone(listening.tempo().atStart()), tempoAlone(listening.tempo().atEnd()));
    }

    private String tempoAlone(double speed) {
        BigDecimal plan = listening.pass().stretch().tempo().perMinute();
        return names.phrases().decimal(plan.multiply(BigDecimal.valueOf(speed)).setScale(1, RoundingMode.HALF_UP));
    }

    private List<String> missed() {
        List<String> lines = new ArrayList<>();
        List<String> places = new ArrayList<>();
        for (Place place : listening.places()) {
            if (place.missed() > 0) {
                String named = place(place.planned());
                places.add(listening.repeats() == 1 ? named : names.phrase("listen.missed.of", named, String.valueOf(place.missed()),
                        String.valueOf(listening.repeats())));
            }
        }
        if (!places.isEmpty()) {
            lines.add(names.phrase("listen.missed", some(places)));
        }
        if (!listening.extras().isEmpty()) {
            lines.add(names.phrase("listen.extra", some(listening.extras().stream().map(extra -> names.phrase("listen.extra.at",
                    place(extra.after()), names.phrases().decimal(extra.second(), 2))).toList())));
        }
        return lines;
    }

    private String some(List<String> all) {
        String first = String.join("; ", all.subList(0, Math.min(NAMED, all.size())));
        return all.size() <= NAMED ? first : names.phrase("listen.more", first, String.valueOf(all.size() - NAMED));
    }

    /** {@code bar 3, "trip" of beat 2}; a place that is felt has no word. */
    private String place(PlannedStroke stroke) {
        String beat = String.valueOf(beatAt(stroke.spot()).number());
        String bar = number(stroke.spot());
        if (stroke.word().isEmpty()) {
            return names.phrase("listen.place.felt", bar, beat);
        }
        return stroke.word().equals(beat) ? names.phrase("listen.place.beat", bar, beat)
                : names.phrase("listen.place.word", bar, stroke.word(), beat);
    }

    /** How a place is named, for writers. */
    public static ListenWords naming(Listening listening, NoteNames names) {
        return new ListenWords(listening, names);
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
