package countstave;

import countstave.musicxml.Comments;
import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.Part;
import countstave.score.Score;
import countstave.score.ScoreException;
import countstave.score.SourceSpot;
import countstave.score.Warning;
import countstave.spelling.Finding;
import countstave.spelling.LeftAlone;
import countstave.spelling.Rule;
import countstave.spelling.RuleInfo;
import countstave.spelling.RuleSettings;
import countstave.spelling.SpellingCheck;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * A score with what is wrong, or needlessly hard to count, in its spelling: the whole way from the file to the findings.
 *
 * @param score what the file says
 * @param findings what is to be told, part by part, in the order of bars and beats
 * @param warnings what is said of rules that are to be left alone and are none, or find nothing there
 */
public record CheckedScore(Score score, List<Finding> findings, List<Warning> warnings) {

    /** Of several scores: what may be taken out. */
    private static final String IDLE = "what is to be left alone and is not found, in " + Warning.SCORES
            + ": take the comments or lines out";

    /**
     * Read, rules, what is left alone, levels. What the reader reports of a file that contradicts itself comes with the
     * score; the rules look at it as at everything else.
     *
     * @param name the score's file with as many of its folders as are known: the settings name scores
     * @throws ScoreException if the score cannot be read
     */
    public static CheckedScore of(ScoreFile file, String name, CheckOptions options) {
        Score score = ScoreReader.read(file, ReadOptions.DEFAULT);
        List<Finding> found = SpellingCheck.check(score, options.rules(), options.settings());
        List<Warning> warnings = new ArrayList<>();
        LeftAlone alone = new LeftAlone();
        Set<String> running = options.rules().stream().map(Rule::info)
                .filter(rule -> options.settings().severity(rule).isPresent()).map(RuleInfo::id).collect(Collectors.toSet());
        options.settings().leaveAlone(name, running, alone);
        for (Comments.Ignore ignore : Comments.ignored(file.text())) {
            if (!options.known().contains(ignore.rule())) {
                String no = "there is no rule '" + ignore.rule() + "'";
                String nearest = RuleSettings.nearest(ignore.rule(), options.known());
                warnings.add(new Warning("line " + ignore.line() + ": " + no + nearest, no + ", named in " + Warning.SCORES + nearest));
            } else if (running.contains(ignore.rule())) {
                alone.add(ignore.rule(), inBarAround(ignore.at(), score), "line " + ignore.line() + ": '"
                        + ignore.rule() + "' finds nothing in the bar of this part in which the comment stands; take it out");
            }
        }
        alone.idle(found).forEach(line -> warnings.add(new Warning(line, IDLE)));
        return new CheckedScore(score, alone.without(found).stream().filter(options::asksFor).toList(), List.copyOf(warnings));
    }

    /** The findings in the bar in which a place in the text lies; none where it lies in no bar. */
    private static Predicate<Finding> inBarAround(int at, Score score) {
        for (Part part : score.parts()) {
            for (int i = 0; i < part.bars().size(); i++) {
                SourceSpot spot = part.bars().get(i).source().spot();
                if (spot.start() <= at && at < spot.end()) {
                    int bar = i;
                    return finding -> finding.where().barIndex() == bar && finding.where().partId().equals(part.id());
                }
            }
        }
        return finding -> false;
    }
}
