package countstave.practice;

import countstave.score.ScoreException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Spreads seams, passages and the whole part over days.
 *
 * <p>Each is met for the first time in this order: the seams of the hardest passage, that passage, the seams of the next
 * one …, the whole part; evenly over the days before the last two. Then it comes again: after one day, two, four … where
 * it belongs to the harder half, after one, three, nine … where it does not. Every seventh day is a rest, the last never.
 */
final class DayPlanner {

    private static final int REST_EVERY = 7;
    private static final int NOTHING_NEW = 2;
    /** Minutes for something new, less where time is short, and for something known. */
    private static final int NEW_SEAM = 4;
    private static final int NEW_PASSAGE = 6;
    private static final int OLD_SEAM = 2;
    private static final int OLD_PASSAGE = 4;
    /** So much of a day may be new, in percent; the rest is for what came before. */
    private static final int MOST_NEW = 70;
    /** So much of the last days is for the whole part, in percent. */
    private static final int WHOLE_AT_END = 30;

    private final DayOptions options;
    /** Numbers of the days on which there is practice, and how many of them may bring something new. */
    private final List<Integer> workdays = new ArrayList<>();
    private int freshDays;

    DayPlanner(DayOptions options) {
        this.options = options;
        for (int day = 1; day <= options.days(); day++) {
            if (day % REST_EVERY != 0 || day == options.days()) {
                workdays.add(day);
                freshDays += day <= options.days() - NOTHING_NEW ? 1 : 0;
            }
        }
    }

    /** Something to practise, and when it was. Days here are indexes of workdays. */
    private static final class Unit {
        final Seam seam;
        final Passage passage;
        final boolean hard;
        final int fresh;
        int first;
        int last = -1;
        int gap = 1;

        /** @param fresh minutes of the first time */
        Unit(Seam seam, Passage passage, boolean hard, int fresh) {
            this.seam = seam;
            this.passage = passage;
            this.hard = hard;
            this.fresh = fresh;
        }

        boolean isWhole() {
            return passage == null;
        }

        int again() {
            return seam != null ? OLD_SEAM : OLD_PASSAGE;
        }

        boolean isDue(int day) {
            return last >= 0 && day - last >= gap;
        }

        void done(int day) {
            gap = last < 0 ? 1 : gap * (hard ? 2 : 3);
            last = day;
        }

        DayPlan.Kind kind(int day) {
            if (isWhole()) {
                return DayPlan.Kind.WHOLE;
            }
            if (seam == null) {
                return first == day ? DayPlan.Kind.NEW_PASSAGE : DayPlan.Kind.PASSAGE;
            }
            return first == day ? DayPlan.Kind.NEW_SEAM
                    : first == day - 1 ? DayPlan.Kind.SEAM_OF_YESTERDAY : DayPlan.Kind.OLDER_SEAM;
        }
    }

    /** As many of the passages as there is time for, the hardest first. */
    DayPlan plan(List<Passage> passages) {
        for (int kept = passages.size(); kept > 0; kept--) {
            for (int less = 0; less < NEW_SEAM; less++) {
                List<Unit> units = units(passages.subList(0, kept), less);
                int share = less == NEW_SEAM - 1 && kept == 1 ? 100 : MOST_NEW;
                if (introduce(units, share)) {
                    return new DayPlan(options, days(units), List.copyOf(passages.subList(kept, passages.size())));
                }
            }
        }
        if (!passages.isEmpty()) {
            Passage first = passages.get(0);
            throw new ScoreException(options.days() + " days of " + options.minutes() + " minutes are not enough for bars "
                    + first.stretch().numbers() + " with " + first.seams().size()
                    + " places where the count changes; give more with --days or --minutes, or fewer bars with --bars");
        }
        List<Unit> whole = List.of(new Unit(null, null, true, NEW_PASSAGE));
        return new DayPlan(options, days(whole), List.of());
    }

    /**
     * Everything in the order in which it is met.
     *
     * @param less minutes that a seam gets less than usual, where the days are short; a passage as many
     */
    private static List<Unit> units(List<Passage> passages, int less) {
        double[] sums = passages.stream().flatMap(p -> p.seams().stream()).mapToDouble(s -> s.figures().sum()).sorted().toArray();
        double middle = sums.length == 0 ? 0 : sums[sums.length / 2];
        List<Unit> units = new ArrayList<>();
        for (int i = 0; i < passages.size(); i++) {
            Passage passage = passages.get(i);
            for (Seam seam : passage.seams()) {
                units.add(new Unit(seam, passage, seam.figures().sum() >= middle, NEW_SEAM - less));
            }
            units.add(new Unit(null, passage, 2 * i < passages.size(), NEW_PASSAGE - less));
        }
        units.add(new Unit(null, null, true, NEW_PASSAGE - less));
        return units;
    }

