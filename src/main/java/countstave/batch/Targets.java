package countstave.batch;

import countstave.files.Console;
import countstave.files.FileNames;
import countstave.files.SafeFile;
import countstave.musicxml.ScoreFile;
import countstave.score.ScoreException;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Where the output of each score goes, settled before any work: no two outputs in one place, and none in the place of a
 * score that is read. Scores that are called alike but for their endings give outputs that keep the endings.
 */
public final class Targets {

    /** In place of a folder: the outputs go beside their scores. */
    private static final String BESIDE = "beside";

    /** A name for the outputs of a score that has none. */
    private static final String NAMELESS = "score";

    private final Map<NamedScore, Path> places = new HashMap<>();
    /** Scores that are outputs of an earlier run, and files that only may be scores and are none. */
    private final Set<NamedScore> leftOut = new HashSet<>();
    private final boolean tree;
    private final String where;

    private Targets(boolean tree, String where) {
        this.tree = tree;
        this.where = where;
    }

    /**
     * @param said what {@code -o} says: a file for one score, a folder for many, {@code beside}; or null
     * @throws ScoreException if an output would replace another or a score, or if many would lie beside their scores unasked
     */
    public static Targets of(ScoreList list, String said, Naming naming, Console console) {
        String output = isBeside(said) ? null : said;
        boolean folder = output != null && isFolder(list, output, naming);
        Targets targets = new Targets(folder, output == null ? "written beside the scores" : "written to " + output);
        Map<Path, NamedScore> inputs = new HashMap<>();
        for (NamedScore score : list.scores()) {
            if (score.path() != null) {
                inputs.put(place(score.path()), score);
                targets.places.put(score, output == null || folder ? named(output, score, score.stem(), naming)
                        : Inputs.path(output));
            } else if (score.isStandardInput() && output != null && (!folder || naming.severalFiles())) {
                targets.places.put(score, folder ? FileNames.in(Inputs.path(output), naming.inFolder(score, NAMELESS))
                        : Inputs.path(output));
            }
        }
        if (output == null) {
            targets.checkBeside(list, isBeside(said), naming);
        }
        targets.passOver(inputs, folder ? place(Inputs.path(output)) : null, naming);
        List<List<NamedScore>> namesakes = targets.namesakes(list);
        for (List<NamedScore> alike : namesakes) {
            alike.forEach(score -> targets.places.put(score, named(folder ? output : null, score, score.fileName(), naming)));
        }
        targets.check(list, inputs, naming.mayReplaceItself());
        if (!namesakes.isEmpty()) {
            console.tell(targets.told(namesakes));
        }
        return targets;
    }

    /** Whether {@code -o} asks for outputs beside their scores; a folder of this name is {@code ./beside}. */
    public static boolean isBeside(String output) {
        return BESIDE.equals(output);
    }

    private void checkBeside(ScoreList list, boolean asked, Naming naming) {
        NamedScore first = list.scores().stream().filter(score -> score.path() != null).findFirst().orElse(null);
        if (first == null) {
            return;
        }
        if (asked && places.get(first) == null) {
            throw new ScoreException("nothing of this is written beside a score: name a folder with -o"
                    + " (./beside if it is called so)");
        }
        if (!asked && naming.asksBeside() && (list.many() || naming.severalFiles())) {
            throw new ScoreException("without -o the outputs would go beside the scores, such as "
                    + FileNames.shown(places.get(first)) + ": name a folder with -o, or say so with -o beside");
        }
    }

    /** Scores whose outputs would meet, and would not if they kept the endings of their scores. */
    private List<List<NamedScore>> namesakes(ScoreList list) {
        Map<Path, List<NamedScore>> meeting = new LinkedHashMap<>();
        for (NamedScore score : list.scores()) {
            if (places.get(score) != null && !leftOut.contains(score)) {
                meeting.computeIfAbsent(place(places.get(score)), place -> new ArrayList<>()).add(score);
            }
        }
        List<List<NamedScore>> found = new ArrayList<>();
        for (List<NamedScore> scores : meeting.values()) {
            if (scores.size() > 1) {
                // only now, since it has to be opened to know
                scores.stream().filter(NamedScore::isNoScore).forEach(leftOut::add);
                scores.removeAll(leftOut);
            }
            if (scores.size() > 1 && scores.stream().map(NamedScore::fileName).distinct().count() == scores.size()) {
                found.add(scores);
            }
        }
        return found;
    }

