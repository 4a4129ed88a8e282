package countstave.cli;

import countstave.CountedScore;
import countstave.batch.AlreadyThere;
import countstave.batch.NamedScore;
import countstave.batch.PartNames;
import countstave.batch.Targets;
import countstave.chart.ChartOptions;
import countstave.chart.ChartWriter;
import countstave.count.PartCounts;
import countstave.files.Console;
import countstave.files.SafeFile;
import countstave.score.ScoreException;
import countstave.score.Warning;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A set of parts: a chart of its own for each part of a score. */
final class PartCharts {

    private PartCharts() {
    }

    /**
     * Where each chart goes, by the part's id.
     *
     * @param place of the score's outputs, settled with {@link PartNames}
     * @return without those that are there and are let be
     * @throws AlreadyThere if all of them are
     * @throws ScoreException if one of them would replace a file that may not be replaced: then none is written
     */
    static Map<String, Path> places(CountedScore counted, Path place, OutputOptions options) {
        Map<String, Path> places = PartNames.places(place, counted.score().parts());
        boolean missing = false;
        for (PartCounts part : counted.parts()) {
            if (options.skipExisting && Files.exists(places.get(id(part)))) {
                places.remove(id(part));
            } else {
                SafeFile.checkFree(places.get(id(part)), options.force);
                missing = true;
            }
        }
        if (!missing) {
            throw new AlreadyThere();
        }
        return places;
    }

    /** Writes the charts, in the order of the parts. */
    static void write(CountedScore counted, NamedScore score, Map<String, Path> places, Targets targets, boolean force,
            ChartOptions options, Console console) {
        Map<String, List<String>> notes = new LinkedHashMap<>();
        for (PartCounts part : counted.parts()) {
            if (!places.containsKey(id(part))) {
                continue;
            }
            targets.write(places.get(id(part)), force, out -> {
                for (String note : ChartWriter.write(List.of(part), counted.score(), options, out)) {
                    notes.computeIfAbsent(note, none -> new ArrayList<>()).add(part.part().name());
                }
            }, console);
        }
        // what several parts have in common is told once
        notes.forEach((note, parts) -> score.warn(console, note.startsWith("part ") ? Warning.of(note)
                : new Warning(note + " (" + String.join(", ", parts) + ")", Warning.of(note).kind())));
    }

    private static String id(PartCounts part) {
        return part.part().id();
    }
}
