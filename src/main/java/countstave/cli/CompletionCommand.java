package countstave.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** {@code countstave generate-completion}: completes command lines in bash and zsh. */
@Command(name = "generate-completion", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = "Prints a script that completes command lines of countstave in bash and zsh: commands, options, their values,"
                + " and the parts and bars of a score that is already named.",
        footer = {
            "",
            "Example:",
            "  source <(countstave generate-completion)"})
final class CompletionCommand implements Callable<Integer> {

    @ParentCommand
    Countstave parent;

    @Spec
    CommandSpec spec;

    @Override
    public Integer call() {
        parent.console.out().print(CompletionScript.of(spec.parent()));
        parent.console.out().flush();
        return 0;
    }
}
