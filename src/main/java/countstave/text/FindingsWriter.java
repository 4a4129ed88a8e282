package countstave.text;

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
import java.util.Locale;
import java.util.Map;
import java.util.Set;
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

    /** @param all whether every finding is told, however many are alike */
    public FindingsWriter(Appendable out, boolean all) {
        this.out = out;
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
                    out.append("      ").append(finding.info().remedy()).append('\n');
                }
            }
            if (!all && number == FIRST && alike.size() > FIRST) {
                tellMore(alike.subList(FIRST, alike.size()));
            }
        }
        out.append('\n');
    }

    private void tell(Finding finding) throws IOException {
        out.append("  ").append(SafeText.of(finding.place())).append(": ").append(finding.severity().word())
                .append(finding.info().about() == About.FILE ? " in the file, " : ", ").append(finding.rule()).append('\n');
        out.append("      ").append(SafeText.of(finding.sentence())).append('\n');
        if (finding.suggestion() != null) {
            out.append("      Write: ").append(finding.suggestion().words()).append('\n');
        }
    }

    private void tellMore(List<Finding> more) throws IOException {
        shortened = true;
        out.append("      and ").append(number(more.size())).append(" more like it, in ")
                .append(SafeText.of(BarList.of(more))).append('\n');
    }

    /** One line of totals. */
    @Override
    public void end() throws IOException {
        StringBuilder line = new StringBuilder();
        for (Severity severity : Severity.values()) {
            line.append(line.isEmpty() ? "" : ", ").append(many(counts[severity.ordinal()], severity.word()));
        }
        line.append(kinds.isEmpty() ? "" : ": " + many(kinds.size(), "kind")).append(" in ");
        line.append(withFindings == 0 || withFindings == read ? "" : number(withFindings) + " of ");
        line.append(many(read, "file")).append('.');
        line.append(inFile == 0 ? "" : aboutTheFile());
        line.append(unread == 0 ? "" : " " + many(unread, "file") + " could not be read.");
        line.append(shortened ? " With --all every one is told." : "");
        out.append(line).append('\n');
    }

    private String aboutTheFile() {
        long found = LongStream.of(counts).sum();
        String which = found == 1 ? "It is" : found == inFile ? "All are"
                : number(inFile) + " of them " + (inFile == 1 ? "is" : "are");
        return " " + which + " about the file, not the notation.";
    }

    private static String many(long count, String what) {
        return number(count) + " " + what + (count == 1 ? "" : "s");
    }

    private static String number(long count) {
        return String.format(Locale.ROOT, "%,d", count);
    }
}
