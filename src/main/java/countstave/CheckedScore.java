package countstave;

import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.Score;
import countstave.score.ScoreException;
import countstave.spelling.Finding;
import countstave.spelling.SpellingCheck;
import java.util.ArrayList;
import java.util.List;

/**
 * A score with what is wrong, or needlessly hard to count, in its spelling: the whole way from the file to the findings.
 *
 * @param score what the file says
 * @param findings what is to be told, part by part, in the order of bars and beats
 */
public record CheckedScore(Score score, List<Finding> findings) {

    /**
     * Read, rules, levels. What the reader reports of a file that contradicts itself comes with the score; the rules look
     * at it as at everything else.
     *
     * @throws ScoreException if the score cannot be read
     */
    public static CheckedScore of(ScoreFile file, CheckOptions options) {
        Score score = ScoreReader.read(file, ReadOptions.DEFAULT);
        List<Finding> told = new ArrayList<>();
        for (Finding finding : SpellingCheck.check(score, options.rules(), options.settings())) {
            if (finding.severity().isAtLeast(options.least())) {
                told.add(finding);
            }
        }
        return new CheckedScore(score, List.copyOf(told));
    }
}
