package countstave.cli;

import countstave.batch.Inputs;
import countstave.files.Console;
import countstave.files.SafeFile;
import countstave.score.ScoreException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** {@code countstave generate-man}: the manual pages. */
@Command(name = "generate-man", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = "Prints the manual page of countstave or of one of its commands, or writes all of them.",
        footer = {
            "",
            "Examples:",
            "  countstave generate-man > countstave.1",
            "  countstave generate-man annotate > countstave-annotate.1",
            "  countstave generate-man -o /usr/local/share/man/man1"})
final class ManCommand implements Callable<Integer> {

    @ParentCommand
    Countstave parent;

    @Spec
    CommandSpec spec;

    @Parameters(paramLabel = "COMMAND", arity = "0..1", completionCandidates = Candidates.CommandNames.class, description = "A command. Default: countstave itself.")
    String command;

    @Option(names = {"-o", "--output"}, order = 50, paramLabel = "FOLDER", description = "Write the pages of all commands into this folder;"
            + " it is made if needed.")
    String output;

    @Option(names = "--force", order = 51, description = "Replace pages that are already there.")
    boolean force;

    @Override
    public Integer call() {
        CommandLine all = spec.parent().commandLine();
        if (output != null) {
            Path folder = Inputs.path(output);
            try {
                Files.createDirectories(folder);
            } catch (IOException e) {
                throw new ScoreException("cannot make the folder " + Console.clean(output)
                        + "; choose another place with -o", e);
            }
            write(all, folder);
            all.getSubcommands().values().forEach(one -> write(one, folder));
            return 0;
        }
        CommandLine chosen = command == null ? all : all.getSubcommands().get(command);
        if (chosen == null) {
            throw new ParameterException(spec.commandLine(), Commands.unknown(command));
        }
        parent.console.out().print(ManPage.of(chosen.getCommandSpec()));
        parent.console.out().flush();
        return 0;
    }

    private void write(CommandLine line, Path folder) {
        CommandSpec page = line.getCommandSpec();
        SafeFile.write(folder.resolve(ManPage.name(page) + ".1"), force,
                out -> out.write(ManPage.of(page).getBytes(StandardCharsets.UTF_8)));
    }
}
