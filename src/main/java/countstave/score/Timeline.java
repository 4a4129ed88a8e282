package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * From what is written to what happens in time: beats, attacks, tuplets, tempo and swing of every bar of a part, for the
 * voices that are counted.
 */
public final class Timeline {

    private final Part part;
    private final Selection selection;
    private final TimeOptions options;
    /** With the attacks as they are written, which is what repeat signs repeat. */
    private final List<BarTimeline> written = new ArrayList<>();

    private Timeline(Part part, Selection selection, TimeOptions options) {
        this.part = part;
        this.selection = selection;
        this.options = options;
    }

    /** The timeline of all bars of a part, swung where the score says so. */
    public static PartTimeline of(Part part, Selection selection, PulseChoice choice, Tempo fixedTempo) {
        return of(part, selection, new TimeOptions(choice, fixedTempo, null));
    }

    /** The timeline of all bars of a part. */
    public static PartTimeline of(Part part, Selection selection, TimeOptions options) {
        return new Timeline(part, selection, options).build();
    }

    private PartTimeline build() {
        Tempo first = options.tempo() != null ? options.tempo() : firstTempo();
        Tempo running = first == null ? Tempo.ASSUMED : first;
        Swing swing = options.swing() == null ? Swing.STRAIGHT : options.swing();
        List<List<List<Integer>>> groups = PartGroups.of(part);
        List<BarTimeline> bars = new ArrayList<>(part.bars().size());
        for (Bar bar : part.bars()) {
            List<TempoChange> tempi = tempi(bar, running);
            running = tempi.get(tempi.size() - 1).tempo();
            Pulse pulse = Pulse.of(bar, tempi.get(0).tempo(), options.beat(), groups.get(written.size()));
            written.add(timeline(bar, pulse, tempi));
            List<SwingChange> changes = options.swing() == null ? bar.markings().swings() : List.of();
            bars.add(SwungAttacks.of(written.get(written.size() - 1), swing, changes));
            swing = changes.isEmpty() ? swing : changes.get(changes.size() - 1).swing();
        }
        return new PartTimeline(part, List.copyOf(bars), first == null, selection.staves());
    }

    /** The first tempo of the part: it also holds for what stands before it, since nothing else does. */
    private Tempo firstTempo() {
        for (Bar bar : part.bars()) {
            if (!bar.markings().tempi().isEmpty()) {
                return bar.markings().tempi().get(0).tempo();
            }
        }
        return null;
    }

    private List<TempoChange> tempi(Bar bar, Tempo running) {
        List<TempoChange> tempi = new ArrayList<>();
        tempi.add(new TempoChange(Offset.ZERO, running));
        if (options.tempo() != null) {
            return tempi;
        }
        for (TempoChange change : bar.markings().tempi()) {
            if (change.at().equals(tempi.get(tempi.size() - 1).at())) {
                tempi.remove(tempi.size() - 1);
            }
            tempi.add(change);
        }
        return tempi;
    }

    private BarTimeline timeline(Bar bar, Pulse pulse, List<TempoChange> tempi) {
        TreeSet<Offset> attacks = new TreeSet<>();
        List<VoiceAttacks> lines = new ArrayList<>();
        boolean anyNote = false;
        for (Voice voice : bar.voices()) {
            TreeMap<Integer, TreeSet<Offset>> byStaff = new TreeMap<>();
            for (Event event : voice.events()) {
                if (!selection.takes(voice.name(), event.staff())) {
                    continue;
                }
                anyNote |= event.isNote();
                TreeSet<Offset> own = byStaff.computeIfAbsent(event.staff(), s -> new TreeSet<>());
                if (event.isAttack() && event.start().isWithin(Offset.ZERO, bar.end())) {
                    own.add(event.start());
                }
                if (event.isNote() && !event.cue() && event.heads().stream().anyMatch(h -> !h.silent())) {
                    // a tied-over note may still be struck again by its tremolo
                    own.addAll(event.repeats());
                }
            }
            for (Map.Entry<Integer, TreeSet<Offset>> staff : byStaff.entrySet()) {
                if (!staff.getValue().isEmpty()) {
                    lines.add(new VoiceAttacks(staff.getKey(), voice.name(), List.copyOf(staff.getValue())));
                    attacks.addAll(staff.getValue());
                }
            }
        }
        List<Tuplet> tuplets = bar.tuplets().stream().filter(t -> selection.takes(t.events().voice(), t.events().staff())).toList();
        BarTimeline own = new BarTimeline(bar, pulse.beats(), pulse.irregular(), List.copyOf(attacks),
                List.copyOf(lines), tuplets, tempi, null);
        return anyNote ? own : repeated(own);
    }

    /** A bar of repeat signs without notes of its own sounds as the bar (or beat) that it repeats. */
    private BarTimeline repeated(BarTimeline own) {
        BarStyle style = own.bar().look().style();
        int back = switch (style.kind()) {
            case MEASURE_REPEAT -> Math.max(1, style.span());
            case BEAT_REPEAT -> 1;
            default -> 0;
        };
        int source = written.size() - back;
        if (back == 0 || source < 0) {
            return own;
        }
        BarTimeline model = written.get(source);
        if (style.kind() == BarStyle.Kind.BEAT_REPEAT) {
            List<Offset> again = lastBeatAgain(model, own);
            return new BarTimeline(own.bar(), own.beats(), own.irregular(), again, oneLine(again), List.of(),
                    own.tempi(), null);
        }
        if (!model.bar().length().equals(own.bar().length())) {
            return own;
        }
        return new BarTimeline(own.bar(), own.beats(), own.irregular(), model.attacks(), model.lines(), model.tuplets(),
                own.tempi(), null);
    }

    private static List<VoiceAttacks> oneLine(List<Offset> attacks) {
        return attacks.isEmpty() ? List.of() : List.of(new VoiceAttacks(1, "1", attacks));
    }

    private static List<Offset> lastBeatAgain(BarTimeline model, BarTimeline own) {
        Beat last = model.beats().get(model.beats().size() - 1);
        List<Duration> pattern = model.attacks().stream().filter(a -> a.isWithin(last.start(), last.end()))
                .map(a -> a.minus(last.start())).toList();
        TreeSet<Offset> attacks = new TreeSet<>();
        for (Beat beat : own.beats()) {
            for (Duration after : pattern) {
                Offset at = beat.start().plus(after);
                if (at.isWithin(Offset.ZERO, own.bar().end()) && after.isShorterThan(beat.length())) {
                    attacks.add(at);
                }
            }
        }
        return List.copyOf(attacks);
    }
}
