package countstave.text;

import countstave.spelling.CheckedFile;
import countstave.spelling.Finding;
import countstave.spelling.FindingsReport;
import countstave.spelling.Severity;
import java.io.IOException;

/** The findings of {@code check} for reading: by file, each with its place, its sentence and what to write instead. */
public final class FindingsWriter implements FindingsReport {

    private final Appendable out;
    private final long[] counts = new long[Severity.values().length];
    private long read;
    private long unread;

    public FindingsWriter(Appendable out) {
        this.out = out;
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
        }
        if (!file.findings().isEmpty()) {
            tell(file);
        }
    }

    private void tell(CheckedFile file) throws IOException {
        out.append(SafeText.of(file.name())).append('\n');
        for (Finding finding : file.findings()) {
            out.append("  ").append(SafeText.of(place(finding))).append(": ").append(finding.severity().word())
                    .append(", ").append(finding.rule()).append('\n');
            out.append("      ").append(SafeText.of(finding.sentence())).append('\n');
            if (finding.suggestion() != null) {
                out.append("      Write: ").append(finding.suggestion().words()).append('\n');
            }
        }
        out.append('\n');
    }

    /** {@code Drum kit, bar 3, beat 2 + 1/2, voice 1}. */
    public static String place(Finding finding) {
        return finding.partName() + ", bar " + finding.barNumber() + ", beat " + finding.beat()
                + (finding.voice() == null ? "" : ", voice " + finding.voice());
    }

    /** One line of totals. */
    @Override
    public void end() throws IOException {
        StringBuilder line = new StringBuilder();
        for (Severity severity : Severity.values()) {
            line.append(line.isEmpty() ? "" : ", ").append(many(counts[severity.ordinal()], severity.word()));
        }
        out.append(line).append(" in ").append(many(read, "file")).append('.');
        out.append(unread == 0 ? "\n" : " " + many(unread, "file") + " could not be read.\n");
    }

    private static String many(long count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }
}
