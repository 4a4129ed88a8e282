package countstave.cli;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.batch.NamedScore;
import countstave.batch.Naming;
import countstave.batch.OutputNames;
import countstave.batch.ScoreList;
import countstave.batch.Targets;
import countstave.chart.ChartOptions;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.count.Unplayed;
import countstave.files.Console;
import countstave.files.FileNames;
import countstave.files.Progress;
import countstave.files.SafeFile;
import countstave.folder.GuideFiles;
import countstave.folder.PracticeFolder;
import countstave.json.PracticeJson;
import countstave.page.PracticePage;
import countstave.practice.DayOptions;
import countstave.practice.PracticeOptions;
import countstave.practice.PracticePlan;
import countstave.score.ScoreException;
import countstave.score.Warning;
import countstave.text.PracticeText;
import countstave.voice.Speaker;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.StringWriter;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** {@code countstave practice}: what to practise, in which order, how fast, and with which click. */
@Command(name = "practice", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = {
            "Finds the passages whose counts are hardest and makes a plan for each: the places where the count changes as"
                    + " growing loops, tempo steps, counts that are thinned in stages, places to breathe, and guide tracks"
                    + " whose click follows the count; and a plan of days.",
            "In WAV files a voice says the counts. --voice also chooses who speaks: a language such as de, es or fr, and low or"
                    + " high; none for nobody. Without a language it is that of the words.",
            "Without -o the plan is printed; with it a folder is filled: the plan as PDF, text and data, the score"
                    + " with the counts of each stage, guide tracks, and a page that links to all of them. It is made if needed;"
                    + " each of many scores gets a folder of its own in it.",
            "That page, index.html, is the practice page: the chart with a click and a voice, in any browser, from one file. With"
                    + " -o page.html it is written alone."},
        footer = {
            "",
            "Examples:",
            "  countstave practice chart.musicxml --bars 9-16",
            "  countstave practice chart.musicxml -o practice-folder",
            "  countstave practice chart.musicxml -o page.html",
            "  countstave practice chart.mxl -o weeks --minutes 20 --start 2026-12-01",
            "  countstave practice chart.mxl -o gaps --click 2,4 --silent 1/4 --at 40,50,63",
            "  countstave practice chart.mxl -o slow --tempo 72 --place 2,4=+1/64",
            "  countstave practice chart.mxl -o ueben --and de --voice high",
            "",
            "Begin with a low volume in headphones; stop when you feel light-headed or something hurts."})
final class PracticeCommand implements Callable<Integer> {

    enum Format { text, json }

    private static final String PAGE = ".html";

    private static final List<String> MY_LIMIT = List.of(
            "How to find your own voice limit",
            "",
            "1. Sit, breathe calmly, and set a stop watch.",
            "2. Say \"pa ta ka pa ta ka ...\" as fast as every syllable stays clear, on one breath, for five seconds.",
            "   Tap a finger on every \"pa\", or record yourself and count afterwards.",
            "3. Syllables a second = 3 x number of \"pa\" / 5. Three tries, a rest after each; take the middle one.",
            "4. Take a tenth off, since counting has to leave room for playing, and give it with --voice-limit.",
            "",
            "Young adults say 6.57 a second on average (standard deviation 0.84, 106 speakers); 5.4 was the lower",
            "bound of the norm in another study (mean 6.2). The default is 6.5; sources: docs/practice.md.",
            "Stop at once when you feel light-headed or your jaw or throat hurts.");

    @ParentCommand
    Countstave parent;

    @Mixin
    OutputOptions files;

    @Spec
    CommandSpec spec;

    @Option(names = "--format", order = 32, paramLabel = "FORMAT", defaultValue = "text",
            description = "What is printed without -o: text, or json for other programs. Default: ${DEFAULT-VALUE}.")
    Format format;

    @Option(names = "--top", order = 35, paramLabel = "N", defaultValue = "10",
            description = "How many passages of a part are written out, the hardest first. Default: ${DEFAULT-VALUE}.")
    int top;

    @Option(names = "--breath", order = 112, paramLabel = "SECONDS", defaultValue = "6",
            description = "Longest time of speaking without a breath mark, 1 to 60. Default: ${DEFAULT-VALUE}, an"
                    + " assumption.")
    BigDecimal breath;

    @Option(names = "--ascii", order = 130, description = "Print with plain ASCII signs, for terminals without note symbols.")
    boolean ascii;

    @Option(names = "--my-limit", order = 36, description = "Explain how to find your own --voice-limit, and stop.")
    boolean myLimit;

    @Mixin
    SoundOptions sound;

    @Mixin
    VoiceOptions voice;

    @Mixin
    DayChoice days;

    @Mixin
    PageOptions page;

    @Mixin
    SharedOptions shared;

    /** Of many scores, each gets a folder by its own name; the page that links to all of it is written last. */
    private static final class Folders implements Naming {
        @Override
        public String inFolder(NamedScore score, String stem) {
            return stem + "/" + PracticeFolder.INDEX;
        }

