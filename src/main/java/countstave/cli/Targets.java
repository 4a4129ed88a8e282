package countstave.cli;

import countstave.musicxml.ScoreFile;
import countstave.score.ScoreException;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Where the output of each score goes, settled before any work: no two outputs in one place, and none in the place of a
 * score that is read.
 */
final class Targets {

    /** How outputs are called. */
    interface Naming {

        /** Name of the output in a folder of outputs. */
        String inFolder(NamedScore score);

        /** Where the output goes without {@code -o}; null if {@code -o} must say it. */
        Path beside(NamedScore score);

        /** Where an earlier run may have put an output of this score among the scores; null if there is no such place. */
        default Path formerly(NamedScore score) {
            return null;
        }

        /** Whether an output may replace its own score. */
        default boolean mayReplaceItself() {
            return false;
        }
    }

    private final Map<NamedScore, Path> places = new HashMap<>();
    private final Set<NamedScore> earlier = new HashSet<>();
    private final boolean tree;

    private Targets(boolean tree) {
        this.tree = tree;
    }

    /**
     * @param output what {@code -o} says: a file for one score, a folder for many; or null
     * @throws ScoreException if an output would replace another or a score
     */
    static Targets of(ScoreList list, String output, Naming naming) {
        boolean folder = output != null && isFolder(list, output);
        Targets targets = new Targets(folder);
        Map<Path, NamedScore> inputs = new HashMap<>();
        for (NamedScore score : list.scores()) {
            if (score.path() != null) {
                inputs.put(place(score.path()), score);
                targets.places.put(score, output == null || folder ? named(output, score, naming) : Inputs.path(output));
            } else if (score.isStandardInput() && output != null && !folder) {
                targets.places.put(score, Inputs.path(output));
            }
        }
        targets.passOver(inputs, folder ? place(Inputs.path(output)) : null, naming);
        targets.check(list, inputs, naming.mayReplaceItself());
        return targets;
    }

    /** Finds the scores that are there only because an earlier run has written them. */
    private void passOver(Map<Path, NamedScore> inputs, Path outputs, Naming naming) {
        inputs.forEach((place, score) -> {
            Path former = naming.formerly(score);
            NamedScore output = former == null ? null : inputs.get(place(former));
            if (output != null && output.found()) {
                earlier.add(output);
            }
            if (outputs != null && liesIn(outputs, place, score)) {
                earlier.add(score);
            }
        });
    }

    private static boolean isFolder(ScoreList list, String output) {
        Path path = Inputs.path(output);
        if (!list.many()) {
            return Files.isDirectory(path) || output.endsWith("/") || output.endsWith(File.separator);
        }
        if (Files.exists(path) ? !Files.isDirectory(path) : hasFileEnding(path)) {
            throw new ScoreException("the outputs of several scores go into a folder: name a folder with -o, not the file "
                    + Console.clean(output));
        }
        return true;
    }

    private static boolean hasFileEnding(Path path) {
        String name = path.toString().toLowerCase(Locale.ROOT);
        return NamedScore.isScore(path) || name.endsWith(".pdf") || name.endsWith(".json") || name.endsWith(".txt");
    }

    /** Whether a score was found because the folder of outputs lies in the folder that is read. */
    private static boolean liesIn(Path outputs, Path place, NamedScore score) {
        if (!score.found() || !place.startsWith(outputs)) {
            return false;
        }
        Path base = score.path().toAbsolutePath();
        for (int i = 0; i < score.inTree().getNameCount(); i++) {
            base = base.getParent();
        }
        return !place(base).startsWith(outputs);
    }

    private static Path named(String folder, NamedScore score, Naming naming) {
        try {
            return folder == null ? naming.beside(score)
                    : Inputs.path(folder).resolve(score.inTree().resolveSibling(naming.inFolder(score)));
        } catch (InvalidPathException e) {
            throw new ScoreException("the name of " + score.name() + " cannot be written in this locale;"
                    + " rename it, or set LC_ALL to a UTF-8 locale", e);
        }
    }

    /** One name for a file, however it is reached. */
    private static Path place(Path path) {
        try {
            return path.toRealPath();
        } catch (IOException e) {
            Path absolute = path.toAbsolutePath().normalize();
            Path folder = absolute.getParent();
            try {
                // a new file in a folder that is reached through a link
                return folder == null ? absolute : folder.toRealPath().resolve(absolute.getFileName());
            } catch (IOException f) {
                return absolute;
            }
        }
    }

    private void check(ScoreList list, Map<Path, NamedScore> inputs, boolean mayReplaceItself) {
        Map<Path, NamedScore> taken = new HashMap<>();
        for (NamedScore score : list.scores()) {
            Path target = places.get(score);
            if (target == null || earlier.contains(score)) {
                continue;
            }
            Path place = place(target);
            NamedScore other = taken.putIfAbsent(place, score);
            if (other != null) {
                throw new ScoreException(other.name() + " and " + score.name() + " would both be written to " + target
                        + "; work on them one after the other, with another -o for each");
            }
            NamedScore replaced = inputs.get(place);
            if (replaced != null && !earlier.contains(replaced) && !(replaced.equals(score) && mayReplaceItself)) {
                throw new ScoreException("the output of " + score.name() + " would replace "
                        + (replaced.equals(score) ? "the score itself" : "the score " + replaced.name())
                        + "; choose another place with -o");
            }
        }
    }

    /** @throws ScoreException if {@code -o} does not say where */
    Path of(NamedScore score) {
        Path target = places.get(score);
        if (target == null) {
            throw new ScoreException("say with -o where to write");
        }
        return target;
    }

    /** Work whose results are files: scores that are outputs themselves are left out. */
    ScoreWork<Void> work(Filling filling) {
        return new ScoreWork<>() {
            @Override
            public Void run(NamedScore score, ScoreFile file, Console console) throws IOException {
                filling.run(score, file, console);
                return null;
            }

            @Override
            public boolean isLeftOut(NamedScore score) {
                return earlier.contains(score);
            }
        };
    }

    /** Makes the output of one score, and writes it with {@link #write}. */
    interface Filling {
        void run(NamedScore score, ScoreFile file, Console console) throws IOException;
    }

    /** Writes an output and says so. */
    void write(NamedScore score, boolean force, SafeFile.Content content, Console console) {
        Path target = of(score);
        makeFolders(target);
        SafeFile.write(target, force, content);
        console.out().println("wrote " + Console.clean(target.toString()));
    }

    /** Makes the folders that a tree of outputs needs; a single file's folder is the user's to make. */
    private void makeFolders(Path target) {
        Path folder = target.toAbsolutePath().getParent();
        if (!tree || folder == null) {
            return;
        }
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new ScoreException("cannot make the folder " + Console.clean(folder.toString())
                    + "; choose another place with -o", e);
        }
    }
}
