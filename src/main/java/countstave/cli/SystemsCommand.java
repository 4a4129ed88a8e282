package countstave.cli;

import countstave.count.CountingSystem;
import countstave.plain.Phrases;
import countstave.text.SystemTables;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** {@code countstave systems}: lists the counting systems, or shows some as tables. */
@Command(name = "systems", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = {
            "Lists the counting systems that --system takes; with names, shows what each of them says in a beat of"
                    + " 1, 2, 3 ... parts, who says so, and what is not certain."},
        footer = {
            "",
            "Examples:",
            "  countstave systems",
            "  countstave systems takadimi eastman",
            "  countstave systems numbers --and de",
            "  countstave systems my.system                  checks a file of your own and shows it"})
final class SystemsCommand implements Callable<Integer> {

    @ParentCommand
    Countstave parent;

    @Spec
    CommandSpec spec;

    @Parameters(paramLabel = "SYSTEM", arity = "0..*", completionCandidates = Candidates.Systems.class,
            description = "A name from the list, or a file of your own (.system). Default: list all.")
    List<String> names = new ArrayList<>();

    @Option(names = "--and", order = 21, completionCandidates = Candidates.Languages.class, paramLabel = "WORD",
            description = "Show it with the word for the half beat of a language such as de, es or fr, or your own.")
    String and;

    @Option(names = "--ascii", order = 130, description = "Print with plain ASCII signs, for terminals without note symbols.")
    boolean ascii;

    @Override
    public Integer call() throws IOException {
        StringBuilder out = new StringBuilder();
        SystemTables tables = new SystemTables(out, CountCommand.textOptions(ascii, Phrases.ENGLISH));
        if (names.isEmpty()) {
            GivenOptions.refuse(spec, "--and", "the table of a system", "name one");
            tables.list();
        }
        for (String name : names) {
            CountingSystem system = CountingSystem.find(name);
            out.append(out.isEmpty() ? "" : "\n");
            tables.show(and == null ? system : system.withAnd(and));
        }
        parent.console.out().print(out);
        parent.console.out().flush();
        return 0;
    }
}
