package countstave.cli;

import countstave.files.Console;
import countstave.musicxml.ScoreReader;
import countstave.score.ScoreException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The command {@code countstave}: its subcommands do the work. */
@Command(name = "countstave", mixinStandardHelpOptions = true, versionProvider = Version.class,
        synopsisSubcommandLabel = "COMMAND",
        description = {
            "Reads a MusicXML score, finds the grid that covers every note, and writes the counts under the notes,"
                    + " with a mark wherever the counting has to change."},
        footer = {
            "",
            "Try first:",
            "  countstave count chart.musicxml               read the counts on the screen",
            "  countstave annotate chart.musicxml            write them under the notes",
            "",
            "Every command has its own --help. Exit codes: 0 done, 1 something found (check only),"
                    + " 2 wrong usage or unreadable input."})
public final class Countstave implements Runnable {

    /** Wrong usage or unreadable input. */
    static final int REFUSED = 2;

    @Spec
    CommandSpec spec;

    final Console console;

    private Countstave(Console console) {
        this.console = console;
    }

    /** Runs the tool on these streams and gives the exit code. */
    public static int run(String[] args, InputStream in, PrintStream out, PrintStream err) {
        if (args.length > 1 && Commands.readsScores(args[0])) {
            ScoreReader.prepare();
        }
        CommandLine line = commandLine(new Console(in, out, err), args);
        return line.execute(args);
    }

    /** The commands that these arguments may call; without arguments the whole tree. */
    static CommandLine commandLine(Console console, String... args) {
        CommandLine line = new CommandLine(new Countstave(console));
        Commands.addTo(line, args);
        line.setOut(new PrintWriter(console.out(), true, StandardCharsets.UTF_8));
        line.setErr(new PrintWriter(console.err(), true, StandardCharsets.UTF_8));
        HelpLayout.set(line, System.getenv("COLUMNS"));
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setParameterExceptionHandler((e, given) -> {
            console.tell(Commands.problem(e) + "; see '" + e.getCommandLine().getCommandSpec().qualifiedName()
                    + " --help'");
            return REFUSED;
        });
        line.setExecutionExceptionHandler((e, commandLine, result) -> {
            if (e instanceof ScoreException) {
                console.tell(e.getMessage());
                return REFUSED;
            }
            throw e;
        });
        return line;
    }

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }
}
