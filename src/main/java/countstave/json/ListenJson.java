package countstave.json;

import countstave.count.NoteNames;
import countstave.listen.ExtraStroke;
import countstave.listen.ListenWords;
import countstave.listen.Listening;
import countstave.listen.Pause;
import countstave.listen.Place;
import countstave.listen.PlannedStroke;
import countstave.listen.RunFigures;
import countstave.listen.Spot;
import countstave.listen.Stroke;
import countstave.listen.UnitRun;
import countstave.score.Bar;
import countstave.score.Part;
import countstave.score.Tempo;
import java.io.IOException;
import java.io.Writer;

/** Writes what was heard of a take as JSON: the contract {@code countstave-listen/1} of {@code docs/listen.md}. */
public final class ListenJson {

    /** Name and version of the contract. */
    public static final String SCHEMA = "countstave-listen/1";

    /** Places, runs, strokes. */
    private static final int LINES = 2;
    private static final int MS = 1000;

    private final JsonStream out;
    private final Listening listening;

    private ListenJson(Listening listening, Writer out) {
        this.out = new JsonStream(out, LINES);
        this.listening = listening;
    }

    /**
     * @param title title of the score
     * @param source name of its file
     * @param part the part that was played
     * @param out where the text goes; not closed here
     */
    public static void write(String title, String source, Part part, Listening listening, Writer out) throws IOException {
        new ListenJson(listening, out).document(title, source, part);
    }

    private void document(String title, String source, Part part) throws IOException {
        out.object().text("schema", SCHEMA);
        out.object("score").text("title", title).text("source", source).endObject();
        out.object("part").text("id", part.id()).text("name", part.name()).endObject();
        out.object("take").text("name", listening.take().name()).text("kind", listening.take().kind().title())
                .number("seconds", listening.take().seconds()).number("errorMs", MS * listening.take().kind().error()).endObject();
        out.object("first");
        bar(0);
        out.endObject().object("last");
        bar(listening.pass().stretch().size() - 1);
        out.endObject();
        Tempo tempo = listening.pass().stretch().tempo();
        out.object("tempo").text("unit", tempo.unit().toString()).number("perMinute", tempo.perMinute()).endObject();
        out.number("repeats", listening.repeats()).text("reference", listening.reference().id());
        out.array("told");
        for (String sentence : ListenWords.of(listening, NoteNames.SYMBOLS)) {
            out.text(sentence);
        }
        out.endArray();
        out.object("summary").number("planned", listening.strokes().size()).number("heard", listening.heard())
                .number("missed", listening.missed()).number("unsure", listening.unsure()).number("extra", listening.extras().size())
                .number("share", listening.share()).number("meanMs", MS * listening.mean())
                .number("spreadMs", MS * listening.spread()).endObject();
        pauses();
        speed();
        places();
        runs();
        strokes();
        out.array("practice");
        for (String bars : listening.practised()) {
            out.text("--bars " + bars);
        }
        out.endArray().endObject().end();
    }

    /** Only where there are any. */
    private void pauses() throws IOException {
        if (listening.tempo().pauses().isEmpty()) {
            return;
        }
        out.array("pauses");
        for (Pause pause : listening.tempo().pauses()) {
            out.object().number("repeat", pause.repeat() + 1).number("seconds", pause.seconds()).number("beats", pause.beats())
                    .endObject();
        }
        out.endArray();
    }

    private void speed() throws IOException {
        out.object("speed").number("mean", listening.tempo().mean()).number("atStart", listening.tempo().atStart())
                .number("atEnd", listening.tempo().atEnd()).flag("drifts", listening.tempo().isDrifting());
        out.array("byRepeat");
        for (double speed : listening.tempo().byRepeat()) {
            out.object().number("speed", speed).endObject();
        }
        out.endArray().endObject();
    }

    private void bar(int bar) throws IOException {
        Bar written = listening.pass().stretch().timeline(bar).bar();
        out.number("index", written.index()).text("number", written.number());
    }

    private void spot(Spot spot) throws IOException {
        bar(spot.bar());
        out.text("at", spot.at().toString());
    }

    private void places() throws IOException {
        out.array("places");
        for (Place place : listening.places()) {
            PlannedStroke planned = place.planned();
            UnitRun run = listening.pass().runs().get(planned.run());
            out.object();
            spot(planned.spot());
            out.text("say", planned.word()).text("unit", run.unit().unit().toString()).number("heard", place.lates().size())
                    .number("missed", place.missed()).number("limitMs", MS * place.limit()).flag("off", place.isOff());
            if (!place.lates().isEmpty()) {
                out.number("lateMs", MS * place.mean()).number("spreadMs", MS * place.spread())
                        .number("ofUnit", place.mean() / run.unitSeconds().toDouble());
            }
            out.endObject();
        }
        out.endArray();
    }

    private void runs() throws IOException {
        out.array("runs");
        for (RunFigures figures : listening.runs()) {
            UnitRun run = figures.run();
            out.object();
            spot(run.from());
            out.text("name", run.unit().name(NoteNames.SYMBOLS)).text("unit", run.unit().unit().toString())
                    .flag("change", figures.isChange()).flag("even", figures.isEven()).number("strokes", figures.strokes());
            out.object("first");
            spot(figures.first().spot());
            out.endObject();
            if (!Double.isNaN(figures.start())) {
                out.number("startMs", MS * figures.start());
            }
            out.flag("startOff", figures.isStartOff()).number("pace", figures.pace()).number("lastPace", figures.lastPace());
            if (figures.uneven() != null) {
                out.object("uneven");
                spot(figures.uneven().place().spot());
                out.number("lateMs", MS * figures.uneven().late()).endObject();
            }
            if (!Double.isNaN(figures.met())) {
                out.flag("met", figures.met() >= 0);
                if (figures.met() >= 0) {
                    out.number("metAfterBeats", figures.met());
                }
            }
            out.endObject();
        }
        out.endArray();
    }

    private void strokes() throws IOException {
        out.array("strokes");
        for (Stroke stroke : listening.strokes()) {
            out.object().number("repeat", stroke.repeat() + 1);
            spot(stroke.planned().spot());
            out.number("expected", stroke.expected());
            if (!stroke.isMissed()) {
                out.number("second", stroke.taken()).number("lateMs", MS * stroke.late())
                        .number("ofUnit", stroke.late() / listening.pass().runs().get(stroke.planned().run()).unitSeconds().toDouble());
            }
            out.flag("unsure", stroke.unsure()).endObject();
        }
        out.endArray().array("extras");
        for (ExtraStroke extra : listening.extras()) {
            out.object().number("second", extra.second()).number("repeat", extra.repeat() + 1);
            spot(extra.after().spot());
            out.number("share", extra.share()).endObject();
        }
        out.endArray();
    }
}
