package countstave.text;

import countstave.count.NoteNames;
import countstave.plain.MarkupText;
import countstave.plain.SafeText;
import countstave.practice.Cautions;
import countstave.practice.DayWords;
import countstave.practice.Passage;
import countstave.practice.PracticePlan;
import countstave.score.Tempo;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Collectors;

/** What the page a practice folder opens with says of it: which passages there are, in order, and the files that belong to them. */
public final class PracticeIndex {

    /**
     * A file of the folder.
     *
     * @param name its name in the folder
     * @param label what it is
     * @param passage the passage it belongs to, or null for the whole
     */
    public record Entry(String name, String label, Passage passage) {
    }

    private static final List<String> HEADS = List.of("index.passage", "index.bars", "index.difficulty", "index.from", "index.to",
            "index.sayable", "index.tracks");

    private final Appendable out;
    private final NoteNames names;

    private PracticeIndex(Appendable out, NoteNames names) {
        this.out = out;
        this.names = names;
    }

    /**
     * Writes it as a piece of HTML: links to the folder's files, and the table of each part.
     *
     * @param plans one for each part
     * @param top how many passages a part are listed
     * @param files the folder's files
     * @param names the language
     */
    public static void write(List<PracticePlan> plans, int top, List<Entry> files, NoteNames names, Appendable out)
            throws IOException {
        PracticeIndex page = new PracticeIndex(out, names);
        page.links(files.stream().filter(f -> f.passage() == null).toList());
        for (PracticePlan plan : plans) {
            page.part(plan, top, files);
        }
        page.line("<h2>" + page.phrase("cautions") + "</h2><ul>");
        for (String caution : Cautions.in(names.phrases())) {
            page.line("<li>" + escape(caution) + "</li>");
        }
        page.line("</ul>");
    }

    private void part(PracticePlan plan, int top, List<Entry> files) throws IOException {
        line("<h2>" + escape(plan.counts().part().name()) + "</h2>");
        line("<p>" + phrase("index.hardest", names.phrases().decimal(plan.options().voiceLimit())) + "</p>");
        if (!plan.atSight().isEmpty()) {
            line("<p>" + escape(DayWords.atSight(plan, names.phrases())) + "</p>");
        }
        line(HEADS.stream().map(this::phrase).collect(Collectors.joining("</th><th>", "<table><tr><th>", "</th></tr>")));
        for (Passage passage : plan.worked(top)) {
            int last = passage.ladder().size() - 1;
            line("<tr><td>" + passage.rank() + "</td><td>" + escape(passage.stretch().numbers()) + alike(plan, passage) + "</td><td>"
                    + names.phrases().decimal(passage.figures().difficulty(), 1) + "</td><td>"
                    + escape(names.tempo(passage.ladder().get(0).tempo())) + "</td><td>"
                    + escape(names.tempo(passage.ladder().get(last).tempo())) + "</td><td>"
                    + sayable(passage) + "</td><td>");
            links(files.stream().filter(f -> f.passage() == passage).toList());
            line("</td></tr>");
        }
        line("</table>");
    }

    private String sayable(Passage passage) {
        int sayable = passage.figures().sayable();
        return sayable == 0 ? phrase("index.not-in-full")
                : escape(names.tempo(new Tempo(passage.written().unit(), BigDecimal.valueOf(sayable))));
    }

    private String alike(PracticePlan plan, Passage passage) {
        StringBuilder alike = new StringBuilder();
        for (Passage other : plan.alike(passage)) {
            alike.append(alike.isEmpty() ? "<br/>" + phrase("alike") + " " : ", ").append(escape(other.stretch().numbers()));
        }
        return alike.toString();
    }

    private void links(List<Entry> files) throws IOException {
        if (files.isEmpty()) {
            return;
        }
        line("<ul>");
        for (Entry file : files) {
            line("<li><a href=\"" + escape(file.name()) + "\">" + escape(file.label()) + "</a></li>");
        }
        line("</ul>");
    }

    private String phrase(String key, String... places) {
        return escape(names.phrase(key, (Object[]) places));
    }

    static String escape(String text) {
        return MarkupText.quoted(SafeText.of(text));
    }

    private void line(String text) throws IOException {
        out.append(text).append('\n');
    }
}
