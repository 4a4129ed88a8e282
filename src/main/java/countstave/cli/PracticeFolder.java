package countstave.cli;

import countstave.CountedScore;
import countstave.chart.ChartOptions;
import countstave.chart.SheetWriter;
import countstave.count.PartCounts;
import countstave.count.Unplayed;
import countstave.json.PracticeJson;
import countstave.musicxml.Annotator;
import countstave.practice.Passage;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.practice.StageWords;
import countstave.score.ScoreException;
import countstave.score.Selection;
import countstave.text.PracticeIndex;
import countstave.text.PracticeText;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Writes everything there is to practise into a folder. */
final class PracticeFolder {

    static final String INDEX = "index.html";
    private static final long MEGABYTE = 1_000_000;

    private final Path folder;
    private final boolean force;
    private final Progress progress;

    /** Text into a file, in UTF-8. */
    private interface TextContent {
        void to(Appendable out) throws IOException;
    }

    /** @param force whether files that are there may be replaced */
    PracticeFolder(Path folder, boolean force, Progress progress) {
        this.folder = folder;
        this.force = force;
        this.progress = progress;
    }

    /**
     * Plan as JSON and text → guide tracks → page with links to all of it.
     *
     * @param top how many passages a part are written out
     * @param tracks how many of them get guide tracks
     * @throws ScoreException if something cannot be written
     */
    void write(CountedScore counted, Selection selection, List<PracticePlan> plans, int top, int tracks,
            GuideFiles sound, ChartOptions page) {
        String title = counted.score().title();
        makeFolder();
        checkSpace(plans, Math.min(top, tracks), sound);
        List<PracticeIndex.Entry> files = new ArrayList<>();
        progress.tell("practice.pdf");
        SafeFile.write(folder.resolve("practice.pdf"), force,
                out -> SheetWriter.write(plans, counted.score(), top, page, out));
        files.add(new PracticeIndex.Entry("practice.pdf", "the practice sheet, to print", null));
        text("practice.txt", out -> {
            for (PracticePlan plan : plans) {
                PracticeText.write(title, plan, top, true, out);
            }
        });
        files.add(new PracticeIndex.Entry("practice.txt", "the plan as text", null));
        text("practice.json", out -> PracticeJson.write(title, counted.score().source(), plans, out));
        files.add(new PracticeIndex.Entry("practice.json", "the plan as data", null));
        files.addAll(stages(counted, selection, plans));
        for (int part = 0; part < plans.size(); part++) {
            String prefix = plans.size() == 1 ? "" : "p" + (part + 1) + "-";
            for (Passage passage : practised(plans.get(part), Math.min(top, tracks))) {
                files.addAll(sound.write(passage, folder, prefix + name(passage), progress));
            }
        }
        text(INDEX, out -> PracticeIndex.write(title, plans, top, files, out));
        progress.done();
    }

    /** The score with the counts of each stage, as MusicXML. */
    private List<PracticeIndex.Entry> stages(CountedScore counted, Selection selection, List<PracticePlan> plans) {
        List<PracticeIndex.Entry> files = new ArrayList<>();
        for (Stage stage : List.of(Stage.ALL, Stage.BEATS_AND_PLAYED, Stage.BEATS, Stage.STRONG_BEATS)) {
            int number = stage.ordinal() + 1;
            String name = "stage-" + number + "-" + stage.id() + (counted.file().isCompressed() ? ".mxl" : ".musicxml");
            progress.tell(name);
            List<PartCounts> parts = plans.stream().map(plan -> StageWords.of(plan, stage)).toList();
            String text = Annotator.annotate(counted.file().text(), parts, selection, Unplayed.ALL);
            byte[] bytes = counted.file().withText(text).toBytes();
            SafeFile.write(folder.resolve(name), force, out -> out.write(bytes));
            files.add(new PracticeIndex.Entry(name, "the score at stage " + number + ": " + stage.title(), null));
        }
        return files;
    }

    private static List<Passage> practised(PracticePlan plan, int most) {
        return plan.different().stream().limit(most).toList();
    }

    /** {@code 01-bars-9-16-}: letters, digits and hyphens only, whatever the bars are called. */
    private static String name(Passage passage) {
        String numbers = passage.stretch().numbers().replaceAll("[^A-Za-z0-9]+", "-");
        String safe = numbers.substring(0, Math.min(20, numbers.length()));
        return (passage.rank() < 10 ? "0" : "") + passage.rank() + "-bars-" + safe + "-";
    }

    private void makeFolder() {
        String name = Console.clean(folder.toString());
        try {
            if (Files.exists(folder) && !Files.isDirectory(folder)) {
                throw new ScoreException("cannot write into " + name + ": it is a file; name a folder with -o");
            }
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new ScoreException("cannot make the folder " + name + " (" + Console.clean(e.getMessage())
                    + "); choose another place with -o", e);
        }
        // asked before anything is worked out: a folder of an earlier run is replaced as a whole or not at all
        SafeFile.checkFree(folder.resolve(INDEX), force);
    }

    /** Better to know before than after an hour of writing. */
    private void checkSpace(List<PracticePlan> plans, int tracks, GuideFiles sound) {
        long need = 0;
        for (PracticePlan plan : plans) {
            for (Passage passage : practised(plan, tracks)) {
                need += sound.bytes(passage);
            }
        }
        try {
            long free = Files.getFileStore(folder).getUsableSpace();
            if (free >= 0 && need > free) {
                throw new ScoreException(Console.clean(folder.toString()) + ": the guide tracks need " + (need / MEGABYTE + 1)
                        + " MB, but only " + free / MEGABYTE
                        + " MB are free; ask for fewer passages with --tracks, or for --sound midi");
            }
        } catch (IOException e) {
            // a file system that does not say how much is free is tried all the same
        }
    }

    private void text(String name, TextContent content) {
        progress.tell(name);
        SafeFile.write(folder.resolve(name), force, out -> {
            Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
            content.to(writer);
            writer.flush();
        });
    }
}
