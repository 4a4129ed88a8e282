package countstave.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * The manual page of a command in the format of man(7), from the same description that its {@code --help} prints. It holds
 * no date, so that the same commit gives the same bytes.
 */
final class ManPage {

    private static final String SECTION = "1";

    private final CommandSpec spec;
    private final StringBuilder out = new StringBuilder();

    private ManPage(CommandSpec spec) {
        this.spec = spec;
    }

    /** The page as roff source. */
    static String of(CommandSpec spec) {
        return new ManPage(spec).page();
    }

    /** {@code countstave-annotate}: what the page of a command is called. */
    static String name(CommandSpec spec) {
        return spec.qualifiedName("-");
    }

    private String page() {
        line(".TH " + quoted(name(spec).toUpperCase(Locale.ROOT)) + " " + SECTION + " \"\" "
                + quoted(new Version().getVersion()[0]) + " \"\"");
        // no hyphens put into options, no justified gaps
        line(".nh");
        line(".ad l");
        section("NAME");
        line(escaped(name(spec)) + " \\- " + escaped(summary()));
        section("SYNOPSIS");
        synopsis();
        section("DESCRIPTION");
        String between = null;
        for (String paragraph : spec.usageMessage().description()) {
            if (between != null) {
                line(between);
            }
            text(expanded(paragraph));
            between = ".PP";
        }
        parameters();
        section("OPTIONS");
        HelpLayout.ordered(spec, false).forEach(this::option);
        List<OptionSpec> rare = HelpLayout.ordered(spec, true);
        if (!rare.isEmpty()) {
            section("RARELY USED OPTIONS");
            rare.forEach(this::option);
        }
        commands();
        footer();
        return out.toString();
    }

    /** The first sentence of the description, as the list of commands has it. */
    private String summary() {
        String first = expanded(spec.usageMessage().description()[0]);
        int end = first.length();
        for (String stop : List.of(": ", "; ", ". ")) {
            int at = first.indexOf(stop);
            end = at < 0 ? end : Math.min(end, at);
        }
        return first.charAt(end - 1) == '.' ? first.substring(0, end - 1) : first.substring(0, end);
    }

    private void synopsis() {
        StringBuilder words = new StringBuilder("\\fB" + escaped(spec.qualifiedName()) + "\\fR [\\fIOPTION\\fR]...");
        if (!spec.subcommands().isEmpty()) {
            words.append(" \\fICOMMAND\\fR");
        }
        for (PositionalParamSpec parameter : spec.positionalParameters()) {
            boolean asItStands = parameter.hideParamSyntax();
            boolean needed = asItStands || parameter.arity().min() > 0;
            words.append(needed ? " " : " [").append("\\fI").append(escaped(parameter.paramLabel())).append("\\fR")
                    .append(!asItStands && parameter.arity().max() > 1 ? "..." : "").append(needed ? "" : "]");
        }
        line(words.toString());
    }

    private void parameters() {
        List<PositionalParamSpec> shown = spec.positionalParameters().stream().filter(p -> !p.hidden()).toList();
        if (!shown.isEmpty()) {
            section("ARGUMENTS");
        }
        for (PositionalParamSpec parameter : shown) {
            line(".TP");
            line("\\fI" + escaped(parameter.paramLabel()) + "\\fR");
            described(parameter);
        }
    }

    private void option(OptionSpec option) {
        List<String> names = new ArrayList<>();
        for (String name : option.names()) {
            names.add("\\fB" + escaped(name) + "\\fR");
        }
        line(".TP");
        line(String.join(", ", names) + (option.arity().max() == 0 ? ""
                : "=\\fI" + escaped(option.paramLabel()) + "\\fR"));
        described(option);
    }

    private void described(ArgSpec argument) {
        for (String paragraph : argument.description()) {
            text(expanded(paragraph));
        }
    }

    private void commands() {
        if (spec.subcommands().isEmpty()) {
            return;
        }
        section("COMMANDS");
        for (CommandLine command : spec.subcommands().values()) {
            line(".TP");
            line("\\fB" + escaped(command.getCommandName()) + "\\fR");
            text(new ManPage(command.getCommandSpec()).summary() + ".");
        }
    }

    /** Indented lines keep their form; what stands before them is a heading. */
    private void footer() {
        boolean asIs = false;
        for (String row : spec.usageMessage().footer()) {
            String shown = expanded(row);
            boolean indented = shown.startsWith("  ");
            if (asIs && !indented) {
                line(".EE");
                line(".RE");
            } else if (!asIs && indented) {
                line(".RS 4");
                line(".EX");
            }
            asIs = indented;
            if (indented) {
                line(guarded(escaped(shown.strip())));
            } else if (shown.endsWith(":")) {
                section(shown.substring(0, shown.length() - 1).toUpperCase(Locale.ROOT));
            } else if (!shown.isEmpty()) {
                line(".PP");
                text(shown);
            }
        }
        if (asIs) {
            line(".EE");
            line(".RE");
        }
        section("SEE ALSO");
        if (spec.parent() != null) {
            line(".BR " + escaped(name(spec.parent())) + " (" + SECTION + ")");
        } else {
            List<CommandLine> all = List.copyOf(spec.subcommands().values());
            for (int i = 0; i < all.size(); i++) {
                line(".BR " + escaped(name(all.get(i).getCommandSpec())) + " (" + SECTION + ")"
                        + (i < all.size() - 1 ? "," : ""));
            }
        }
    }

    private void section(String title) {
        line(".SH " + quoted(title));
    }

    private void text(String words) {
        line(guarded(escaped(words.strip())));
    }

    private void line(String roff) {
        out.append(roff).append('\n');
    }

    /** picocli's own signs for line ends and styles; ours have none but the percent sign. */
    private static String expanded(String text) {
        return text.replace("%n", " ").replace("%%", "%");
    }

    private static String quoted(String text) {
        return "\"" + escaped(text).replace("\"", "\\(dq") + "\"";
    }

    /** What roff would take for a sign of its own; letters beyond ASCII by their code, which every roff reads. */
    private static String escaped(String text) {
        StringBuilder safe = new StringBuilder();
        text.codePoints().forEach(c -> {
            switch (c) {
                case '\\' -> safe.append("\\e");
                case '-' -> safe.append("\\-");
                case '\'' -> safe.append("\\(aq");
                case '`' -> safe.append("\\(ga");
                case '^' -> safe.append("\\(ha");
                case '~' -> safe.append("\\(ti");
                default -> safe.append(c < 0x7F ? Character.toString(c) : String.format(Locale.ROOT, "\\[u%04X]", c));
            }
        });
        return safe.toString();
    }

    /** A line that begins with a dot would be read as a command. */
    private static String guarded(String roff) {
        return roff.startsWith(".") || roff.startsWith("\\(aq") ? "\\&" + roff : roff;
    }
}
