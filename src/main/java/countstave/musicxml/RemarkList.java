package countstave.musicxml;

import countstave.score.Remark;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/** The remarks of one part. */
final class RemarkList {

    private final String partId;
    private final List<Remark> remarks = new ArrayList<>();

    RemarkList(String partId) {
        this.partId = partId;
    }

    void add(Remark.Kind kind, BarDraft bar, String voice, Offset at, String text) {
        remarks.add(new Remark(kind, partId, bar.index, bar.number, voice, at, text));
    }

    /** As {@link #add}, but only the first of its kind in a bar. */
    void addOnce(Remark.Kind kind, BarDraft bar, String voice, Offset at, String text) {
        for (int i = remarks.size() - 1; i >= 0 && remarks.get(i).barIndex() == bar.index; i--) {
            if (remarks.get(i).kind() == kind) {
                return;
            }
        }
        add(kind, bar, voice, at, text);
    }

    /** In order of bars. */
    List<Remark> sorted() {
        remarks.sort(java.util.Comparator.comparingInt(Remark::barIndex));
        return remarks;
    }
}
