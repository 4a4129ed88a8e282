package countstave.spelling;

import countstave.plain.Phrases;
import countstave.score.Event;
import countstave.score.Fact;
import countstave.score.Meter;
import countstave.score.Warning;
import countstave.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * What is said of the facts that the reader reports: the one place where they become sentences. A warning says what the
 * counting makes of a fact; a finding of {@code check} says what is wrong.
 */
public final class FactWords {

    private FactWords() {
    }

    /** What is told while the score is counted all the same; null for what only {@code check} tells. */
    public static String warning(Fact fact) {
        if (fact instanceof Fact.Overfull overfull) {
            return length(overfull.holds(), overfull.meter(), "has room for");
        }
        if (fact instanceof Fact.Short tooShort) {
            return length(tooShort.holds(), tooShort.meter(), "asks for");
        }
        if (fact instanceof Fact.LocalMeter) {
            return "its notes are written in one meter and last in another [type, duration]; they are counted as they last";
        }
        if (fact instanceof Fact.BackupTooFar) {
            return "a voice would begin before the bar does [backup]; it begins with the bar";
        }
        if (fact instanceof Fact.BadDuration duration) {
            return asRemark(badDuration(duration).in(Phrases.ENGLISH));
        }
        if (fact instanceof Fact.BadMeter meter) {
            return meter.unreadable() == null
                    ? "its staves have different time signatures; the bar is counted in " + meter.counted()
                    : "the time signature " + meter.unreadable() + " cannot be read; the meter before it is kept";
        }
        return null;
    }

    /** Such warnings about several scores in one. */
    public static String kind(Fact fact) {
        String in = " in " + Warning.SCORES;
        if (fact instanceof Fact.Overfull) {
            return "bars that hold more than their meter has room for" + in + ": they are counted as long as they are";
        }
        if (fact instanceof Fact.Short) {
            return "bars that hold less than their meter asks for" + in + ": they are counted as long as they are";
        }
        if (fact instanceof Fact.LocalMeter) {
            return "bars written in one meter that last in another [type, duration]" + in + ": they are counted as they last";
        }
        if (fact instanceof Fact.BackupTooFar) {
            return "voices that would begin before their bar [backup]" + in + ": they begin with it";
        }
        if (fact instanceof Fact.BadDuration duration) {
            return switch (duration.fault()) {
                case NEGATIVE, MISSING, ZERO -> "notes without a length above 0 [duration]" + in
                        + ": their written values are counted, where they have one";
                case BACKUP, FORWARD -> "ways and gaps in voices without a length [backup, forward]" + in
                        + ": they are passed over";
                case NO_DIVISIONS -> "no word on how finely a quarter is divided [divisions]" + in + ": their first notes tell";
            };
        }
        if (fact instanceof Fact.BadMeter meter) {
            return meter.unreadable() == null ? "different time signatures at once" + in + ": one of them is counted"
                    : "time signatures that cannot be read" + in + ": the meter before them is kept";
        }
        return "notes that are not printed" + in + ": left out where something printed stands for their time or they have no"
                + " notehead, else counted (--hidden count counts all)";
    }

    /**
     * What is told once of all the notes that are not printed.
     *
     * @param first where the first of them stands
     */
    public static String hidden(List<Fact.Hidden> facts, String first) {
        int leftOut = 0;
        int headless = 0;
        int counted = 0;
        for (Fact.Hidden fact : facts) {
            leftOut += fact.leftOut();
            headless += fact.headless();
            counted += fact.counted();
        }
        List<String> done = new ArrayList<>();
        if (leftOut > 0) {
            done.add(leftOut + " left out, as something printed stands for their time");
        }
        if (headless > 0) {
            done.add(headless + " left out for want of a notehead");
        }
        if (counted > 0) {
            done.add(counted + " counted");
        }
        return "notes that are not printed, the first in " + first + ": " + String.join("; ", done)
                + (leftOut + headless > 0 ? " (--hidden count counts all)" : "");
    }

    private static String length(Duration holds, Meter meter, String wants) {
        return "the bar holds " + LengthWords.fraction(holds, Phrases.ENGLISH) + " of a whole note, but its meter " + meter + " " + wants + " " + meter.length()
                + "; it is counted as long as it is";
    }

    /** Of {@code bar-overfull}. */
    public static Sentence barOverfull(Fact.VoiceOverfull fact) {
        return p -> p.text("found.bar-overfull", LengthWords.of(fact.holds().minus(fact.room()), p), LengthWords.of(fact.holds(), p),
                fact.meter().toString(), LengthWords.of(fact.room(), p));
    }

    /** Of {@code bar-short}. */
    public static Sentence barShort(Duration filled, Meter meter) {
        return p -> {
            String missing = LengthWords.of(meter.length().minus(filled), p);
            String whole = LengthWords.of(meter.length(), p);
            return filled.isPositive() ? p.text("found.bar-short", missing, LengthWords.of(filled, p), meter.toString(), whole)
                    : p.text("found.bar-short.empty", missing, meter.toString(), whole);
        };
    }

    /** A sentence without its capital and its full stop. */
    private static String asRemark(String sentence) {
        return Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1, sentence.length() - 1);
    }

    /** Of {@code duration-missing}. */
    public static Sentence badDuration(Fact.BadDuration fact) {
        return p -> {
            String instead = p.text(fact.written() ? "found.duration.written" : "found.duration.none");
            return switch (fact.fault()) {
                case NEGATIVE -> p.text("found.duration.negative", instead);
                case MISSING -> p.text("found.duration.missing", instead);
                case ZERO -> p.text("found.duration.zero", instead);
                case BACKUP -> p.text("found.duration.backup");
                case FORWARD -> p.text("found.duration.forward");
                case NO_DIVISIONS -> p.text(fact.written() ? "found.divisions.by-first" : "found.divisions.assumed",
                        fact.divisions().toString());
            };
        };
    }

    /** Of {@code value-differs}, about one note or rest. */
    public static Sentence valueDiffers(Event event) {
        return p -> p.text("found.value-differs", event.isRest() ? LengthWords.ofRest(event.written(), p)
                : LengthWords.of(event.written(), p), LengthWords.of(event.length(), p));
    }

    /** Of {@code value-differs}, about several notes of a voice in a bar. */
    public static Sentence valuesDiffer(List<Event> differing, boolean localMeter) {
        Event first = differing.get(0);
        return p -> p.text(localMeter ? "found.value-differs.meter" : "found.value-differs.several", String.valueOf(differing.size()),
                LengthWords.of(first.written(), p), LengthWords.of(first.length(), p));
    }

    /**
     * Of {@code duration-rounded}.
     *
     * @param first the first of the part's rounded notes
     * @param notes how many there are
     * @param exact divisions of a quarter that would be exact, or 0 where there is no telling
     */
    public static Sentence rounded(Event first, int notes, long exact) {
        return p -> p.text(exact == 0 ? "found.rounded" : "found.rounded.exact", first.notation().divisions().toString(), notes,
                first.notation().sounding().toString(), first.length().toString(), String.valueOf(exact), String.valueOf(notes));
    }
}