    /**
     * Says on which day each thing is met: evenly, a passage not on the day of its last seam where a day is left, the
     * whole part on the last of these days.
     *
     * @return whether no day gets more than a share of its minutes
     */
    private boolean introduce(List<Unit> units, int percent) {
        int total = units.stream().filter(unit -> !unit.isWhole()).mapToInt(unit -> unit.fresh).sum();
        int lastDay = freshDays - 1;
        int before = 0;
        int lastSeam = -1;
        int[] minutes = new int[freshDays];
        for (Unit unit : units) {
            int even = lastDay == 0 ? 0 : before * lastDay / Math.max(1, total);
            unit.first = unit.isWhole() ? lastDay : even;
            if (unit.seam != null) {
                lastSeam = unit.first;
            } else if (!unit.isWhole()) {
                unit.first = Math.min(lastDay, unit.passage.seams().isEmpty() ? even : Math.max(even, lastSeam + 1));
            }
            minutes[unit.first] += unit.fresh;
            before += unit.isWhole() ? 0 : unit.fresh;
        }
        for (int day : minutes) {
            if (day * 100 > percent * options.minutes()) {
                return false;
            }
        }
        return true;
    }

    private List<DayPlan.Day> days(List<Unit> units) {
        List<DayPlan.Day> days = new ArrayList<>();
        for (int number = 1; number <= options.days(); number++) {
            int workday = workdays.indexOf(number);
            days.add(new DayPlan.Day(number, options.start() == null ? null : options.start().plusDays(number - 1L),
                    workday < 0 ? List.of() : items(units, workday)));
        }
        return List.copyOf(days);
    }

    /** What is new, then what is due; where half the day is left, what was longest ago. All of the day's minutes. */
    private List<DayPlan.Item> items(List<Unit> units, int day) {
        List<Unit> today = new ArrayList<>();
        int left = options.minutes();
        for (Unit unit : units) {
            if (unit.first == day) {
                left -= unit.fresh;
                today.add(unit);
            }
        }
        boolean ending = day >= freshDays;
        List<Unit> again = new ArrayList<>(units.stream().filter(unit -> unit.last >= 0 && !today.contains(unit)).toList());
        again.sort(Comparator.comparing((Unit unit) -> !(ending && unit.isWhole()))
                .thenComparing(unit -> ending && unit.seam != null).thenComparing(unit -> !unit.isDue(day))
                .thenComparing(unit -> !unit.hard).thenComparing(unit -> unit.last));
        for (Unit unit : again) {
            boolean wanted = unit.isDue(day) || ending && unit.seam == null || 2 * left > options.minutes();
            if (wanted && left >= minutes(unit, ending)) {
                left -= minutes(unit, ending);
                today.add(unit);
            }
        }
        if (today.isEmpty()) {
            today.add(again.get(0));
        }
        List<DayPlan.Item> items = new ArrayList<>();
        int[] minutes = shares(today, day);
        for (int i = 0; i < today.size(); i++) {
            Unit unit = today.get(i);
            items.add(new DayPlan.Item(unit.kind(day), unit.seam, unit.passage, minutes[i]));
        }
        today.forEach(unit -> unit.done(day));
        items.sort(Comparator.comparing(DayPlan.Item::kind));
        return List.copyOf(items);
    }

    /** Minutes of something known; on the last days a good part of them belongs to the whole. */
    private int minutes(Unit unit, boolean ending) {
        return ending && unit.isWhole() ? Math.max(unit.again(), options.minutes() * WHOLE_AT_END / 100) : unit.again();
    }

    /** The minutes of each, in sum those of the day: what is left over goes to the new, of known things to the larger. */
    private int[] shares(List<Unit> today, int day) {
        int[] minutes = today.stream().mapToInt(unit -> unit.first == day ? unit.fresh : minutes(unit, day >= freshDays))
                .toArray();
        int left = options.minutes();
        for (int share : minutes) {
            left -= share;
        }
        List<Integer> takers = new ArrayList<>();
        for (int i = 0; i < today.size(); i++) {
            if (today.get(i).first == day || today.get(i).seam == null) {
                takers.add(i);
            }
        }
        for (int i = 0; takers.isEmpty() && i < today.size(); i++) {
            takers.add(i);
        }
        for (int i = 0; left > 0; i++, left--) {
            minutes[takers.get(i % takers.size())]++;
        }
        // a single thing that is known may last less than usual where the day is short
        if (left < 0) {
            minutes[0] += left;
        }
        return minutes;
    }
}
