package countstave.text;

import countstave.plain.Phrases;
import countstave.plain.SafeText;
import countstave.spelling.About;
import countstave.spelling.CheckedFile;
import countstave.spelling.Finding;
import countstave.spelling.FindingsReport;
import countstave.spelling.Severity;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.StringJoiner;
import java.util.stream.LongStream;

/**
 * The findings of {@code check} for reading: by file, each with its place, its sentence and what to write instead. What
 * to do where that is the same for all that a rule finds is said once a file; and what one rule finds in one file again and again, a fault of the exporting program as a rule, is told at its first places.
 */
public final class FindingsWriter implements FindingsReport {

    /** How many findings of one rule are told in one file. */
    private static final int FIRST = 3;

    private final Appendable out;
    private final boolean all;
    private final long[] counts = new long[Severity.values().length];
    private final Set<String> kinds = new HashSet<>();
    private long read;
    private long unread;
    private long inFile;
    private long withFindings;
    private boolean shortened;
    private final Phrases phrases;

    /** @param all whether every finding is told, however many are alike */
    public FindingsWriter(Appendable out, boolean all, Phrases phrases) {
        this.out = out;
        this.phrases = phrases;
        this.all = all;
    }

    @Override
    public void file(CheckedFile file) throws IOException {
        if (file.problem() != null) {
            unread++;
            return;
        }
        read++;
        for (Finding finding : file.findings()) {
            counts[finding.severity().ordinal()]++;
            kinds.add(finding.rule());
            inFile += finding.info().about() == About.FILE ? 1 : 0;
        }
        if (!file.findings().isEmpty()) {
            withFindings++;
            tell(file);
        }
    }

    private void tell(CheckedFile file) throws IOException {
        Set<String> remedied = new HashSet<>();
        Map<String, List<Finding>> byRule = new HashMap<>();
        file.findings().forEach(f -> byRule.computeIfAbsent(f.rule(), rule -> new ArrayList<>()).add(f));
        Map<String, Integer> told = new HashMap<>();
        out.append(SafeText.of(file.name())).append('\n');
        for (Finding finding : file.findings()) {
            List<Finding> alike = byRule.get(finding.rule());
            int number = told.merge(finding.rule(), 1, Integer::sum);
            if (all || number <= FIRST) {
                tell(finding);
                if (finding.suggestion() == null && finding.info().remedy() != null && remedied.add(finding.rule())) {
                    out.append("      ").append(finding.info().remedy(phrases)).append('\n');
                }
            }
            if (!all && number == FIRST && alike.size() > FIRST) {
                tellMore(alike.subList(FIRST, alike.size()));
            }
        }
        out.append('\n');
    }

    private void tell(Finding finding) throws IOException {
        out.append("  ").append(SafeText.of(finding.place(phrases))).append(": ").append(phrases.text(
                finding.info().about() == About.FILE ? "finding.kind.in-file" : "finding.kind", severity(finding.severity(), 1),
                finding.rule())).append('\n');
        out.append("      ").append(SafeText.of(finding.sentence(phrases))).append('\n');
        if (finding.suggestion() != null) {
            out.append("      ").append(phrases.text("finding.write", finding.suggestion().words(phrases))).append('\n');
        }
    }

    private void tellMore(List<Finding> more) throws IOException {
        shortened = true;
        out.append("      ").append(phrases.text("finding.more", phrases.number(more.size()), SafeText.of(BarList.of(more, phrases))))
                .append('\n');
    }

    /** One line of totals. */
    @Override
    public void end() throws IOException {
        StringJoiner found = new StringJoiner(", ");
        for (Severity severity : Severity.values()) {
            long count = counts[severity.ordinal()];
            found.add(phrases.number(count) + " " + severity(severity, count));
        }
        String kind = kinds.isEmpty() ? "" : phrases.text("findings.kinds", kinds.size(), phrases.number(kinds.size()));
        String files = withFindings == 0 || withFindings == read ? phrases.text("findings.files", read, phrases.number(read))
                : phrases.text("findings.files.some", read, phrases.number(read), phrases.number(withFindings));
        StringJoiner line = new StringJoiner(" ");
        line.add(phrases.text("findings.sum", found + kind, files));
        if (inFile > 0) {
            line.add(aboutTheFile());
        }
        if (unread > 0) {
            line.add(phrases.text("findings.unread", unread, phrases.number(unread)));
        }
        if (shortened) {
            line.add(phrases.text("findings.shortened"));
        }
        out.append(line.toString()).append('\n');
    }

    private String aboutTheFile() {
        long found = LongStream.of(counts).sum();
        return found == 1 ? phrases.text("findings.about-file.one") : found == inFile ? phrases.text("findings.about-file.all")
                : phrases.text("findings.about-file.some", inFile, phrases.number(inFile));
    }

    private String severity(Severity severity, long count) {
        return phrases.text("severity." + severity.word(), count);
    }
}
