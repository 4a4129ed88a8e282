package countstave.page;

import countstave.chart.ChartOptions;
import countstave.chart.ChartWriter;
import countstave.chart.Contents;
import countstave.chart.layout.Chart;
import countstave.chart.svg.SvgDrawing;
import countstave.chart.svg.SvgInline;
import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.json.JsonStream;
import countstave.plain.MarkupText;
import countstave.plain.Phrases;
import countstave.plain.SafeText;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.score.Score;
import countstave.voice.Speaker;
import java.io.IOException;
import java.io.StringWriter;
import java.io.Writer;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The practice page: one HTML file that asks for nothing else. It holds the chart, once as it is printed and once for a
 * narrow screen, the plan as JSON, the voice and the scripts.
 */
public final class PracticePage {

    /** Name and version of the data in the page: between the page and its own scripts, and no contract. */
    private static final String FORMAT = "countstave-page/1";
    private static final double NARROW_MARGIN_MM = 5;
    private static final double NARROW_STAFF_MM = 6;
    private static final int COUNTED_IN = 16;
    private static final Pattern SLOT = Pattern.compile("\\[\\[([a-z.-]+)]]|\\{\\{([a-z]+)}}");
    private static final int LINES = 6;

    private final Score score;
    private final List<PracticePlan> plans;
    private final ChartOptions options;
    private final Phrases phrases;
    private final Speaker.Choice voice;
    private final List<CountingSystem> systems;

    /**
     * @param plans one for each part
     * @param options how the chart is drawn, and in which language the page is
     * @param voice who speaks, or null for nobody
     */
    public PracticePage(Score score, List<PracticePlan> plans, ChartOptions options, Speaker.Choice voice) {
        this.score = score;
        this.plans = plans;
        this.options = options;
        this.phrases = options.phrases();
        this.voice = voice;
        this.systems = systems(plans.get(0).counts().system(), phrases);
    }

    /** That in which the score is counted first, then all others that there are. */
    private static List<CountingSystem> systems(CountingSystem chosen, Phrases phrases) {
        List<CountingSystem> systems = new ArrayList<>(List.of(chosen));
        for (String name : CountingSystem.names()) {
            if (!name.equals(chosen.name())) {
                systems.add(CountingSystem.named(name).spokenIn(phrases));
            }
        }
        return List.copyOf(systems);
    }

    /**
     * Writes the page.
     *
     * @param more HTML that stands below the chart: the files of a folder; or an empty text
     * @param out not closed here
     * @return what the player must be told: of the chart, of the voice
     */
    public List<String> write(String more, Writer out) throws IOException {
        List<PageWords> words = plans.stream().map(plan -> PageWords.of(plan, systems, options.names())).toList();
        PageVoice spoken = voice == null ? null : new PageVoice(voice, systems, saidIn(words));
        Chart wide = chart(options.withContents(Contents.ALL.withRests(Contents.Rests.KEEP)));
        Chart narrow = chart(options.withContents(Contents.ALL.withRests(Contents.Rests.KEEP))
                .withPaper(ChartOptions.Paper.A6, false).withSizes(NARROW_MARGIN_MM, NARROW_STAFF_MM).withLarge(false));
        SvgInline drawn = SvgDrawing.inline(List.of(wide, narrow), letters(words));
        int pages = wide.pages().size();
        String script = PageScript.text();
        Map<String, String> slots = Map.of(
                "language", phrases.code(), "title", escape(score.title()), "hash", PageScript.hash(script),
                "style", PageScript.resource("page.css"), "script", script, "fonts", drawn.head(),
                "wide", String.join("", drawn.pages().subList(0, pages)),
                "narrow", String.join("", drawn.pages().subList(pages, drawn.pages().size())),
                "data", data(words, spoken), "more", more);
        out.write(filled(PageScript.resource("page.html"), slots));
        List<String> notes = new ArrayList<>(wide.notes());
        if (spoken != null) {
            notes.addAll(spoken.notes());
        }
        return notes;
    }

    private Chart chart(ChartOptions drawn) {
        List<PartCounts> parts = plans.stream().map(PracticePlan::counts).toList();
        return ChartWriter.layout(parts, score, drawn);
    }

    private String filled(String page, Map<String, String> slots) {
        Matcher slot = SLOT.matcher(page);
        StringBuilder out = new StringBuilder();
        while (slot.find()) {
            String with = slot.group(2) == null ? escape(phrases.text(slot.group(1))) : slots.get(slot.group(2));
            slot.appendReplacement(out, Matcher.quoteReplacement(with));
        }
        return slot.appendTail(out).toString();
    }

    /** What is said in each system, the numbers of a count-in among it. */
    private List<Set<String>> saidIn(List<PageWords> words) {
        List<Set<String>> said = new ArrayList<>();
        for (int system = 0; system < systems.size(); system++) {
            Set<String> all = new LinkedHashSet<>();
            for (int i = 1; i <= COUNTED_IN; i++) {
                all.add(Integer.toString(i));
            }
            int number = system;
            words.forEach(part -> part.places().forEach(place -> all.add(place.words().get(number))));
            said.add(all);
        }
        return said;
    }

    private static String letters(List<PageWords> words) {
        Set<Integer> letters = new TreeSet<>();
        words.stream().flatMap(PageWords::places)
                .forEach(place -> place.words().forEach(word -> word.codePoints().forEach(letters::add)));
        words.stream().flatMap(part -> part.bars().stream()).flatMap(List::stream).flatMap(way -> way.marks().stream())
                .forEach(mark -> mark.text().codePoints().forEach(letters::add));
        return letters.stream().map(Character::toString).reduce("^()\u00b7", String::concat);
    }

    private String data(List<PageWords> words, PageVoice spoken) throws IOException {
        StringWriter text = new StringWriter();
        JsonStream out = new JsonStream(text, LINES);
        out.object().text("format", FORMAT).text("title", score.title()).text("source", score.source()).array("systems");
        for (CountingSystem system : systems) {
            out.object().text("name", system.name()).text("title", system.title(phrases)).endObject();
        }
        out.endArray().array("stages");
        for (Stage stage : Stage.values()) {
            out.text(stage.title(phrases));
        }
        out.endArray().object("texts");
        for (Map.Entry<String, String> phrase : phrases.all("page.").entrySet()) {
            out.text(phrase.getKey(), phrase.getValue());
        }
        out.endObject().array("parts");
        for (int part = 0; part < plans.size(); part++) {
            new PagePart(plans.get(part), words.get(part), options.names(), out).write(systems.size(), score.parts().get(0));
        }
        out.endArray();
        if (spoken != null) {
            spoken.write(out);
        }
        out.endObject().end();
        // in HTML a script ends wherever it seems to: no sign that could look like it is left
        return text.toString().replace("<", "\\u003c").replace(">", "\\u003e").replace("&", "\\u0026");
    }

    private static String escape(String text) {
        return MarkupText.quoted(SafeText.of(text));
    }
}
