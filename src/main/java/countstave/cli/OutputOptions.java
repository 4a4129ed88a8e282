package countstave.cli;

import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** Which scores a command reads, and where it writes. */
final class OutputOptions extends ScoreOptions {

    @Option(names = {"-o", "--output"}, order = 50, paramLabel = "OUT",
            description = "Where to write: a file, or a folder, which many scores need; they keep their names and folders"
                    + " in it.")
    String output;

    @Option(names = "--force", order = 51, description = "Replace what is already there.")
    boolean force;

    @Option(names = "--skip-existing", order = 52, description = "Let what is already there be, and write what is missing: goes on with a run"
            + " that was interrupted.")
    boolean skipExisting;

    /** @throws ParameterException if what is there is to be both replaced and let be */
    void check() {
        if (force && skipExisting) {
            throw new ParameterException(spec.commandLine(), "--force replaces what is there, --skip-existing lets it be: leave"
                    + " out one of the two");
        }
        if (skipExisting && output == null) {
            throw new ParameterException(spec.commandLine(), "--skip-existing is for outputs: name their place with -o");
        }
    }

    /**
     * For a run that prints: nothing is there to be replaced.
     *
     * @throws ParameterException if it is to be replaced all the same
     */
    void refuseForce() {
        if (force && output == null) {
            throw new ParameterException(spec.commandLine(), "--force is for outputs: name their place with -o");
        }
    }
}
