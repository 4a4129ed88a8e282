package countstave.cli;

import countstave.CheckOptions;
import countstave.CheckedScore;
import countstave.batch.Inputs;
import countstave.batch.NamedScore;
import countstave.batch.ScoreList;
import countstave.batch.ScoreWork;
import countstave.files.Console;
import countstave.files.SafeFile;
import countstave.json.FindingsJson;
import countstave.json.SarifWriter;
import countstave.musicxml.ScoreFile;
import countstave.score.ScoreException;
import countstave.score.Warning;
import countstave.spelling.About;
import countstave.spelling.CheckedFile;
import countstave.spelling.Finding;
import countstave.spelling.FindingsReport;
import countstave.spelling.Rule;
import countstave.spelling.RuleSettings;
import countstave.spelling.Severity;
import countstave.spelling.rules.AllRules;
import countstave.text.FindingsWriter;
import countstave.text.RulesWriter;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Model.CommandSpec;

/** {@code countstave check}: says where a rhythm is wrong, hard to read or could be simpler. */
@Command(name = "check", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = {
            "Looks for what makes a rhythm wrong, or needlessly hard to count, and says what to write instead. The"
                    + " scores are not changed."},
        footer = {
            "",
            "Examples:",
            "  countstave check chart.musicxml",
            "  countstave check parts/ --least warning --all",
            "  countstave check chart.mxl --without beam-against-meter",
            "  countstave check parts/ --format sarif --settings house.rules -o check.sarif",
            "",
            "Settings have one rule a line, such as: tuplet-needless = off   (or error, warning, hint); for one place:",
            "  beat-hidden in drums.musicxml bar 12 = off",
            "In the score itself a comment in the bar does the same for its part: <!-- countstave: ignore beat-hidden -->",
            "",
            "Exit codes: 0 nothing found, 1 something found, 2 wrong usage or unreadable input."})
final class CheckCommand implements Callable<Integer> {

    private static final int FOUND = 1;

    enum Format { text, json, sarif }

    @ParentCommand
    Countstave parent;

    @Mixin
    ScoreOptions files;

    @Spec
    CommandSpec spec;

    @Option(names = "--format", order = 32, paramLabel = "FORMAT", defaultValue = "text",
            description = "text, json, or sarif (SARIF 2.1.0, for code hosts and editors). Default: ${DEFAULT-VALUE}.")
    Format format;

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

    @Option(names = "--all", order = 16, description = "Tell every finding. Else what one rule finds in one file more than three times is"
            + " told at its first three places, with how many more there are; json and sarif always hold all.")
    boolean all;

    @Option(names = "--settings", order = 14, paramLabel = "FILE", description = "A house's own levels for the rules, and single places that"
            + " are left alone.")
    String settings;

    @Option(names = {"-o", "--output"}, order = 50, paramLabel = "FILE", description = "Write the findings into this file instead of printing"
            + " them, in any format.")
    String output;

    @Option(names = "--force", order = 51, description = "Replace a file that is already there.")
    boolean force;

    @Option(names = "--rules", order = 17, description = "List all rules with an example each, and stop.")
    boolean list;

    @Override
    public Integer call() throws IOException {
        if (output == null) {
            return write(parent.console.out());
        }
        Path target = Inputs.path(output);
        SafeFile.checkFree(target, force);
        int[] code = {0};
        SafeFile.write(target, force, to -> code[0] = write(to));
        parent.console.out().println("wrote " + Console.clean(output));
        return code[0];
    }

    private int write(OutputStream to) throws IOException {
        Writer out = new BufferedWriter(new OutputStreamWriter(to, StandardCharsets.UTF_8));
        if (list) {
            RulesWriter.write(AllRules.list(), out);
            out.flush();
            return 0;
        }
        ScoreList scores = files.list();
        Severity lowest = Severity.ofWord(least.toLowerCase(Locale.ROOT));
        if (lowest == null) {
            throw new ParameterException(spec.commandLine(), "--least is error, warning or hint, not '" + least + "'");
        }
        CheckOptions options = new CheckOptions(rules(), AllRules.ids(), settings(), about, lowest);
        Check check = new Check(options, switch (format) {
            case text -> new FindingsWriter(out, all);
            case json -> new FindingsJson(out);
            case sarif -> new SarifWriter(options.rules(), new Version().getVersion()[0].replace("countstave ", ""), out);
        }, output == null ? null : "written to " + output);
        int code = files.run(parent.console, scores, check);
        check.report.end();
        out.flush();
        return code != 0 ? code : check.found ? FOUND : 0;
    }

    /** Scores are checked side by side and reported one after another. */
    private static final class Check implements ScoreWork<List<Finding>> {

        private final CheckOptions options;
        private final FindingsReport report;
        private boolean found;

        private final String results;

        Check(CheckOptions options, FindingsReport report, String results) {
            this.options = options;
            this.report = report;
            this.results = results;
        }

        @Override
        public String results() {
            return results;
        }

        @Override
        public List<Finding> run(NamedScore score, ScoreFile file, Console console) {
            CheckedScore checked = CheckedScore.of(file, score.name(), options);
            checked.warnings().forEach(line -> score.warn(console, new Warning(line, "what is to be left alone and is not"
                    + " found, in " + Warning.SCORES + ": take the comments or lines out")));
            return checked.findings();
        }

        @Override
        public void deliver(NamedScore score, byte[] printed, List<Finding> findings, String problem, PrintStream out)
                throws IOException {
            report.file(new CheckedFile(score.name(), problem == null ? findings : List.of(), problem));
            found |= problem == null && !findings.isEmpty();
        }
    }

    private List<Rule> rules() {
        Set<String> known = AllRules.ids();
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

    private RuleSettings settings() {
        if (settings == null) {
            return RuleSettings.DEFAULT;
        }
        try {
            return RuleSettings.parse(settings, Files.readString(Inputs.path(settings), StandardCharsets.UTF_8), AllRules.ids());
        } catch (IOException e) {
            throw new ScoreException(settings + ": these settings cannot be read; check the name and that it is a text"
                    + " in UTF-8", e);
        }
    }
}
