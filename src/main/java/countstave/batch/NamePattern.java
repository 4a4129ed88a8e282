package countstave.batch;

import countstave.files.Console;
import countstave.files.FileNames;
import countstave.score.ScoreException;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.PatternSyntaxException;

/**
 * A pattern of file names that the shell has left to us: {@code *} and {@code ?} stand for signs of one name, {@code [..]}
 * and {@code {..,..}} for choices, {@code **} for any number of folders, none included.
 */
final class NamePattern {

    private static final String SIGNS = "*?[{";
    private static final String ANY_FOLDERS = "**";

    private final Path base;
    private final List<String> steps;

    private NamePattern(Path base, List<String> steps) {
        this.base = base;
        this.steps = steps;
    }

    static boolean isPattern(String name) {
        return name.chars().anyMatch(c -> SIGNS.indexOf(c) >= 0);
    }

    /**
     * @throws PatternSyntaxException or {@link InvalidPathException} if it cannot be read
     * @throws ScoreException if the locale has no letters for it
     */
    static NamePattern of(String name) {
        String[] all = File.separatorChar == '/' ? name.split("/+") : name.split("[/\\\\]+");
        StringBuilder plain = new StringBuilder();
        int first = 0;
        while (!isPattern(all[first])) {
            plain.append(all[first++]).append(File.separatorChar);
        }
        Path base = FileNames.path(plain.toString());
        List<String> steps = new ArrayList<>();
        for (String step : List.of(all).subList(first, all.length)) {
            matcher(base, step);
            requireSayable(step);
            // any number of folders twice is still any number, but would be looked for in all its ways
            if (steps.isEmpty() || !step.equals(ANY_FOLDERS) || !steps.get(steps.size() - 1).equals(ANY_FOLDERS)) {
                steps.add(step);
            }
        }
        return new NamePattern(base, steps);
    }

    /** Where a locale has no letters but ASCII's, a name's others cannot be compared. */
    private static void requireSayable(String step) {
        try {
            Path.of(step.replaceAll("[*?]", "_"));
        } catch (InvalidPathException e) {
            throw new ScoreException(Console.clean(step) + ": a pattern with other letters than a to z needs a locale that has them: set LC_ALL to one"
                    + " such as C.UTF-8, or name the files one by one", e);
        }
    }

    private static PathMatcher matcher(Path base, String step) {
        return base.getFileSystem().getPathMatcher("glob:" + step);
    }

    /** The scores that it stands for, those in matching folders too, in order of their names. */
    List<NamedScore> scores() throws IOException {
        Set<Path> matching = new LinkedHashSet<>();
        match(base, 0, matching);
        Set<NamedScore> scores = new LinkedHashSet<>();
        for (Path file : matching.stream().sorted().toList()) {
            if (ScoreFolder.isFolder(file)) {
                List<NamedScore> inside = new ArrayList<>();
                ScoreFolder.scores(file, base, inside);
                scores.addAll(inside);
            } else if (NamedScore.isScore(file) && Files.isRegularFile(file)) {
                scores.add(NamedScore.found(file, base));
            }
        }
        return List.copyOf(scores);
    }

    private void match(Path folder, int step, Set<Path> into) throws IOException {
        String pattern = steps.get(step);
        boolean last = step == steps.size() - 1;
        boolean anyFolders = pattern.equals(ANY_FOLDERS);
        if (anyFolders && !last) {
            match(folder, step + 1, into);
        }
        PathMatcher matcher = matcher(base, anyFolders ? "*" : pattern);
        for (Path file : ScoreFolder.list(folder)) {
            if (!matcher.matches(file.getFileName())) {
                continue;
            }
            boolean isFolder = ScoreFolder.isFolder(file);
            if (last) {
                into.add(file);
            } else if (isFolder) {
                match(file, anyFolders ? step : step + 1, into);
            }
        }
    }
}
