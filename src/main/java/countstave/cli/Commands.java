package countstave.cli;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine;

/**
 * The commands by name. Building the description of a command takes longer than reading a page of music, so a run
 * describes only the one it is called with.
 */
final class Commands {

    /** Describes all commands to the shell. */
    private static final String COMPLETION = "generate-completion";

    /** Describes all commands to the reader. */
    private static final String MAN = "generate-man";

    /** Tells of all commands, as --help does. */
    private static final String HELP = "help";

    /** What the completion of a command line asks: the words that stand in a score. Not told of in the help. */
    static final String VALUES = "values";

    /** All names, in the order of the help. */
    static final List<String> NAMES = List.of("count", "annotate", "strip", "practice", "listen", "say", "parts", "systems", "check", HELP,
            COMPLETION, MAN);

    /** The list in picocli's line about a value that is none of the choices. */
    private static final Pattern CHOICES = Pattern.compile("expected one of \\[[A-Z0-9_, ]+\\]");

    private Commands() {
    }

    /** A new command of this name, or null. */
    private static Object named(String name) {
        return switch (name) {
            case "count" -> new CountCommand();
            case "annotate" -> new AnnotateCommand();
            case "strip" -> new StripCommand();
            case "practice" -> new PracticeCommand();
            case "listen" -> new ListenCommand();
            case "say" -> new SayCommand();
            case "parts" -> new PartsCommand();
            case "systems" -> new SystemsCommand();
            case "check" -> new CheckCommand();
            case HELP -> new HelpCommand();
            case VALUES -> new ValuesCommand();
            case COMPLETION -> new CompletionCommand();
            case MAN -> new ManCommand();
            default -> null;
        };
    }

    /** Whether this command needs all the others. */
    private static boolean describesAll(String name) {
        return name.equals(COMPLETION) || name.equals(MAN) || name.equals(HELP);
    }

    /** Whether this command reads scores. */
    static boolean readsScores(String name) {
        return NAMES.contains(name) && !name.equals("systems") && !name.equals("strip") && !describesAll(name);
    }

    /** What is wrong with the arguments; a word in the place of the command is told with the commands there are. */
    static String problem(CommandLine.ParameterException e) {
        if (e instanceof CommandLine.UnmatchedArgumentException unmatched && e.getCommandLine().getParent() == null
                && !unmatched.getUnmatched().isEmpty() && !unmatched.isUnknownOption()) {
            return unknown(unmatched.getUnmatched().get(0));
        }
        // the names of choices as --help writes them
        return CHOICES.matcher(e.getMessage()).replaceAll(m -> Matcher.quoteReplacement(m.group().toLowerCase(Locale.ROOT)));
    }

    /** One line about a word that is no command. */
    static String unknown(String word) {
        return "there is no command '" + word + "'; the commands are " + String.join(", ", NAMES);
    }

    /** Adds the command that the arguments begin with, or all of them where they begin otherwise. */
    static void addTo(CommandLine line, String... args) {
        boolean one = args.length > 0 && (args[0].equals(VALUES) || NAMES.contains(args[0]) && !describesAll(args[0]));
        List<String> wanted = one ? List.of(args[0]) : NAMES;
        for (String name : wanted) {
            line.addSubcommand(name, named(name));
        }
    }
}
