package countstave.cli;

import countstave.score.ScoreException;
import java.lang.reflect.Field;
import java.util.Set;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** Options that were typed and would do nothing. */
final class GivenOptions {

    private GivenOptions() {
    }

    /**
     * @param group the class that declares the options
     * @param purpose what they are for
     * @param instead what to do to get it
     * @throws ScoreException if one of them was typed
     */
    static void refuse(CommandSpec command, Class<?> group, String purpose, String instead) {
        refuseAllBut(Set.of(), command, group, purpose, instead);
    }

    /**
     * The same where some of the group do something.
     *
     * @param acting their longest names
     */
    static void refuseAllBut(Set<String> acting, CommandSpec command, Class<?> group, String purpose, String instead) {
        for (OptionSpec given : command.commandLine().getParseResult().matchedOptions()) {
            if (given.userObject() instanceof Field field && field.getDeclaringClass() == group && !acting.contains(given.longestName())) {
                throw new ScoreException(given.longestName() + " is for " + purpose + ": " + instead);
            }
        }
    }

    /**
     * The same of a single option.
     *
     * @param option its longest name
     */
    static void refuse(CommandSpec command, String option, String purpose, String instead) {
        if (command.commandLine().getParseResult().hasMatchedOption(option)) {
            throw new ScoreException(option + " is for " + purpose + ": " + instead);
        }
    }
}
