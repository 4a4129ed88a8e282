package countstave.cli;

import countstave.batch.ScoreList;
import countstave.musicxml.OwnMarks;
import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.Part;
import countstave.score.PartTimeline;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.ScoreException;
import countstave.score.Selection;
import countstave.score.Timeline;
import countstave.text.PartsWriter;
import countstave.time.TimeOverflowException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.ParentCommand;

/** {@code countstave parts}: lists the parts, for whoever is to choose among them. */
@Command(name = "parts", mixinStandardHelpOptions = true, versionProvider = Version.class,
        description = {
            "Lists the parts of scores: number, id, name, staves, attacks and instruments. A part is chosen with --part of the"
                    + " other commands by its number, its id, its name, or a pattern such as 'Violin*'.",
            "An attack is a moment at which at least one note of the part begins."},
        footer = {
            "",
            "Examples:",
            "  countstave parts band.mxl",
            "  countstave parts scores/           the parts of every score in the folder"})
final class PartsCommand implements Callable<Integer> {

    @ParentCommand
    Countstave parent;

    @Mixin
    ScoreOptions files;

    @Mixin
    LanguageOption language;

    @Override
    public Integer call() throws IOException {
        ScoreList list = files.list();
        return files.print(parent.console, list, false, (score, file, console) -> {
            StringBuilder out = new StringBuilder();
            write(file, out);
            console.out().print(out);
            return null;
        });
    }

    private void write(ScoreFile file, StringBuilder out) throws IOException {
        // a part of counts that annotate has added is no part of the score
        Score score = ScoreReader.read(file.withText(OwnMarks.strip(file.text())), new ReadOptions(false));
        List<Integer> attacks = new ArrayList<>();
        for (Part part : score.parts()) {
            attacks.add(attacks(part));
        }
        PartsWriter.write(score, attacks, CountCommand.textOptions(false, language.phrases()), out);
    }

    private static int attacks(Part part) {
        try {
            PartTimeline timeline = Timeline.of(part, Selection.ALL, PulseChoice.BY_METER, null);
            return timeline.bars().stream().mapToInt(bar -> bar.attacks().size()).sum();
        } catch (TimeOverflowException e) {
            throw new ScoreException("part " + part.name() + ": " + e.getMessage() + "; check its durations and divisions", e);
        }
    }
}
