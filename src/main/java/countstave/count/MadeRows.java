package countstave.count;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;

/** The rows of a system: those that its file gives, and for every other division what its filler or its rules make. */
final class MadeRows {

    private final SystemData data;
    // not computeIfAbsent: a row may be made of other rows
    private final Map<RowKey, Row> made = new ConcurrentHashMap<>();
    private final Map<Integer, Map<Integer, Row>> cutGroups = new ConcurrentHashMap<>();

    MadeRows(SystemData data) {
        this.data = data;
    }

    Row row(int parts, Feel feel) {
        if (parts < 1) {
            throw new IllegalArgumentException("a beat has at least one part, not " + parts);
        }
        Row given = given(parts, feel);
        if (given != null) {
            return given;
        }
        RowKey key = new RowKey(parts, feel);
        Row row = made.get(key);
        if (row == null) {
            row = beyond(parts, feel);
            made.put(key, row);
        }
        return row;
    }

    private Row given(int parts, Feel feel) {
        Row row = data.rows().get(new RowKey(parts, feel));
        return row != null ? row : data.rows().get(new RowKey(parts, null));
    }

    private Row beyond(int parts, Feel feel) {
        List<Row> coarser = data.isFilled(feel) ? KeptPlaces.divisors(parts, count -> row(count, feel)) : List.of();
        if (!coarser.isEmpty()) {
            return KeptPlaces.of(parts, coarser, data.fillers());
        }
        Row row = data.other(feel).row(parts, count -> given(count, feel));
        // a rule that fits nothing still has to say one word a part
        return row != null ? row : new Row.Filled(given(1, feel), parts, CountingSystem.NUMBERS);
    }

    Row groupRow(int units, int parts) {
        Row group = data.rows().get(new RowKey(units, Feel.ASYMMETRIC));
        if (group != null && parts == 1) {
            return group;
        }
        Row beat = row(Math.multiplyExact(units, parts), units % 3 == 0 ? Feel.COMPOUND : Feel.SIMPLE);
        boolean agrees = group == null
                || IntStream.range(0, units).allMatch(unit -> beat.word(unit * parts).equals(group.word(unit)));
        return agrees ? beat : cut(group, parts, cutGroups.computeIfAbsent(units, u -> new ConcurrentHashMap<>()));
    }

    /** A group's row with each unit cut further. */
    private Row cut(Row group, int parts, Map<Integer, Row> cuts) {
        Row row = cuts.get(parts);
        if (row == null) {
            row = newlyCut(group, parts, cuts);
            cuts.put(parts, row);
        }
        return row;
    }

    private Row newlyCut(Row group, int parts, Map<Integer, Row> cuts) {
        if (!data.isFilled(Feel.ASYMMETRIC)) {
            return new Row.Filled(group, parts, between());
        }
        List<Row> coarser = new ArrayList<>(KeptPlaces.divisors(parts, fewer -> cut(group, fewer, cuts)));
        coarser.add(group);
        return KeptPlaces.of(Math.multiplyExact(group.parts(), parts), coarser, data.fillers());
    }

    /** The word that the rules beyond the rows say first, for units that are cut further. */
    private String between() {
        return data.other(null) instanceof OtherRule.FirstOf several
                && several.rules().get(0) instanceof OtherRule.Inside inside ? inside.between() : CountingSystem.NUMBERS;
    }
}
