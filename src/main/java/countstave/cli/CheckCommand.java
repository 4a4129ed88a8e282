package countstave.cli;

import countstave.CheckOptions;
import countstave.CheckedScore;
import countstave.batch.Inputs;
import countstave.batch.NamedScore;
import countstave.batch.ScoreList;
import countstave.batch.ScoreWork;
import countstave.files.Console;
import countstave.files.SafeFile;
import countstave.json.BaselineJson;
import countstave.json.FindingsJson;
import countstave.json.SarifWriter;
import countstave.musicxml.ScoreFile;
import countstave.spelling.CheckedFile;
import countstave.spelling.Finding;
import countstave.spelling.FindingsReport;
import countstave.spelling.KnownFindings;
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
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

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
            "  countstave check parts/ --write-baseline known.json",
            "  countstave check parts/ --baseline known.json     tells what is new since then",
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

    @Mixin
    RuleOptions rules;

    @Mixin
    BaselineOptions baselines;

    @Mixin
    LanguageOption language;

    @Option(names = "--format", order = 32, paramLabel = "FORMAT", defaultValue = "text",
            description = "text, json, or sarif (SARIF 2.1.0, for code hosts and editors). Default: ${DEFAULT-VALUE}.")
    Format format;

    @Option(names = "--all", order = 16, description = "Tell every finding. Else what one rule finds in one file more than three times is"
            + " told at its first three places, with how many more there are; json and sarif always hold all.")
    boolean all;

    @Option(names = {"-o", "--output"}, order = 50, paramLabel = "FILE", description = "Write the findings into this file instead of printing"
            + " them, in any format.")
    String output;

    @Option(names = "--force", order = 51, description = "Replace a file that is already there.")
    boolean force;

    @Option(names = "--rules", order = 17, description = "List all rules with an example each, and stop.")
    boolean list;

    @Override
    public Integer call() throws IOException {
        baselines.check(output);
        refuseWhatDoesNothing();
        if (baselines.target != null) {
            return writeBaseline();
        }
        if (output == null) {
            return write(parent.console.out());
        }
        int[] code = {0};
        SafeFile.write(Inputs.path(output), force, to -> code[0] = write(to));
        parent.console.out().println("wrote " + Console.clean(output));
        return code[0];
    }

    private void refuseWhatDoesNothing() {
        if (list) {
            for (Class<?> group : List.of(RuleOptions.class, BaselineOptions.class)) {
                GivenOptions.refuse(files.spec, group, "the check of scores", "leave it out, or --rules");
            }
            GivenOptions.refuse(files.spec, "--format", "findings", "leave it out, or --rules");
            GivenOptions.refuse(files.spec, "--all", "findings", "leave it out, or --rules");
        }
        if (baselines.target != null) {
            for (String option : List.of("--format", "--all", "--language")) {
                GivenOptions.refuse(files.spec, option, "findings that are told", "--write-baseline tells none; leave it out");
            }
        } else if (output == null) {
            GivenOptions.refuse(files.spec, "--force", "outputs", "name their place with -o");
        }
    }

    private int write(OutputStream to) throws IOException {
        Writer out = new BufferedWriter(new OutputStreamWriter(to, StandardCharsets.UTF_8));
        if (list) {
            RulesWriter.write(AllRules.list(), language.phrases(), out);
            out.flush();
            return 0;
        }
        ScoreList scores = files.list();
        CheckOptions options = rules.checked();
        Check check = new Check(options, switch (format) {
            case text -> new FindingsWriter(out, all, language.phrases());
            case json -> new FindingsJson(out);
            case sarif -> new SarifWriter(options.rules(), new Version().getVersion()[0].replace("countstave ", ""), out);
        }, baselines.known());
        int code = files.run(parent.console, scores, check);
        check.report.end();
        out.flush();
        if (check.gone > 0 && rules.tellEverything()) {
            parent.console.tell(check.gone + (check.gone == 1 ? " finding" : " findings") + " of the baseline "
                    + (check.gone == 1 ? "is" : "are") + " gone; --write-baseline writes it anew");
        }
        return code != 0 ? code : check.found ? FOUND : 0;
    }

    private int writeBaseline() {
        ScoreList scores = files.list();
        CheckOptions options = rules.checked();
        int[] code = {0};
        long[] known = {0};
        SafeFile.write(Inputs.path(baselines.target), force, to -> {
            Writer out = new BufferedWriter(new OutputStreamWriter(to, StandardCharsets.UTF_8));
            BaselineJson baseline = new BaselineJson(out);
            code[0] = files.run(parent.console, scores, new Checking(options) {
                @Override
                public void deliver(NamedScore score, byte[] printed, List<Finding> findings, String problem, PrintStream none)
                        throws IOException {
                    if (problem == null) {
                        baseline.file(baselines.nameOf(score), findings);
                        known[0] += findings.size();
                    }
                }
            });
            baseline.end();
            out.flush();
        });
        parent.console.out().println("wrote " + Console.clean(baselines.target) + ": " + known[0]
                + (known[0] == 1 ? " finding is known" : " findings are known"));
        parent.console.out().flush();
        return code[0];
    }

    /** Scores are checked side by side and reported one after another. */
    private abstract class Checking implements ScoreWork<List<Finding>> {

        private final CheckOptions options;

        Checking(CheckOptions options) {
            this.options = options;
        }

        @Override
        public List<Finding> run(NamedScore score, ScoreFile file, Console console) {
            CheckedScore checked = CheckedScore.of(file, score.name(), options);
            checked.warnings().forEach(warning -> score.warn(console, warning));
            return checked.findings();
        }

        @Override
        public String results() {
            String place = baselines.target != null ? baselines.target : output;
            return place == null ? null : "written to " + place;
        }
    }

    private final class Check extends Checking {

        private final FindingsReport report;
        private final KnownFindings known;
        private boolean found;
        private int gone;

        Check(CheckOptions options, FindingsReport report, KnownFindings known) {
            super(options);
            this.report = report;
            this.known = known;
        }

        @Override
        public void deliver(NamedScore score, byte[] printed, List<Finding> findings, String problem, PrintStream out)
                throws IOException {
            if (problem != null) {
                report.file(new CheckedFile(score.name(), List.of(), problem));
                return;
            }
            CheckedFile told = known == null ? new CheckedFile(score.name(), findings, null) : compared(score, findings);
            report.file(told);
            found |= !told.findings().isEmpty();
        }

        private CheckedFile compared(NamedScore score, List<Finding> findings) {
            String name = baselines.nameOf(score);
            Map<Boolean, List<Finding>> byKnown = findings.stream()
                    .collect(Collectors.partitioningBy(finding -> known.has(name, finding)));
            gone += known.gone(name, findings);
            return new CheckedFile(score.name(), byKnown.get(false), byKnown.get(true), null);
        }
    }
}
