package countstave.text;

import countstave.spelling.CheckedFile;
import countstave.spelling.Finding;
import countstave.spelling.Severity;
import java.io.IOException;
import java.util.List;

/** The findings of {@code check} for reading: by file, each with its place, its sentence and what to write instead. */
public final class FindingsWriter {

    private final Appendable out;

    public FindingsWriter(Appendable out) {
        this.out = out;
    }

    /** All files with findings, then one line of totals. */
    public void files(List<CheckedFile> files) throws IOException {
        for (CheckedFile file : files) {
            if (!file.findings().isEmpty()) {
                file(file);
            }
        }
        totals(files);
    }

    private void file(CheckedFile file) throws IOException {
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

    private void totals(List<CheckedFile> files) throws IOException {
        long read = files.stream().filter(f -> f.problem() == null).count();
        StringBuilder line = new StringBuilder();
        for (Severity severity : Severity.values()) {
            long count = files.stream().mapToLong(f -> f.count(severity)).sum();
            line.append(line.isEmpty() ? "" : ", ").append(many(count, severity.word()));
        }
        out.append(line).append(" in ").append(many(read, "file")).append('.');
        long unread = files.size() - read;
        out.append(unread == 0 ? "\n" : " " + many(unread, "file") + " could not be read.\n");
    }

    private static String many(long count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }
}
