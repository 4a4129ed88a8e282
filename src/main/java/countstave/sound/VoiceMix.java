package countstave.sound;

import countstave.voice.Clip;
import countstave.voice.Fitting;
import countstave.voice.Speaker;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;

/**
 * Lays the words of a track into its sound: each with its perceptual centre at its exact second, and over before the next
 * begins. Only the words around the moment are held, so that a long track needs no more memory than a short one.
 */
final class VoiceMix {

    /** No word begins this long before its centre; in samples. */
    private static final long AHEAD = 2L * Clip.RATE;

    /** A word as it is spoken alone; {@code centre}: sample of the track at which its centre comes. */
    private record Raw(WordStream.Said said, Clip clip, double centre) {
    }

    /** A word as it sounds, from sample {@code start} of the track on, not beyond sample {@code end}. */
    private record Sounding(long start, long end, float[] samples, double gain) {
    }

    private final GuideTrack track;
    private final Iterator<WordStream.Said> words;
    private final Speaker speaker;
    private final Fitting fitting = new Fitting();
    private final long lead;
    private final List<Sounding> sounding = new ArrayList<>();
    private Raw before;
    private Raw now;
    private Raw next;
    private Raw afterNext;
    private Sounding loopBegins;

    /** @param lead samples of silence before the track begins */
    VoiceMix(GuideTrack track, Speaker speaker, long lead) {
        this.track = track;
        this.words = track.words();
        this.speaker = speaker;
        this.lead = lead;
        now = read();
        next = read();
        afterNext = read();
    }

    private Raw read() {
        if (!words.hasNext()) {
            return null;
        }
        WordStream.Said said = words.next();
        return new Raw(said, speaker.clip(said.say()), lead + said.second().times(Clip.RATE).toDouble());
    }

    /** Whether nothing of it sounds before sample {@code end} of the file. */
    boolean isSilent(long end) {
        return sounding.isEmpty() && (now == null || now.centre - AHEAD >= end);
    }

    /** Adds what sounds from sample {@code start} of the file on. */
    void addTo(double[] mix, long start, int size, double share) {
        while (now != null && now.centre - AHEAD < start + size) {
            add();
        }
        for (Sounding word : sounding) {
            int from = (int) Math.max(0, word.start - start);
            int to = (int) Math.min(size, word.end - start);
            for (int i = from; i < to; i++) {
                mix[i] += share * word.gain * word.samples[(int) (start + i - word.start)];
            }
        }
        sounding.removeIf(word -> word.end <= start + size);
    }

    private void add() {
        double after = share(now, next);
        Clip clip = fitting.shortened(now.clip, Math.min(share(before, now), after));
        if (next != null) {
            Clip follows = fitting.shortened(next.clip, Math.min(after, share(next, afterNext)));
            clip = fitting.ended(clip, follows, next.centre - now.centre);
        }
        clip = fitting.begun(clip, now.centre);
        long start = Math.max(0, Math.round(now.centre - clip.centre()));
        Sounding word = new Sounding(start, start + clip.samples().length, clip.samples(),
                speaker.gain() * now.said.strength().gain());
        sounding.add(word);
        if (track.isEndless()) {
            loop(word);
        }
        before = now;
        now = next;
        next = afterNext;
        afterNext = read();
    }

    /** The first word of a loop begins before it: what of it does so is heard before the loop's end too. */
    private void loop(Sounding word) {
        if (loopBegins == null && !now.said.at().isBefore(track.loopStart())) {
            loopBegins = word;
        }
        if (next == null && loopBegins != null) {
            long begin = lead + track.clock().at(track.loopStart()).times(Clip.RATE).round();
            long end = lead + track.seconds().times(Clip.RATE).round();
            long start = loopBegins.start + end - begin;
            if (start < end) {
                sounding.add(new Sounding(start, Math.min(end, start + loopBegins.samples.length), loopBegins.samples,
                        loopBegins.gain));
            }
        }
    }

    private static double share(Raw one, Raw other) {
        return one == null || other == null ? 1 : Fitting.share(one.clip, other.clip, other.centre - one.centre);
    }
}