    private String told(List<List<NamedScore>> namesakes) {
        List<NamedScore> first = namesakes.get(0);
        int others = namesakes.size() - 1;
        return joined(first.stream().map(NamedScore::name).toList()) + " have one name but for the ending: the outputs keep"
                + " it, " + joined(first.stream().map(score -> FileNames.shown(places.get(score))).toList())
                + (others == 0 ? "" : "; likewise with " + others + (others == 1 ? " other name" : " other names"));
    }

    private static String joined(List<String> names) {
        int last = names.size() - 1;
        return String.join(", ", names.subList(0, last)) + " and " + names.get(last);
    }

    /** Finds the scores that are there only because an earlier run has written them. */
    private void passOver(Map<Path, NamedScore> inputs, Path outputs, Naming naming) {
        inputs.forEach((place, score) -> {
            Path former = naming.formerly(score);
            NamedScore output = former == null ? null : inputs.get(place(former));
            if (output != null && output.found()) {
                leftOut.add(output);
            }
            if (outputs != null && liesIn(outputs, place, score)) {
                leftOut.add(score);
            }
        });
    }

    private static boolean isFolder(ScoreList list, String output, Naming naming) {
        Path path = Inputs.path(output);
        if (!list.many() && !naming.severalFiles()) {
            return Files.isDirectory(path) || output.endsWith("/") || output.endsWith(File.separator);
        }
        if (Files.exists(path) ? !Files.isDirectory(path) : hasFileEnding(path)) {
            throw new ScoreException("the outputs of several " + (list.many() ? "scores" : "parts")
                    + " go into a folder: name a folder with -o, not the file "
                    + Console.clean(output));
        }
        return true;
    }

    private static boolean hasFileEnding(Path path) {
        String name = path.toString().toLowerCase(Locale.ROOT);
        return NamedScore.isScore(path) || List.of(".pdf", ".svg", ".html", ".wav", ".json", ".txt").stream().anyMatch(name::endsWith);
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

    private static Path named(String folder, NamedScore score, String stem, Naming naming) {
        try {
            return folder == null ? naming.beside(score, stem)
                    : Inputs.path(folder).resolve(FileNames.beside(score.inTree(), naming.inFolder(score, stem)));
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
            if (target == null || leftOut.contains(score)) {
                continue;
            }
            Path place = place(target);
            NamedScore other = taken.putIfAbsent(place, score);
            if (other != null) {
                throw new ScoreException(other.name() + " and " + score.name() + " would both be written to " + FileNames.shown(target)
                        + "; work on them one after the other, with another -o for each");
            }
            NamedScore replaced = inputs.get(place);
            if (replaced != null && !leftOut.contains(replaced) && !(replaced.equals(score) && mayReplaceItself)) {
                throw new ScoreException("the output of " + score.name() + " would replace "
                        + (replaced.equals(score) ? "the score itself" : "the score " + replaced.name())
                        + "; choose another place with -o");
            }
        }
    }

    /** @throws ScoreException if {@code -o} does not say where */
    public Path of(NamedScore score) {
        Path target = places.get(score);
        if (target == null) {
            throw new ScoreException("say with -o where to write");
        }
        return target;
    }

    /**
     * Work whose results are files: scores that are outputs themselves are left out.
     *
     * @param skip whether outputs that are there are let be
     */
    public ScoreWork<Void> work(boolean skip, Filling filling) {
        return new ScoreWork<>() {
            @Override
            public Void run(NamedScore score, ScoreFile file, Console console) throws IOException {
                filling.run(score, file, console);
                return null;
            }

            @Override
            public boolean isLeftOut(NamedScore score) {
                return leftOut.contains(score);
            }

            @Override
            public boolean isThere(NamedScore score) {
                return skip && places.get(score) != null && Files.exists(places.get(score));
            }

            @Override
            public String results() {
                return where;
            }

            @Override
            public boolean goesOn() {
                return true;
            }
        };
    }

    /** Makes the output of one score, and writes it with {@link #write}. */
    public interface Filling {
        void run(NamedScore score, ScoreFile file, Console console) throws IOException;
    }

    /** Writes an output and says so. */
    public void write(NamedScore score, boolean force, SafeFile.Content content, Console console) {
        write(of(score), force, content, console);
    }

    /** Writes one of several outputs of a score, and says so. */
    public void write(Path target, boolean force, SafeFile.Content content, Console console) {
        makeFolders(target);
        SafeFile.write(target, force, content);
        console.out().println("wrote " + FileNames.shown(target));
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
            throw new ScoreException("cannot make the folder " + FileNames.shown(folder)
                    + "; choose another place with -o", e);
        }
    }
}
