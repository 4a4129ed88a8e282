package countstave.cli;

import countstave.plain.Phrases;
import countstave.score.ScoreException;
import java.util.Locale;
import picocli.CommandLine.Option;

/** The language in which a command speaks. */
final class LanguageOption {

    @Option(names = "--language", order = 24, completionCandidates = Candidates.PageLanguages.class, paramLabel = "CODE",
            description = "Language of what is printed and shown beside the score, and of what is counted:"
                    + " ${COMPLETION-CANDIDATES}. Messages of a run are in English. Default: the system's language, or en.")
    String code;

    /** @throws ScoreException if it is not spoken here */
    Phrases phrases() {
        if (code == null) {
            return Phrases.of(Locale.getDefault());
        }
        String wanted = code.toLowerCase(Locale.ROOT);
        if (!Phrases.codes().contains(wanted)) {
            throw new ScoreException("--language " + code + " is not known: it is one of " + String.join(", ", Phrases.codes()));
        }
        return Phrases.in(wanted);
    }
}
