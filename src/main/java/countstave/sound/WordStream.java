package countstave.sound;

import countstave.time.Exact;
import countstave.time.Offset;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;

/** The words of a track in the order of time, made as they are asked for. */
final class WordStream implements Iterator<WordStream.Said> {

    /** A word and when its perceptual centre comes. {@code at}: position in the track. */
    record Said(Offset at, Exact second, String say, LegWords.Strength strength) {
    }

    private final GuideTrack track;
    private int pattern;
    private int word;

    WordStream(GuideTrack track) {
        this.track = track;
    }

    @Override
    public boolean hasNext() {
        while (pattern < track.placed().size() && word >= words().size()) {
            pattern++;
            word = 0;
        }
        return pattern < track.placed().size();
    }

    private List<LegWords.Word> words() {
        return track.placed().get(pattern).pattern().words();
    }

    @Override
    public Said next() {
        if (!hasNext()) {
            throw new NoSuchElementException();
        }
        LegWords.Word next = words().get(word++);
        Offset at = track.placed().get(pattern).start().plus(next.at().sinceStart());
        return new Said(at, track.clock().at(at), next.say(), next.strength());
    }
}
