package countstave.cli;

import countstave.batch.Inputs;
import countstave.files.FileNames;
import countstave.musicxml.OwnMarks;
import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.Bar;
import countstave.score.Part;
import countstave.score.Score;
import countstave.plain.SafeText;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** {@code countstave values}: what the completion of {@code --part} and {@code --bars} offers for a score, a line each. */
@Command(name = Commands.VALUES, hidden = true, description = "Prints the parts or bars of a score, for completion.")
final class ValuesCommand implements Callable<Integer> {

    enum Which { parts, bars }

    @ParentCommand
    Countstave parent;

    @Parameters(index = "0", paramLabel = "parts|bars")
    Which which;

    @Parameters(index = "1", paramLabel = "SCORE")
    String name;

    @Override
    public Integer call() {
        Path path = Inputs.path(name);
        ScoreFile file = ScoreFile.load(path, FileNames.shown(path));
        Score score = ScoreReader.read(file.withText(OwnMarks.strip(file.text())), ReadOptions.DEFAULT);
        Set<String> words = new LinkedHashSet<>();
        for (Part part : score.parts()) {
            if (which == Which.parts) {
                words.add(part.name());
                words.add(part.id());
            } else {
                part.bars().stream().map(Bar::number).forEach(words::add);
            }
        }
        words.stream().filter(word -> !word.isBlank()).map(SafeText::of).forEach(parent.console.out()::println);
        parent.console.out().flush();
        return 0;
    }
}
