package countstave.cli;

import countstave.batch.Inputs;
import countstave.batch.NamedScore;
import countstave.files.Console;
import countstave.files.FileNames;
import countstave.json.BaselineJson;
import countstave.score.ScoreException;
import countstave.spelling.KnownFindings;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The options of a baseline: what is known from an earlier state of the scores. */
final class BaselineOptions {

    @Spec(Spec.Target.MIXEE)
    CommandSpec spec;

    @Option(names = "--baseline", order = 18, paramLabel = "FILE",
            description = "Tell only what is new since this baseline was written.")
    String baseline;

    @Option(names = "--write-baseline", order = 19, paramLabel = "FILE",
            description = "Write what is found now into this file, as known from now on, and tell none of it.")
    String target;

    /** @throws ParameterException if a baseline is to be both used and written */
    void check(String output) {
        if (target != null && (baseline != null || output != null)) {
            throw new ParameterException(spec.commandLine(), "--write-baseline makes all that is found known: leave out "
                    + (baseline != null ? "--baseline" : "-o"));
        }
    }

    /** What is known; null where no baseline is used. */
    KnownFindings known() {
        if (baseline == null) {
            return null;
        }
        Path path = Inputs.path(baseline);
        try {
            return BaselineJson.read(Files.readString(path, StandardCharsets.UTF_8));
        } catch (ScoreException e) {
            throw new ScoreException(Console.clean(baseline) + ": " + e.getMessage(), e);
        } catch (IOException e) {
            throw new ScoreException(Console.clean(baseline) + ": this baseline cannot be read; check the name, or write it with"
                    + " --write-baseline", e);
        }
    }

    /** What a baseline calls a score: its path from the baseline's folder, so that it holds wherever both lie together. */
    String nameOf(NamedScore score) {
        if (score.path() == null) {
            return score.name();
        }
        Path folder = Inputs.path(target != null ? target : baseline).toAbsolutePath().normalize().getParent();
        Path file = score.path().toAbsolutePath().normalize();
        try {
            return FileNames.shown(folder.relativize(file)).replace('\\', '/');
        } catch (IllegalArgumentException e) {
            // on another drive
            return FileNames.shown(file);
        }
    }
}
