package countstave.cli;

import countstave.files.Console;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Stack;
import picocli.CommandLine.IParameterConsumer;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/** What may stand behind {@code --blank}: a word of its own, or a score, which is none. */
final class BlankWord implements IParameterConsumer {

    @Override
    public void consumeParameters(Stack<String> words, ArgSpec option, CommandSpec command) {
        String next = words.isEmpty() ? "" : words.peek().toLowerCase(Locale.ROOT);
        for (DrawnOptions.Blank blank : DrawnOptions.Blank.values()) {
            if (next.equals(blank.name())) {
                words.pop();
                option.setValue(blank);
                return;
            }
        }
        if (!next.isEmpty() && !next.startsWith("-") && !mayBeScore(words.peek())) {
            throw new ParameterException(command.commandLine(), "'" + Console.clean(words.peek()) + "' is neither counts nor changes, which"
                    + " may stand behind --blank");
        }
        option.setValue(DrawnOptions.Blank.counts);
    }

    private static boolean mayBeScore(String word) {
        try {
            return word.matches(".*[./\\\\*?].*") || Files.exists(Path.of(word));
        } catch (InvalidPathException e) {
            return true;
        }
    }
}
