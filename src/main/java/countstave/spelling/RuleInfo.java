package countstave.spelling;

import countstave.plain.Phrases;

/**
 * What a rule says of itself; the page docs/spelling.md is made from it.
 *
 * @param id its name in plain words: {@code bar-overfull}
 * @param about whether the page shows what it finds
 * @param severity how bad it is unless the settings say otherwise
 * @param summary one sentence: what it finds
 * @param reason one or two sentences: why it matters
 * @param remedy what to do where no finding says what to write, or that nothing needs to be done; null where its
 *     sentences say it
 * @param example a bar that breaks it
 * @param nearMiss a bar that nearly does, and does not
 * @param source a handbook by author and title, the MusicXML standard, or "common practice, no source"
 */
public record RuleInfo(String id, About about, Severity severity, String summary, String reason, String remedy, String example,
        String nearMiss, String source) {

    /** A rule about the notation. */
    public RuleInfo(String id, Severity severity, String summary, String reason, String remedy, String example, String nearMiss,
            String source) {
        this(id, About.NOTATION, severity, summary, reason, remedy, example, nearMiss, source);
    }

    /** The summary in a language: English stands here, beside the rule; the others among the phrases. */
    public String summary(Phrases phrases) {
        return phrases.textOr("rule." + id + ".summary", summary);
    }

    /** The reason in a language. */
    public String reason(Phrases phrases) {
        return phrases.textOr("rule." + id + ".reason", reason);
    }

    /** What to do, in a language; or null. */
    public String remedy(Phrases phrases) {
        return remedy == null ? null : phrases.textOr("rule." + id + ".remedy", remedy);
    }

    /** The bar that breaks it, in a language. */
    public String example(Phrases phrases) {
        return phrases.textOr("rule." + id + ".example", example);
    }

    /** The bar that nearly does, in a language. */
    public String nearMiss(Phrases phrases) {
        return phrases.textOr("rule." + id + ".near-miss", nearMiss);
    }
}
