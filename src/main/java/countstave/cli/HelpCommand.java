package countstave.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code countstave help}: what {@code --help} says, for hands that type it the other way round. */
@Command(name = "help", mixinStandardHelpOptions = true, versionProvider = Version.class, helpCommand = true,
        description = "Prints the help of countstave or of one of its commands.",
        footer = {
            "",
            "Examples:",
            "  countstave help",
            "  countstave help annotate"})
final class HelpCommand implements Callable<Integer> {

    @Spec
    CommandSpec spec;

    @Parameters(paramLabel = "COMMAND", arity = "0..1", completionCandidates = Candidates.CommandNames.class,
            description = "A command. Default: countstave itself.")
    String command;

    @Override
    public Integer call() {
        CommandLine all = spec.parent().commandLine();
        CommandLine chosen = command == null ? all : all.getSubcommands().get(command);
        if (chosen == null) {
            throw new ParameterException(spec.commandLine(), Commands.unknown(command));
        }
        chosen.usage(all.getOut());
        return 0;
    }
}
