package countstave.count;

import countstave.grid.BarPlan;
import countstave.grid.PartPlan;
import countstave.grid.PlanOptions;
import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.PartTimeline;
import countstave.score.Swung;
import countstave.score.VoiceAttacks;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Plans by hand over bars that were read, one text a bar: {@code "1/16..1/2 1/8"} counts in 16ths to the half bar, then
 * in eighths to its end; attacks between them are felt. {@code span:1/5} counts through a tuplet, {@code swung:1/8} says
 * pairs long–short.
 */
public final class HandPlans {

    private HandPlans() {
    }

    public static PartCounts counts(PartTimeline part, String... bars) {
        return Words.of(plan(part, bars), CountingSystem.named("numbers"));
    }

    /** @param bars one text for each bar of the part */
    public static PartPlan plan(PartTimeline part, String... bars) {
        List<BarPlan> plans = new ArrayList<>();
        Duration before = null;
        for (int i = 0; i < bars.length; i++) {
            BarTimeline bar = part.bars().get(i);
            List<Segment> segments = new ArrayList<>();
            for (String text : bars[i].split(" ")) {
                Offset start = segments.isEmpty() ? Offset.ZERO : segments.get(segments.size() - 1).end();
                Segment segment = segment(bar, start, text, before);
                segments.add(segment);
                before = segment.unit();
            }
            plans.add(new BarPlan(bar, List.copyOf(segments)));
        }
        return new PartPlan(part, List.copyOf(plans), 0, PlanOptions.DEFAULT);
    }

    private static Segment segment(BarTimeline bar, Offset start, String text, Duration before) {
        String kind = text.contains(":") ? text.substring(0, text.indexOf(':')) : "fill";
        String[] terms = text.substring(text.indexOf(':') + 1).split("\\.\\.");
        Duration unit = Duration.parse(terms[0]);
        Offset end = terms.length > 1 ? Offset.parse(terms[1]) : bar.bar().end();
        Swung swung = kind.equals("swung") ? bar.swung() : null;
        Segment bare = new Segment(start, end, unit, kind.equals("span") ? Segment.Kind.SPAN : Segment.Kind.FILL,
                !unit.equals(before), bar.tempoAt(start).rate(unit), List.of(), unit, swung);
        List<Offset> felt = new ArrayList<>();
        for (Offset attack : bar.attacks()) {
            if (attack.isWithin(start, end)) {
                felt.add(attack);
            }
        }
        for (int k = 0; k < bare.positions(); k++) {
            felt.remove(bare.position(k));
        }
        Duration grid = swung == null || felt.isEmpty() ? unit : unit.gcd(swung.second());
        for (Offset attack : felt) {
            grid = grid.gcd(attack.minus(start));
        }
        return new Segment(start, end, unit, bare.kind(), bare.change(), bare.rate(), List.copyOf(felt), grid, swung);
    }

    /** The same bars swung: what is written on the second of a pair of {@code unit}s, counted from the beat, sounds later. */
    public static PartTimeline swing(PartTimeline part, String unit, int longPart, int shortPart) {
        List<BarTimeline> bars = new ArrayList<>();
        for (BarTimeline bar : part.bars()) {
            Swung swung = new Swung(Duration.parse(unit), longPart, shortPart, bar.attacks());
            List<VoiceAttacks> lines = bar.lines().stream()
                    .map(line -> new VoiceAttacks(line.staff(), line.voice(), sounding(bar, swung, line.attacks()))).toList();
            bars.add(new BarTimeline(bar.bar(), bar.beats(), bar.irregular(), sounding(bar, swung, bar.attacks()), lines,
                    bar.tuplets(), bar.tempi(), swung));
        }
        return part.withBars(List.copyOf(bars));
    }

    private static List<Offset> sounding(BarTimeline bar, Swung swung, List<Offset> written) {
        TreeSet<Offset> sounding = new TreeSet<>();
        for (Offset at : written) {
            Beat beat = bar.beatAt(at);
            Duration pair = swung.unit().times(2);
            Offset start = beat.start().plus(pair.times(at.minus(beat.start()).floorOver(pair)));
            sounding.add(at.minus(start).equals(swung.unit()) ? start.plus(swung.second()) : at);
        }
        return List.copyOf(sounding);
    }
}
