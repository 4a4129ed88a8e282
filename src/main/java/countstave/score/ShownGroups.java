package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** What one bar shows of the groups of one component of its meter: by its beams, and by where its notes begin and end. */
final class ShownGroups {

    private final Meter.Component component;
    private final Bar bar;
    private final Offset start;
    private final Duration unit;

    /** @param start where the component begins in the bar */
    ShownGroups(Meter.Component component, Bar bar, Offset start) {
        this.component = component;
        this.bar = bar;
        this.start = start;
        this.unit = Duration.of(1, component.unit());
    }

    /** Sizes of the groups that the beams show, or null where they do not settle it. */
    List<Integer> byBeams() {
        for (Voice voice : bar.voices()) {
            List<Integer> groups = byBeams(voice);
            if (groups != null) {
                return groups;
            }
        }
        return null;
    }

    private List<Integer> byBeams(Voice voice) {
        TreeSet<Integer> edges = beamEdges(voice);
        if (edges == null || edges.isEmpty()) {
            return null;
        }
        edges.add(0);
        edges.add(component.sum());
        return sizes(edges);
    }

    /** Where primary beams begin and end, in units from the component's start; null where one does so between units. */
    private TreeSet<Integer> beamEdges(Voice voice) {
        TreeSet<Integer> edges = new TreeSet<>();
        for (Event event : voice.events()) {
            if (event.isGrace()) {
                continue;
            }
            for (BeamMark beam : event.look().beams()) {
                if (beam.level() != 1) {
                    continue;
                }
                Offset edge = switch (beam.kind()) {
                    case BEGIN -> event.start();
                    case END -> event.end();
                    default -> null;
                };
                if (edge == null) {
                    continue;
                }
                Proportion units = edge.minus(start).over(unit);
                if (!units.isWhole()) {
                    return null;
                }
                if (units.numerator() >= 0 && units.numerator() <= component.sum()) {
                    edges.add((int) units.numerator());
                }
            }
        }
        return edges;
    }

    private List<Integer> sizes(TreeSet<Integer> edges) {
        List<Integer> groups = new ArrayList<>();
        int last = edges.first();
        for (int edge : edges.tailSet(last, false)) {
            switch (edge - last) {
                case 2, 3 -> groups.add(edge - last);
                case 4 -> {
                    // four eighths under one beam are two groups, four 16ths are a quarter
                    if (component.unit() >= 16) {
                        groups.add(4);
                    } else {
                        groups.add(2);
                        groups.add(2);
                    }
                }
                // a group of one, or more than the beams tell apart
                default -> {
                    return null;
                }
            }
            last = edge;
        }
        return groups;
    }

    /** Whether every group that is not a three is beamed: no note or rest alone makes it look like one. */
    boolean areBeamed(List<Integer> groups) {
        for (Voice voice : bar.voices()) {
            if (groups.equals(byBeams(voice))) {
                int at = 0;
                boolean all = true;
                for (int size : groups) {
                    all &= size == 3 || isInBeam(voice, start.plus(unit.times(at)));
                    at += size;
                }
                return all;
            }
        }
        return false;
    }

    private static boolean isInBeam(Voice voice, Offset at) {
        for (Event event : voice.events()) {
            if (event.start().equals(at) && !event.isGrace() && !event.look().beams().isEmpty()) {
                return true;
            }
        }
        return false;
    }

    /** Whether every group but the first, which the barline shows, begins with a note, and no note sounds on into one. */
    boolean fits(List<Integer> groups) {
        int at = 0;
        for (int size : groups.subList(0, groups.size() - 1)) {
            at += size;
            if (!begins(start.plus(unit.times(at)))) {
                return false;
            }
        }
        return true;
    }

    private boolean begins(Offset at) {
        Offset end = start.plus(component.length());
        boolean attacked = false;
        for (Voice voice : bar.voices()) {
            for (Event event : voice.events()) {
                if (!event.isNote() || event.isGrace() || event.cue()) {
                    continue;
                }
                // a note through the whole of it shows nothing
                boolean through = !event.start().isAfter(start) && !event.end().isBefore(end);
                boolean tied = event.start().equals(at) && !event.isAttack();
                if (!through && (tied || event.start().isBefore(at) && event.end().isAfter(at))) {
                    return false;
                }
                attacked |= event.start().equals(at) && event.isAttack();
            }
        }
        return attacked;
    }
}