        @Override
        public Path beside(NamedScore score, String stem) {
            return null;
        }
    }

    @Override
    public Integer call() throws IOException {
        if (myLimit) {
            MY_LIMIT.forEach(parent.console.out()::println);
            parent.console.out().flush();
            return 0;
        }
        files.check();
        ScoreList list = files.list();
        if (top < 1) {
            throw new ParameterException(spec.commandLine(), "--top goes from 1 up, not " + top);
        }
        Speaker.Choice speaker = voice.choice(shared.voices);
        GuideFiles guides = sound.files(speaker, voice.isSilent(), shared.planOptions().voiceLimit());
        PracticeOptions options = new PracticeOptions(shared.planOptions().voiceLimit(), breath,
                sound.at.stream().distinct().toList());
        DayOptions dayOptions = days.options(files.output != null);
        CountingOptions counting = shared.counting(list.many());
        if (Targets.isBeside(files.output)) {
            throw new ScoreException("a practice folder is not written beside a score: name a folder with -o"
                    + " (./beside if it is called so)");
        }
        PracticeUse use = new PracticeUse(spec, sound, voice);
        if (files.output == null) {
            page.refuse("name a folder with -o");
            use.printed(files, format == Format.json);
        } else if (isPage(files.output)) {
            use.page();
            Targets targets = Targets.of(list, files.output, new OutputNames(null, PAGE), parent.console);
            Speaker.Choice says = voice.isSilent() ? null : speaker;
            ChartOptions chart = page.chart(Unplayed.ALL, shared.language.phrases());
            return files.run(parent.console, list, targets.work(files.skipExisting,
                    (score, file, console) -> page(score, SharedOptions.count(score, file, console, counting), targets, options, chart, says, console)));
        } else {
            use.folder();
            ChartOptions sheet = page.sheet(shared.language.phrases());
            // one score's folder is the one that is named
            Targets targets = Targets.of(list, list.many() ? files.output
                    : files.output + "/" + PracticeFolder.INDEX, new Folders(), parent.console);
            return files.run(parent.console, list, targets.work(files.skipExisting, (score, file, console) -> {
                Path folder = targets.of(score).getParent();
                Progress progress = list.many() ? new Progress(console.err(), false) : Progress.onTerminal(console.err());
                CountedScore counted = SharedOptions.count(score, file, console, counting);
                List<PracticePlan> plans = plans(counted, options);
                guides.options().click().check(plans);
                List<String> notes = new PracticeFolder(page.headed(counted, score, console), plans, top, dayOptions)
                        .write(folder, files.force, progress, counting, guides, sheet);
                notes.forEach(note -> score.warn(console, Warning.of(note)));
                console.out().println("wrote " + FileNames.shown(folder.resolve(PracticeFolder.INDEX)));
            }));
        }
        return files.print(parent.console, list, format == Format.json, (score, file, console) -> {
            CountedScore counted = SharedOptions.count(score, file, console, counting);
            List<PracticePlan> plans = plans(counted, options);
            guides.options().click().check(plans);
            print(counted, plans, dayOptions, console.out());
            return null;
        });
    }

    private static boolean isPage(String output) {
        return output.toLowerCase(Locale.ROOT).endsWith(PAGE);
    }

    /** Writes the practice page alone. */
    private void page(NamedScore score, CountedScore plain, Targets targets, PracticeOptions options, ChartOptions chart,
            Speaker.Choice says, Console console) {
        SafeFile.checkFree(targets.of(score), files.force);
        CountedScore counted = page.headed(plain, score, console);
        PracticePage written = new PracticePage(counted.score(), plans(counted, options), chart, says);
        List<String> notes = new ArrayList<>();
        targets.write(score, files.force, out -> {
            Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
            notes.addAll(written.write("", text));
            text.flush();
        }, console);
        notes.forEach(note -> score.warn(console, Warning.of(note)));
    }

    private static List<PracticePlan> plans(CountedScore counted, PracticeOptions options) {
        List<PracticePlan> plans = new ArrayList<>();
        // a part that rests is left out while others play; if all of them rest, the first one says so
        for (PartCounts part : counted.playing()) {
            plans.add(PracticePlan.of(part, options));
        }
        if (plans.isEmpty()) {
            throw new ScoreException("no part has anything to practise; check --part");
        }
        return plans;
    }

    private void print(CountedScore counted, List<PracticePlan> plans, DayOptions dayOptions, PrintStream to) throws IOException {
        StringWriter out = new StringWriter();
        if (format == Format.json) {
            PracticeJson.write(counted.score().title(), counted.score().source(), plans, top, dayOptions, out);
        } else {
            for (PracticePlan plan : plans) {
                out.append(plan == plans.get(0) ? "" : "\n");
                PracticeText.write(counted.score().title(), plan, top, dayOptions, new NoteNames(!ascii, shared.language.phrases()), out);
            }
        }
        to.print(out);
        to.flush();
    }
}
