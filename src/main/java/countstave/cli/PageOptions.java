package countstave.cli;

import countstave.CountedScore;
import countstave.batch.NamedScore;
import countstave.chart.ChartOptions;
import countstave.chart.Contents;
import countstave.count.Unplayed;
import countstave.files.Console;
import countstave.plain.Phrases;
import countstave.score.Score;
import countstave.score.ScoreException;
import countstave.score.Warning;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The options of the printed page; where none is printed they are refused. */
final class PageOptions {

    @Spec(Spec.Target.MIXEE)
    CommandSpec command;

    @Option(names = "--paper", order = 42, paramLabel = "PAPER", defaultValue = "a4",
            description = "Page: paper, a4, letter or a6. Default: ${DEFAULT-VALUE}.")
    ChartOptions.Paper paper;

    @Option(names = "--landscape", order = 43, description = "Page: the long side of the paper lies across.")
    boolean landscape;

    @Option(names = "--margin", order = 111, paramLabel = "MM", defaultValue = "15",
            description = "Page: margin in millimetres, 5 to 60. Default: ${DEFAULT-VALUE}.")
    double margin;

    @Option(names = "--staff-size", order = 110, paramLabel = "MM",
            description = "Page: height of a five-line staff in millimetres, 3 to 20; syllables grow with it."
                    + " Default: 7, of a practice sheet 5.8.")
    Double staffSize;

    @Option(names = "--large", order = 44, description = "Page: for low vision, a staff of 10.5 mm (one and a half times the usual) with syllables to"
                    + " match, or of --staff-size where that is more.")
    boolean large;

    @Option(names = "--title", order = 40, paramLabel = "TITLE",
            description = "Page: title of a score that has none. A title that is only the file's name is none.")
    String title;

    @Option(names = "--composer", order = 41, paramLabel = "NAME", description = "Page: composer of a score that names none.")
    String composer;

    /**
     * For a run that prints no page.
     *
     * @param instead what to do to get one
     * @throws ScoreException if one of these options is given all the same
     */
    void refuse(String instead) {
        GivenOptions.refuse(command, PageOptions.class, "the printed page", instead);
    }

    /** @throws ScoreException if a size is out of range, or a title or composer is empty */
    ChartOptions chart(Unplayed unplayed, Phrases phrases) {
        return chart(unplayed, phrases, ChartOptions.standard().staffMm());
    }

    /** The same for a practice sheet, which has more below each staff. */
    ChartOptions sheet(Phrases phrases) {
        return chart(Unplayed.ALL, phrases, ChartOptions.SHEET_STAFF_MM).withContents(Contents.ALL.withRests(Contents.Rests.KEEP));
    }

    private ChartOptions chart(Unplayed unplayed, Phrases phrases, double usualStaff) {
        if (title != null && line(title).isEmpty() || composer != null && line(composer).isEmpty()) {
            throw new ScoreException((title != null && line(title).isEmpty() ? "--title" : "--composer")
                    + " has no word in it: name one, or leave it out");
        }
        try {
            return new ChartOptions(paper, landscape, margin, staffSize == null ? usualStaff : staffSize, large, unplayed,
                    phrases, Contents.ALL);
        } catch (IllegalArgumentException e) {
            throw new ScoreException(e.getMessage(), e);
        }
    }

    /** The score with what stands at the head of a page; what of it is not as one may think is told. */
    CountedScore headed(CountedScore counted, NamedScore named, Console console) {
        Score score = counted.score();
        if (score.isUntitled() ? title == null : title != null) {
            named.warn(console, title == null ? new Warning("has no title, so its file's name is printed; --title gives it one",
                    "no title in " + Warning.SCORES + ": the file's name is printed; --title gives one")
                    : new Warning("has a title of its own, '" + score.title() + "': --title is for scores without",
                    "a title of its own in " + Warning.SCORES + ": --title is for scores without"));
        }
        if (composer != null && !score.composer().isEmpty()) {
            named.warn(console, new Warning("names its composer, '" + score.composer() + "': --composer is for scores that do not",
                    "a composer of its own in " + Warning.SCORES + ": --composer is for scores that name none"));
        }
        return new CountedScore(counted.file(), score.completed(line(title), line(composer)), counted.parts());
    }

    /** In one line, whatever was pasted; null for null. */
    private static String line(String words) {
        return words == null ? null : Console.clean(words.strip().replaceAll("\\s+", " "));
    }
}
