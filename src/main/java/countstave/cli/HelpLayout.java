package countstave.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.UsageMessageSpec;

/**
 * How the help looks: as wide as the terminal, the options in the order in which one comes to need them ({@code order} of
 * each), and those that few need under a heading of their own.
 */
final class HelpLayout {

    /** Options of this order and beyond are rarely used. */
    static final int RARE = 100;

    private static final int NARROWEST = 55;
    private static final int WIDEST = 120;
    private static final int STANDARD = 1;

    private HelpLayout() {
    }

    /**
     * Sets a command and those below it.
     *
     * @param columns what the environment says of the width, also where the help goes through a pipe; null where it says
     *     nothing: then a terminal is asked
     */
    static void set(CommandLine line, String columns) {
        if (columns != null && columns.matches("[1-9]\\d{0,3}")) {
            line.setUsageHelpWidth(Math.max(NARROWEST, Math.min(WIDEST, Integer.parseInt(columns))));
        } else {
            line.setUsageHelpAutoWidth(true);
        }
        sections(line);
    }

    private static void sections(CommandLine line) {
        line.getCommandSpec().usageMessage().sortOptions(false);
        Map<String, CommandLine.IHelpSectionRenderer> sections = line.getHelpSectionMap();
        sections.put(UsageMessageSpec.SECTION_KEY_OPTION_LIST, HelpLayout::options);
        line.setHelpSectionMap(sections);
        line.getSubcommands().values().forEach(HelpLayout::sections);
    }

    /** Those that are used often, or rarely, in the order of use; {@code --help} and {@code --version} end the first. */
    static List<OptionSpec> ordered(CommandSpec spec, boolean rare) {
        List<OptionSpec> options = new ArrayList<>(spec.options());
        options.removeIf(option -> option.hidden() || option.order() >= RARE != rare);
        options.sort(Comparator.comparingInt((OptionSpec option) -> isStandard(option) ? STANDARD : 0)
                .thenComparingInt(OptionSpec::order));
        return options;
    }

    static boolean isStandard(OptionSpec option) {
        return option.usageHelp() || option.versionHelp();
    }

    private static String options(Help help) {
        String often = list(help, ordered(help.commandSpec(), false));
        List<OptionSpec> rare = ordered(help.commandSpec(), true);
        return rare.isEmpty() ? often : often + System.lineSeparator() + "Rarely used:" + System.lineSeparator() + list(help, rare);
    }

    private static String list(Help help, List<OptionSpec> options) {
        Help.Layout layout = help.createDefaultLayout(options, List.of(), help.colorScheme());
        layout.addOptions(options, help.createDefaultParamLabelRenderer());
        return layout.toString();
    }
}
