package countstave.cli;

import picocli.CommandLine.Option;

/** Which scores a command reads, and where it writes. */
final class OutputOptions extends ScoreOptions {

    @Option(names = {"-o", "--output"}, paramLabel = "OUT",
            description = "Where to write: a file, or a folder, which many scores need; they keep their names and folders"
                    + " in it.")
    String output;

    @Option(names = "--force", description = "Replace what is already there.")
    boolean force;
}
