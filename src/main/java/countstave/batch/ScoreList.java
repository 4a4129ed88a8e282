package countstave.batch;

import countstave.score.ScoreException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.PatternSyntaxException;

/**
 * The scores of a run, in the order in which they were named; each file once.
 *
 * @param many whether more than one score was named, or a folder or pattern, however many scores that stands for
 */
public record ScoreList(List<NamedScore> scores, boolean many) {

    /**
     * Files, folders, and patterns that the shell has not resolved. What cannot be found is a score with a problem, so
     * that it does not stop the others.
     *
     * @throws ScoreException if standard input is named among others
     */
    public static ScoreList of(List<String> names) {
        if (names.size() == 1 && isFile(names.get(0))) {
            return new ScoreList(List.of(NamedScore.named(names.get(0))), false);
        }
        List<NamedScore> all = new ArrayList<>();
        boolean many = names.size() > 1;
        for (String name : names) {
            many |= add(name, all);
        }
        List<NamedScore> scores = new ArrayList<>();
        Set<Path> seen = new HashSet<>();
        for (NamedScore score : all) {
            if (score.isStandardInput() && names.size() > 1) {
                throw new ScoreException("standard input holds one score: name no other beside -");
            }
            if (score.path() == null || seen.add(score.path().toAbsolutePath().normalize())) {
                scores.add(score);
            }
        }
        return new ScoreList(List.copyOf(scores), many);
    }

    private static boolean isFile(String name) {
        return name.equals(Inputs.STANDARD_INPUT) || Files.isRegularFile(Inputs.path(name));
    }

    /** @return whether the name stands for any number of scores */
    private static boolean add(String name, List<NamedScore> into) {
        try {
            Path path = name.equals(Inputs.STANDARD_INPUT) ? null : Inputs.path(name);
            if (path != null && Files.isDirectory(path)) {
                int before = into.size();
                ScoreFolder.scores(path, path, into);
                if (into.size() == before) {
                    into.add(NamedScore.nothing(name, "there is no .musicxml, .mxl or .xml file in this folder"));
                }
                return true;
            }
            if (path != null && !Files.exists(path) && NamePattern.isPattern(name)) {
                List<NamedScore> scores = NamePattern.of(name).scores();
                into.addAll(scores);
                if (scores.isEmpty()) {
                    into.add(NamedScore.nothing(name, "no score has a name like this; check the pattern"));
                }
                return true;
            }
            into.add(NamedScore.named(name));
        } catch (PatternSyntaxException e) {
            into.add(NamedScore.nothing(name, "this pattern of names cannot be read (" + e.getDescription()
                    + "); close every [ and {"));
        } catch (IOException e) {
            into.add(NamedScore.nothing(name, ScoreFolder.NO_LIST));
        }
        return false;
    }
}
