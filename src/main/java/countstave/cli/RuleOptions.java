package countstave.cli;

import countstave.CheckOptions;
import countstave.batch.Inputs;
import countstave.score.ScoreException;
import countstave.spelling.About;
import countstave.spelling.Rule;
import countstave.spelling.RuleSettings;
import countstave.spelling.Severity;
import countstave.spelling.rules.AllRules;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Which rules of {@code check} look, and what of their findings is told. */
final class RuleOptions {

    @Spec(Spec.Target.MIXEE)
    CommandSpec spec;

    @Option(names = "--rule", order = 10, completionCandidates = Candidates.RuleNames.class, paramLabel = "RULE", split = ",",
            description = "Use this rule only. May be repeated.")
    List<String> only = new ArrayList<>();

    @Option(names = "--without", order = 11, completionCandidates = Candidates.RuleNames.class, paramLabel = "RULE", split = ",",
            description = "Leave this rule out. May be repeated.")
    List<String> without = new ArrayList<>();

    @Option(names = "--least", order = 12, completionCandidates = Candidates.Levels.class, paramLabel = "LEVEL", defaultValue = "hint",
            description = "Tell what is as bad as this, or worse: error, warning or hint. Default: ${DEFAULT-VALUE}.")
    String least;

    @Option(names = "--about", order = 13, paramLabel = "notation|file",
            description = "Tell only what a reader of the page stumbles over (notation), or only what the program that wrote the"
                    + " file contradicts itself in, and the page does not show (file). Default: both.")
    About about;

    @Option(names = "--settings", order = 14, paramLabel = "FILE", description = "A house's own levels for the rules, and single places that"
            + " are left alone.")
    String settings;

    /**
     * What is looked for.
     *
     * @throws ParameterException if there is no such rule or level
     */
    CheckOptions checked() {
        Severity lowest = Severity.ofWord(least.toLowerCase(Locale.ROOT));
        if (lowest == null) {
            throw new ParameterException(spec.commandLine(), "--least is error, warning or hint, not '" + least + "'");
        }
        Set<String> known = AllRules.ids();
        return new CheckOptions(rules(known), known, settings(known), about, lowest);
    }

    /** Whether nothing that the rules find is left untold. */
    boolean tellEverything() {
        return only.isEmpty() && without.isEmpty() && about == null && least.equalsIgnoreCase(Severity.HINT.word());
    }

    private List<Rule> rules(Set<String> known) {
        for (String rule : only) {
            require(rule, known);
        }
        without.forEach(rule -> require(rule, known));
        return AllRules.list().stream().filter(r -> only.isEmpty() || only.contains(r.info().id()))
                .filter(r -> !without.contains(r.info().id())).collect(Collectors.toList());
    }

    private void require(String rule, Set<String> known) {
        if (!known.contains(rule)) {
            throw new ParameterException(spec.commandLine(),
                    "there is no rule '" + rule + "'" + RuleSettings.nearest(rule, new TreeSet<>(known)));
        }
    }

    private RuleSettings settings(Set<String> known) {
        if (settings == null) {
            return RuleSettings.DEFAULT;
        }
        try {
            return RuleSettings.parse(settings, Files.readString(Inputs.path(settings), StandardCharsets.UTF_8), known);
        } catch (IOException e) {
            throw new ScoreException(settings + ": these settings cannot be read; check the name and that it is a text"
                    + " in UTF-8", e);
        }
    }
}
