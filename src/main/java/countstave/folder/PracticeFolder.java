package countstave.folder;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.ChartOptions;
import countstave.chart.SheetWriter;
import countstave.count.FeltNotes;
import countstave.count.PartCounts;
import countstave.count.Unplayed;
import countstave.files.Progress;
import countstave.files.SafeFile;
import countstave.files.SafeFolder;
import countstave.json.PracticeJson;
import countstave.musicxml.Annotator;
import countstave.musicxml.ScoreFile;
import countstave.page.PracticePage;
import countstave.practice.DayOptions;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.practice.StageWords;
import countstave.sound.Layer;
import countstave.text.PracticeIndex;
import countstave.text.PracticeText;
import countstave.voice.Speaker;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Fills a folder with everything there is to practise, wholly or not at all. */
public final class PracticeFolder {

    /** The practice page, which links to all the other files. */
    public static final String INDEX = "index.html";

    private static final SafeFolder.Large LARGE = new SafeFolder.Large("the guide tracks",
            "ask for fewer of them with --wav-tracks, or for --sound midi");

    private final CountedScore counted;
    private final List<PracticePlan> plans;
    private final int top;
    private final DayOptions days;

    /** Text into a file, in UTF-8. */
    private interface TextContent {
        void to(Writer out) throws IOException;
    }

    /**
     * @param top how many passages a part are written out
     * @param days what is set for the plan of days
     */
    public PracticeFolder(CountedScore counted, List<PracticePlan> plans, int top, DayOptions days) {
        this.counted = counted;
        this.plans = plans;
        this.top = top;
        this.days = days;
    }

    /**
     * The files, and last the page that links to them.
     *
     * @param force whether files that are there may be replaced
     * @return what the player is to be told of it
     * @throws countstave.score.ScoreException if something cannot be written; then nothing has changed
     */
    public List<String> write(Path folder, boolean force, Progress progress, CountingOptions counting, GuideFiles sound,
            ChartOptions page) {
        List<PracticeIndex.Entry> linked = new ArrayList<>();
        List<SafeFolder.Entry> entries = new ArrayList<>();
        for (FolderFile file : files(counting, sound, page, progress)) {
            entries.add(new SafeFolder.Entry(file.name(), file.bytes(), out -> {
                String more = file.content().writeTo(out);
                linked.add(new PracticeIndex.Entry(file.name(), file.label() + more, file.passage()));
            }));
        }
        List<String> notes = new ArrayList<>();
        Speaker.Choice says = sound.options().layers().contains(Layer.VOICE) ? sound.voice() : null;
        entries.add(new SafeFolder.Entry(INDEX, 0, text(out -> {
            StringBuilder links = new StringBuilder();
            PracticeIndex.write(plans, top, linked, page.names(), links);
            notes.addAll(new PracticePage(counted.score(), plans, page, says).write(links.toString(), out));
        })));
        // the file by which an earlier run is known
        SafeFile.checkFree(folder.resolve(INDEX), force);
        SafeFolder.write(folder, force, entries, LARGE, progress);
        // the page says all words, those of the tracks among them
        return notes.stream().distinct().toList();
    }

    private List<FolderFile> files(CountingOptions counting, GuideFiles sound, ChartOptions page, Progress progress) {
        String title = counted.score().title();
        List<FolderFile> files = new ArrayList<>();
        files.add(file("practice.pdf", page.phrases().text("folder.sheet"),
                out -> SheetWriter.write(plans, counted.score(), top, days, page, out)));
        files.add(file("practice.txt", page.phrases().text("folder.text"), text(out -> {
            String separator = "";
            for (PracticePlan plan : plans) {
                out.append(separator);
                PracticeText.write(title, plan, top, days, page.names(), out);
                separator = "\n";
            }
        })));
        files.add(file("practice.json", page.phrases().text("folder.data"),
                text(out -> PracticeJson.write(title, counted.score().source(), plans, top, days, out))));
        files.addAll(stages(counting, page));
        for (int part = 0; part < plans.size(); part++) {
            String prefix = plans.size() == 1 ? "" : "p" + (part + 1) + "-";
            files.addAll(sound.files(plans.get(part), top, prefix, page.names(), progress));
        }
        return files;
    }

    /** The score with the counts of each stage, as MusicXML. */
    private List<FolderFile> stages(CountingOptions counting, ChartOptions page) {
        List<FolderFile> files = new ArrayList<>();
        for (Stage stage : List.of(Stage.ALL, Stage.BEATS_AND_PLAYED, Stage.HALF, Stage.BEATS, Stage.STRONG_BEATS)) {
            int number = stage.ordinal() + 1;
            String name = "stage-" + number + "-" + stage.id() + (counted.file().isCompressed() ? ".mxl" : ".musicxml");
            files.add(file(name, page.phrases().text("folder.stage", String.valueOf(number), stage.title(page.phrases())), out -> {
                List<PartCounts> parts = plans.stream().map(plan -> StageWords.of(plan, stage)).toList();
                ScoreFile file = counted.file();
                file.write(Annotator.annotate(file.text(), parts, counting.selection(), Unplayed.ALL,
                        counting.felt() == FeltNotes.DOT, page.names()), file.isCompressed(), out);
            }));
        }
        return files;
    }

    private static FolderFile file(String name, String label, SafeFile.Content content) {
        return new FolderFile(name, label, null, 0, out -> {
            content.writeTo(out);
            return "";
        });
    }

    private static SafeFile.Content text(TextContent content) {
        return out -> {
            Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
            content.to(writer);
            writer.flush();
        };
    }
}
