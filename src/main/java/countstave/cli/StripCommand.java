package countstave.cli;

import countstave.batch.NamedScore;
import countstave.batch.Naming;
import countstave.batch.ScoreList;
import countstave.batch.Targets;
import countstave.files.SafeFile;
import countstave.musicxml.OwnMarks;
import countstave.score.Warning;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.ParentCommand;

/** {@code countstave strip}: takes countstave's annotations out again. */
@Command(name = "strip", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = {
            "Takes countstave's counts and marks out of a score again: what is left is the score as it was before"
                    + " 'countstave annotate', byte for byte.",
            "It is written in the form of the input; without -o in the place of the score itself, which needs --force."},
        footer = {
            "",
            "Examples:",
            "  countstave strip chart-counts.musicxml -o chart.musicxml",
            "  countstave strip chart-counts.musicxml --force   in the file itself",
            "  countstave strip counted/ -o plain/              all scores in the folder"})
final class StripCommand implements Callable<Integer> {

    @ParentCommand
    Countstave parent;

    @Mixin
    OutputOptions files;

    /** A stripped score keeps its name. */
    private static final class Names implements Naming {
        @Override
        public String inFolder(NamedScore score, String stem) {
            return score.fileName();
        }

        @Override
        public Path beside(NamedScore score, String stem) {
            return score.path();
        }

        @Override
        public boolean mayReplaceItself() {
            return true;
        }
    }

    @Override
    public Integer call() throws IOException {
        files.check();
        ScoreList list = files.list();
        Targets targets = Targets.of(list, files.output, new Names(), parent.console);
        return files.run(parent.console, list, targets.work(files.skipExisting, (score, file, console) -> {
            Path target = targets.of(score);
            SafeFile.checkFree(target, files.force);
            if (!OwnMarks.isAnnotated(file.text())) {
                score.warn(console, new Warning("has no counts of countstave in it; it is written as it is",
                        "no counts of countstave in " + Warning.SCORES + ": written as they are"));
            }
            byte[] bytes = file.withText(OwnMarks.strip(file.text())).toBytes();
            targets.write(score, files.force, out -> out.write(bytes), console);
        }));
    }
}
