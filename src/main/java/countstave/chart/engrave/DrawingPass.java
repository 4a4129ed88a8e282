package countstave.chart.engrave;

import countstave.chart.shape.Box;
import countstave.chart.shape.Role;
import countstave.score.Clef;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** The second pass over a bar: every sign in its place, now that each moment's x is known. */
final class DrawingPass {

    private final NotatedBar bar;
    private final Frame frame;
    private final Placing placing;
    private final Canvas canvas;
    private final ChordDrawer chords;

    DrawingPass(NotatedBar bar, Placing placing) {
        this.bar = bar;
        this.frame = bar.frame;
        this.placing = placing;
        this.canvas = bar.canvas();
        this.chords = new ChordDrawer(canvas, bar.lines());
    }

    /** The passes, in order: each may rely on what the ones before have placed. */
    Placed draw() {
        placeMoments();
        settleStems();
        each(chords::ledgerLines);
        each(chords::heads);
        bar.moments().forEach(m -> chords.signs(m, placing.x().x(m.at)));
        each(chords::stem);
        each(chords::rest);
        beams();
        each(chords::flag);
        TremoloDrawer tremolos = new TremoloDrawer(canvas);
        each(tremolos::single);
        bar.voices().forEach(tremolos::pairs);
        barRests();
        Marks marks = new Marks(canvas, frame.context.phrases(), bar.lines(), isDrums());
        each(marks::articulations);
        TieDrawer ties = new TieDrawer(canvas, frame.context);
        ties.draw(bar.voices());
        List<Stance> stances = stances();
        TupletDrawer tuplets = new TupletDrawer(canvas, bar.bar().meter(), bar.lines(), placing);
        bar.voices().forEach(tuplets::draw);
        each(marks::breaths);
        each(marks::fermata);
        bar.barRests().stream().filter(r -> !r.hidden).forEach(marks::fermata);
        frame.shapes(placing).forEach(canvas::add);
        return new Placed(List.copyOf(canvas.shapes()), List.copyOf(ties.ends()), stances, openStems());
    }

    /** Taken before tuplets and fermatas: a slur's tip stands inside of them. */
    private List<Stance> stances() {
        List<Stance> stances = new ArrayList<>();
        each(chord -> {
            if (chord.isNote()) {
                stances.add(stance(chord));
            }
        });
        return List.copyOf(stances);
    }

    private List<OpenStem> openStems() {
        List<OpenStem> stems = new ArrayList<>();
        each(chord -> {
            if (chord.far && chord.hasStem()) {
                stems.add(new OpenStem(chord.voice.voice.name(), chord.index, chord.event.start(), chord.x + chord.stemX(), chord.stemStart(),
                        chord.up, chord.stemThickness(), chord.event.look().beams(), Signs.flag(chord.value(), chord.up)));
            }
        });
        return List.copyOf(stems);
    }

    private Stance stance(Chord chord) {
        Box heads = chord.body();
        double left = chord.x + chord.headsLeft();
        double right = chord.x + chord.headsRight();
        Chord.Spot root = chord.root();
        int side = chord.voice.side == VoiceLine.Side.ONLY ? 0 : chord.voice.side == VoiceLine.Side.UPPER ? 1 : -1;
        Stance.Stem stem = new Stance.Stem(!chord.hasStem() ? 0 : chord.up ? 1 : -1,
                chord.x + (chord.hasStem() ? chord.stemX() : 0));
        return new Stance(chord.voice.voice.name(), chord.index, chord.x + root.left + root.width / 2,
                stem, canvas.top(left, right, heads.top()), canvas.bottom(left, right, heads.bottom()),
                new Box(left, heads.bottom(), right, heads.top()), side, chord.event.isGrace());
    }

    private void each(Consumer<Chord> pass) {
        for (VoiceLine voice : bar.voices()) {
            for (Chord chord : voice.chords) {
                if (chord != null && !bar.barRests().contains(chord) && (chord.isNote() || chord.isRest())) {
                    pass.accept(chord);
                }
            }
        }
    }

    private void placeMoments() {
        for (Moment moment : bar.moments()) {
            double x = placing.x().x(moment.at);
            moment.chords.forEach(c -> c.x = x);
            moment.graces.forEach(row -> row.forEach(c -> c.x = x));
        }
    }

    private boolean isDrums() {
        Clef clef = frame.opening.clef();
        return clef.sign().equals("percussion");
    }

    private void settleStems() {
        each(chord -> {
            if (chord.hasStem() && chord.beam == null) {
                chord.stemEnd = Stems.end(chord, bar.lines());
            }
        });
        for (VoiceLine voice : bar.voices()) {
            for (BeamGroup group : voice.beams) {
                beamLine(voice, group, l -> l.settle(isDrums(), bar.lines()));
            }
            for (BeamGroup pair : TremoloDrawer.pairsOf(voice)) {
                beamLine(voice, pair, l -> l.settle(isDrums(), bar.lines()));
            }
        }
    }

    private void beams() {
        for (VoiceLine voice : bar.voices()) {
            for (BeamGroup group : voice.beams) {
                beamLine(voice, group, l -> {
                    l.settle(isDrums(), bar.lines());
                    l.draw(canvas);
                });
            }
        }
    }

    private void beamLine(VoiceLine voice, BeamGroup group, Consumer<BeamLine> use) {
        if (group.members().stream().map(voice::chord).anyMatch(c -> c != null && c.isNote())) {
            use.accept(new BeamLine(group, voice, canvas.font));
        }
    }

    /** In the middle between the signs that frame the bar. */
    private void barRests() {
        double middle = (frame.contentLeft(placing) + frame.contentRight(placing)) / 2;
        for (Chord rest : bar.barRests()) {
            if (!rest.hidden) {
                rest.x = middle;
                Box box = rest.restBox();
                boolean outside = rest.restY > StaffMap.topLine(bar.lines())
                        || rest.restY < StaffMap.bottomLine(bar.lines());
                String sign = outside && rest.restSign.equals("restWhole") ? "restWholeLegerLine" : rest.restSign;
                chords.put(sign, middle + box.left() - (sign.equals(rest.restSign) ? 0 : legerOverhang()), rest.restY, 1,
                        Role.REST, rest.event.start());
            }
        }
    }

    private double legerOverhang() {
        return (canvas.font.width("restWholeLegerLine") - canvas.font.width("restWhole")) / 2
                + canvas.font.box("restWholeLegerLine").left();
    }
}
