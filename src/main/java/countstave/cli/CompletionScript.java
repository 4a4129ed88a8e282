package countstave.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * The script that completes command lines, from the description of the commands: what an option may be followed by, it
 * knows from the option itself; for parts and bars it asks countstave, which looks into the score that is already named.
 */
final class CompletionScript {

    private static final String HEAD = """
            # Completes command lines of countstave in bash and zsh: source this file.
            if [ -n "$ZSH_VERSION" ]; then
                autoload -U +X compinit && compinit
                autoload -U +X bashcompinit && bashcompinit
            fi

            # A word as it is meant: without its quotes, from the home folder. It is being typed, so nothing of it is run.
            _countstave_plain() {
                local rest="$1" quote="" char plain=""
                case "$rest" in
                    "~/"*) plain="$HOME"; rest="${rest:1}" ;;
                esac
                while [ -n "$rest" ]; do
                    char="${rest:0:1}"
                    rest="${rest:1}"
                    if [ "$char" = '\\' ] && [ "$quote" != "'" ]; then
                        plain="$plain${rest:0:1}"
                        rest="${rest:1}"
                    elif [ "$char" = "$quote" ]; then
                        quote=""
                    elif [ -z "$quote" ] && { [ "$char" = "'" ] || [ "$char" = '"' ]; }; then
                        quote="$char"
                    else
                        plain="$plain$char"
                    fi
                done
                printf '%s' "$plain"
            }

            # The first word behind the command that is a file.
            _countstave_score() {
                local word
                for word in "${COMP_WORDS[@]:2}"; do
                    word="$(_countstave_plain "$word")"
                    if [ -f "$word" ]; then
                        printf '%s' "$word"
                        return
                    fi
                done
            }

            # Those of the lines that begin like the word, or like what stands behind its last comma.
            _countstave_offer() {
                local word="$1" before="" line
                case "$word" in
                    *,*) before="${word%,*},"; word="${word##*,}" ;;
                esac
                while IFS= read -r line; do
                    case "$line" in
                        "$word"*) COMPREPLY+=("$before$(printf '%q' "$line")") ;;
                    esac
                done
            }

            # Asks by the word that was typed: it may be an alias, but not a command line of its own.
            _countstave_ask() {
                local score
                case "${COMP_WORDS[0]}" in
                    *['$`;&|<>()']*|*$'\\n'*) return ;;
                esac
                score="$(_countstave_score)"
                if [ -n "$score" ]; then
                    eval "${COMP_WORDS[0]} values $1 \\"\\$score\\"" 2>/dev/null
                fi
            }

            _countstave() {
                local cur="${COMP_WORDS[COMP_CWORD]}" prev="${COMP_WORDS[COMP_CWORD-1]}" command="${COMP_WORDS[1]}"
                COMPREPLY=()
                if [ "$cur" = "=" ]; then
                    cur=""
                elif [ "$prev" = "=" ]; then
                    prev="${COMP_WORDS[COMP_CWORD-2]}"
                fi
                if [ "$COMP_CWORD" -eq 1 ]; then
                    _countstave_offer "$cur" <<< $'COMMANDS'
                    return
                fi
                case "$command $prev" in
            """;

    private static final String MIDDLE = """
                esac
                case "$command $cur" in
            """;

    private static final String END = """
                esac
            }

            complete -o default -F _countstave countstave
            """;

    /** {@code yes|no|dot}: words that a label names one by one. */
    private static final Pattern CHOICES = Pattern.compile("[a-z]+(\\|[a-z]+)+");

    private final StringBuilder out = new StringBuilder();

    private CompletionScript() {
    }

    /** @param tool the command with all its subcommands */
    static String of(CommandSpec tool) {
        CompletionScript script = new CompletionScript();
        List<CommandSpec> commands = tool.subcommands().values().stream().map(CommandLine::getCommandSpec).toList();
        script.out.append(HEAD.replace("COMMANDS", lines(commands.stream().map(CommandSpec::name).toList())));
        commands.forEach(script::values);
        script.out.append(MIDDLE);
        commands.forEach(script::words);
        return script.out.append(END).toString();
    }

    private void values(CommandSpec command) {
        for (OptionSpec option : HelpLayout.ordered(command, false)) {
            value(command, option);
        }
        HelpLayout.ordered(command, true).forEach(option -> value(command, option));
    }

    private void value(CommandSpec command, OptionSpec option) {
        if (option.arity().max() == 0) {
            return;
        }
        String when = List.of(option.names()).stream().map(name -> '"' + command.name() + ' ' + name + '"')
                .collect(Collectors.joining("|"));
        String asked = option.longestName().equals("--part") ? "parts" : option.longestName().equals("--bars") ? "bars" : null;
        List<String> words = words(option);
        String offered = asked != null ? "_countstave_offer \"$cur\" < <(_countstave_ask " + asked + "); return"
                : words.isEmpty() ? "return" : "_countstave_offer \"$cur\" <<< $'" + lines(words) + "'; return";
        out.append("        ").append(when).append(") ").append(offered).append(" ;;\n");
    }

    /** Behind no option: options, and the words that a command takes; files by themselves. */
    private void words(CommandSpec command) {
        List<String> options = new ArrayList<>();
        for (boolean rare : new boolean[] {false, true}) {
            HelpLayout.ordered(command, rare).forEach(option -> options.add(option.longestName()));
        }
        out.append("        \"").append(command.name()).append(" -\"*) _countstave_offer \"$cur\" <<< $'").append(lines(options))
                .append("' ;;\n");
        for (PositionalParamSpec parameter : command.positionalParameters()) {
            List<String> words = words(parameter);
            if (!words.isEmpty()) {
                out.append("        \"").append(command.name()).append(" \"*) _countstave_offer \"$cur\" <<< $'")
                        .append(lines(words)).append("' ;;\n");
            }
        }
    }

    /** The words that an argument may be, in lower case as they are written. */
    private static List<String> words(ArgSpec argument) {
        if (CHOICES.matcher(argument.paramLabel()).matches()) {
            return List.of(argument.paramLabel().split("\\|"));
        }
        List<String> words = new ArrayList<>();
        if (argument.completionCandidates() != null) {
            argument.completionCandidates().forEach(word -> words.add(word.toLowerCase(Locale.ROOT)));
        }
        return words;
    }

    /** Lines inside {@code $'…'}. */
    private static String lines(List<String> words) {
        return words.stream().map(word -> word.replace("\\", "\\\\").replace("'", "\\'")).collect(Collectors.joining("\\n"));
    }
}
