package countstave.cli;

import countstave.json.PracticeJson;
import countstave.practice.Passage;
import countstave.practice.PracticePlan;
import countstave.score.ScoreException;
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

    private static final long MEGABYTE = 1_000_000;

    private final Path folder;
    private final Progress progress;

    /** Text into a file, in UTF-8. */
    private interface TextContent {
        void to(Appendable out) throws IOException;
    }

    PracticeFolder(Path folder, Progress progress) {
        this.folder = folder;
        this.progress = progress;
    }

    /**
     * Plan as JSON and text → guide tracks → page with links to all of it.
     *
     * @param top how many passages a part are written out
     * @param tracks how many of them get guide tracks
     * @throws ScoreException if something cannot be written
     */
    void write(String title, String source, List<PracticePlan> plans, int top, int tracks, GuideFiles sound) {
        WholeFile.folder(folder);
        checkSpace(plans, Math.min(top, tracks), sound);
        List<PracticeIndex.Entry> files = new ArrayList<>();
        text("practice.txt", out -> {
            for (PracticePlan plan : plans) {
                PracticeText.write(title, plan, top, true, out);
            }
        });
        files.add(new PracticeIndex.Entry("practice.txt", "the plan as text", null));
        text("practice.json", out -> PracticeJson.write(title, source, plans, out));
        files.add(new PracticeIndex.Entry("practice.json", "the plan as data", null));
        for (int part = 0; part < plans.size(); part++) {
            String prefix = plans.size() == 1 ? "" : "p" + (part + 1) + "-";
            for (Passage passage : practised(plans.get(part), Math.min(top, tracks))) {
                files.addAll(sound.write(passage, folder, prefix + name(passage), progress));
            }
        }
        text("index.html", out -> PracticeIndex.write(title, plans, top, files, out));
        progress.done();
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
                throw new ScoreException(folder + ": the guide tracks need " + (need / MEGABYTE + 1)
                        + " MB, but only " + free / MEGABYTE
                        + " MB are free; ask for fewer passages with --tracks, or for --sound midi");
            }
        } catch (IOException e) {
            // a file system that does not say how much is free is tried all the same
        }
    }

    private void text(String name, TextContent content) {
        progress.tell(name);
        WholeFile.write(folder.resolve(name), out -> {
            Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
            content.to(writer);
            writer.flush();
        });
    }
}
