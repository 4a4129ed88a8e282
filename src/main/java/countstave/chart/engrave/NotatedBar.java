package countstave.chart.engrave;

import countstave.chart.shape.Box;
import countstave.score.Bar;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** A bar of notes and rests, measured. */
final class NotatedBar extends EngravedBar {

    private final int lines;
    private final List<VoiceLine> voices;
    private final List<Moment> moments;
    private final List<Chord> barRests;

    /**
     * @param lines number of staff lines
     * @param voices its voices on the staff
     * @param moments in order of time
     * @param barRests rests of the whole bar
     */
    NotatedBar(Frame frame, int lines, List<VoiceLine> voices, List<Moment> moments, List<Chord> barRests) {
        super(frame);
        this.lines = lines;
        this.voices = voices;
        this.moments = moments;
        this.barRests = barRests;
    }

    Bar bar() {
        return frame.first;
    }

    int lines() {
        return lines;
    }

    List<VoiceLine> voices() {
        return voices;
    }

    List<Moment> moments() {
        return moments;
    }

    List<Chord> barRests() {
        return barRests;
    }

    @Override
    public List<Column> columns() {
        List<Column> columns = new ArrayList<>();
        for (Moment moment : moments) {
            if (moment.isSpaced()) {
                columns.add(new Column(moment.at, moment.left, moment.right));
            }
        }
        return columns;
    }

    @Override
    public double leastContentWidth() {
        double width = 0;
        for (Chord rest : barRests) {
            Box box = rest.restBox();
            width = Math.max(width, box.width() + 2);
        }
        return width;
    }

    @Override
    public Placed place(Placing placing) {
        return new DrawingPass(this, placing).draw();
    }

    @Override
    public Set<String> notDrawn() {
        return NotDrawn.in(this);
    }
}
