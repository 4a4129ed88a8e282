package countstave.cli;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.ChartOptions;
import countstave.chart.SheetWriter;
import countstave.count.FeltNotes;
import countstave.count.PartCounts;
import countstave.count.Unplayed;
import countstave.json.PracticeJson;
import countstave.musicxml.Annotator;
import countstave.musicxml.ScoreFile;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.practice.StageWords;
import countstave.score.ScoreException;
import countstave.text.PracticeIndex;
import countstave.text.PracticeText;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Fills a folder with everything there is to practise, wholly or not at all: the files are written beside each other in
 * a folder of their own and moved to their place when the last one is finished.
 */
final class PracticeFolder {

    static final String INDEX = "index.html";
    private static final long MEGABYTE = 1_000_000;

    private final CountedScore counted;
    private final List<PracticePlan> plans;
    private final int top;

    /** Text into a file, in UTF-8. */
    private interface TextContent {
        void to(Appendable out) throws IOException;
    }

    /** @param top how many passages a part are written out */
    PracticeFolder(CountedScore counted, List<PracticePlan> plans, int top) {
        this.counted = counted;
        this.plans = plans;
        this.top = top;
    }

    /**
     * Which files → is there room → write all → move all.
     *
     * @param force whether files that are there may be replaced
     * @throws ScoreException if something cannot be written; then nothing has changed
     */
    void write(Path folder, boolean force, Progress progress, CountingOptions counting, GuideFiles sound, ChartOptions page) {
        List<FolderFile> files = files(counting, sound, page);
        checkFree(folder, force, files);
        List<Path> made = new ArrayList<>();
        Path beside = null;
        try {
            beside = make(folder, made);
            checkSpace(folder, files);
            List<PracticeIndex.Entry> entries = new ArrayList<>();
            for (FolderFile file : files) {
                progress.tell(file.name());
                String more = write(file.content(), beside.resolve(file.name()), folder.resolve(file.name()), progress);
                entries.add(new PracticeIndex.Entry(file.name(), file.label() + more, file.passage()));
            }
            write(text(out -> PracticeIndex.write(counted.score().title(), plans, top, entries, out)),
                    beside.resolve(INDEX), folder.resolve(INDEX), progress);
            // somebody else may have put a file there meanwhile
            checkFree(folder, force, files);
            move(files, beside, folder);
        } finally {
            progress.done();
            Unfinished.discardFolder(beside, made);
        }
    }

    private List<FolderFile> files(CountingOptions counting, GuideFiles sound, ChartOptions page) {
        String title = counted.score().title();
        List<FolderFile> files = new ArrayList<>();
        files.add(new FolderFile("practice.pdf", "the practice sheet, to print", null, 0, (out, progress) -> {
            SheetWriter.write(plans, counted.score(), top, page, out);
            return "";
        }));
        files.add(new FolderFile("practice.txt", "the plan as text", null, 0, text(out -> {
            String separator = "";
            for (PracticePlan plan : plans) {
                out.append(separator);
                PracticeText.write(title, plan, top, true, out);
                separator = "\n";
            }
        })));
        files.add(new FolderFile("practice.json", "the plan as data", null, 0,
                text(out -> PracticeJson.write(title, counted.score().source(), plans, out))));
        files.addAll(stages(counting));
        for (int part = 0; part < plans.size(); part++) {
            String prefix = plans.size() == 1 ? "" : "p" + (part + 1) + "-";
            files.addAll(sound.files(plans.get(part), top, prefix));
        }
        return files;
    }

    /** The score with the counts of each stage, as MusicXML. */
    private List<FolderFile> stages(CountingOptions counting) {
        List<FolderFile> files = new ArrayList<>();
        for (Stage stage : List.of(Stage.ALL, Stage.BEATS_AND_PLAYED, Stage.BEATS, Stage.STRONG_BEATS)) {
            int number = stage.ordinal() + 1;
            String name = "stage-" + number + "-" + stage.id() + (counted.file().isCompressed() ? ".mxl" : ".musicxml");
            files.add(new FolderFile(name, "the score at stage " + number + ": " + stage.title(), null, 0,
                    (out, progress) -> {
                        List<PartCounts> parts = plans.stream().map(plan -> StageWords.of(plan, stage)).toList();
                        ScoreFile file = counted.file();
                        file.write(Annotator.annotate(file.text(), parts, counting.selection(), Unplayed.ALL,
                                counting.felt() == FeltNotes.DOT), file.isCompressed(), out);
                        return "";
                    }));
        }
        return files;
    }

    /** Asked before anything is worked out: a folder of an earlier run is replaced as a whole or not at all. */
    private static void checkFree(Path folder, boolean force, List<FolderFile> files) {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new ScoreException("cannot write into " + Console.clean(folder.toString())
                    + ": it is a file; name a folder with -o");
        }
        SafeFile.checkFree(folder.resolve(INDEX), force);
        for (FolderFile file : files) {
            SafeFile.checkFree(folder.resolve(file.name()), force);
        }
    }

    /** @param made gets the folders that had to be made */
    private static Path make(Path folder, List<Path> made) {
        try {
            return Unfinished.beginFolder(folder, made);
        } catch (IOException e) {
            throw new ScoreException("cannot make the folder " + Console.clean(folder.toString()) + " ("
                    + Console.clean(String.valueOf(e.getMessage())) + "); choose another place with -o", e);
        }
    }

    /** Better to know before than after an hour of writing. */
    private static void checkSpace(Path folder, List<FolderFile> files) {
        long need = files.stream().mapToLong(FolderFile::bytes).sum();
        try {
            long free = Files.getFileStore(folder).getUsableSpace();
            if (free >= 0 && need > free) {
                throw new ScoreException(Console.clean(folder.toString()) + ": the guide tracks need "
                        + (need / MEGABYTE + 1) + " MB, but only " + free / MEGABYTE
                        + " MB are free; ask for fewer of them with --wav-tracks, or for --sound midi");
            }
        } catch (IOException e) {
            // a file system that does not say how much is free is tried all the same
        }
    }

    /** @param target what the user knows the file as */
    private static String write(FolderFile.Content content, Path file, Path target, Progress progress) {
        try (OutputStream out = Unfinished.open(file)) {
            return content.writeTo(out, progress);
        } catch (IOException e) {
            throw SafeFile.failed(target, e);
        }
    }

    /** The page with the links comes last. */
    private static void move(List<FolderFile> files, Path from, Path to) {
        List<String> names = new ArrayList<>(files.stream().map(FolderFile::name).toList());
        names.add(INDEX);
        try {
            Unfinished.finish(from, to, names);
        } catch (IOException e) {
            throw SafeFile.failed(to, e);
        }
    }

    private static FolderFile.Content text(TextContent content) {
        return (out, progress) -> {
            Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
            content.to(writer);
            writer.flush();
            return "";
        };
    }
}
