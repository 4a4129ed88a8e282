package countstave.musicxml;

import countstave.count.BarCounts;
import countstave.count.ChangeMark;
import countstave.count.ChangeWords;
import countstave.count.Count;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.count.ShownCounts;
import countstave.count.Unplayed;
import countstave.plain.MarkupText;
import countstave.score.Bar;
import countstave.score.BarTimeline;
import countstave.score.Event;
import countstave.score.Selection;
import countstave.score.Voice;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Writes counts into the text of a score: a lyric under every attack that is said, the parenthesised counts that follow
 * it, and a mark above the staff where the counting changes. A note that is felt has no syllable, or a dot.
 *
 * <p>The text is only added to, never rewritten (see {@link Splice}); existing lyrics and directions stay untouched,
 * ours take the next free lyric number and carry {@code name="count"}.
 */
public final class Annotator {

    private final Splice splice;
    private final Selection selection;
    private final Unplayed unplayed;
    private final boolean feltDots;
    private final NoteNames names;

    /** What stands under a felt note, if anything. */
    private static final String FELT = "\u00b7";

    /** A syllable or a felt note's dot, at its place in the notation. */
    private record Word(Offset at, String say, boolean played) {
    }

    private Annotator(String text, Selection selection, Unplayed unplayed, boolean feltDots, NoteNames names) {
        this.splice = new Splice(text);
        this.selection = selection;
        this.unplayed = unplayed;
        this.feltDots = feltDots;
        this.names = names;
    }

    /** Felt notes have nothing below them, changes are told in English. */
    public static Splice annotate(String text, List<PartCounts> parts, Selection selection, Unplayed unplayed) {
        return annotate(text, parts, selection, unplayed, false, NoteNames.SYMBOLS);
    }

    /**
     * @param text a score's text without annotations of countstave ({@link OwnMarks#strip})
     * @param parts the counts of the parts to annotate, planned from this very text
     * @param selection the voices that were counted
     * @param unplayed which unplayed counts are shown
     * @param feltDots whether a felt note has a lyric of its own, a dot; else it has none
     * @param names the language of the marks of change
     */
    public static Splice annotate(String text, List<PartCounts> parts, Selection selection, Unplayed unplayed,
            boolean feltDots, NoteNames names) {
        Annotator annotator = new Annotator(text, selection, unplayed, feltDots, names);
        for (PartCounts part : parts) {
            annotator.annotate(part);
        }
        return annotator.splice;
    }

    private void annotate(PartCounts part) {
        String number = String.valueOf(part.part().lastLyricNumber() + 1);
        ChangeWords changes = new ChangeWords(part.plan().options());
        for (BarCounts bar : part.bars()) {
            BarTimeline timeline = bar.timeline();
            for (ChangeMark mark : changes.next(bar.plan())) {
                direction(timeline.bar(), timeline.writtenAt(mark.at()), "above", mark.text(names));
            }
            lyrics(bar, words(bar, ShownCounts.of(bar, part.system(), unplayed).counts()), number);
        }
    }

    // lyrics

    /** What is shown of a bar, in order. */
    private List<Word> words(BarCounts bar, List<Count> shown) {
        BarTimeline timeline = bar.timeline();
        List<Word> words = new ArrayList<>();
        List<Offset> felt = feltDots ? felt(bar) : List.of();
        int next = 0;
        for (Count count : shown) {
            while (next < felt.size() && felt.get(next).isBefore(count.at())) {
                words.add(new Word(timeline.writtenAt(felt.get(next++)), FELT, true));
            }
            words.add(new Word(timeline.writtenAt(count.at()), count.say(), count.played()));
        }
        felt.subList(next, felt.size()).forEach(at -> words.add(new Word(timeline.writtenAt(at), FELT, true)));
        return words;
    }

    private static List<Offset> felt(BarCounts bar) {
        return bar.plan().segments().stream().flatMap(s -> s.felt().stream()).toList();
    }

    private void lyrics(BarCounts bar, List<Word> words, String number) {
        BarTimeline timeline = bar.timeline();
        TreeMap<Offset, Event> carriers = carriers(timeline.bar());
        if (!feltDots) {
            // what is said after a felt note must not look as if it were said on it
            felt(bar).forEach(at -> carriers.remove(timeline.writtenAt(at)));
        }
        if (carriers.isEmpty()) {
            directions(timeline, words);
            return;
        }
        Map<Offset, List<Word>> under = new TreeMap<>();
        for (Word word : words) {
            Offset carrier = carriers.floorKey(word.at());
            under.computeIfAbsent(carrier == null ? carriers.firstKey() : carrier, c -> new ArrayList<>()).add(word);
        }
        under.forEach((at, here) -> lyric(carriers.get(at), line(here), number));
    }

    /** Where lyrics may stand: every attack, every rest, and whatever sounds at the bar's start. */
    private TreeMap<Offset, Event> carriers(Bar bar) {
        TreeMap<Offset, Event> carriers = new TreeMap<>();
        for (Voice voice : bar.voices()) {
            for (Event event : voice.events()) {
                if (!selection.takes(voice.name(), event.staff()) || event.isGrace() || !event.printed()
                        && !event.isAttack() || !event.start().isWithin(Offset.ZERO, bar.end())) {
                    continue;
                }
                boolean waits = event.isRest() || event.cue() || event.start().equals(Offset.ZERO);
                if (event.isAttack()) {
                    // of several voices that attack together the first one has the syllable
                    carriers.merge(event.start(), event, (old, now) -> old.isAttack() ? old : now);
                } else if (waits) {
                    carriers.putIfAbsent(event.start(), event);
                }
            }
        }
        return carriers;
    }

    private void lyric(Event event, String words, String number) {
        int slot = event.source().lyricSlot();
        splice.insert(slot, splice.indentOfElementEndingAt(slot) + "<lyric number=\"" + number + "\" name=\"count\">"
                + OwnMarks.MARK + "<syllabic>single</syllabic><text>" + MarkupText.text(words) + "</text></lyric>");
    }

    /** A bar without notes of its own (a repeat sign): its counts stand as words below the staff, beat by beat. */
    private void directions(BarTimeline timeline, List<Word> words) {
        Map<Offset, List<Word>> byBeat = new TreeMap<>();
        for (Word word : words) {
            Offset beat = timeline.beatAt(word.at()).start();
            byBeat.computeIfAbsent(beat.isBefore(Offset.ZERO) ? Offset.ZERO : beat, b -> new ArrayList<>()).add(word);
        }
        byBeat.forEach((at, here) -> direction(timeline.bar(), at, "below", line(here)));
    }

    /** Counts in a row, those that are not played in parentheses: {@code 1 (e &) a}. */
    private static String line(List<Word> words) {
        StringBuilder line = new StringBuilder();
        boolean open = false;
        for (Word word : words) {
            if (open && word.played()) {
                line.append(')');
            }
            line.append(line.isEmpty() ? "" : " ");
            if (!open && !word.played()) {
                line.append('(');
            }
            open = !word.played();
            line.append(word.say());
        }
        return line.append(open ? ")" : "").toString();
    }

    // marks

    private void direction(Bar bar, Offset at, String placement, String words) {
        Event anchor = anchor(bar, at);
        int position = anchor != null ? anchor.source().start() : endOfContent(bar);
        Duration after = at.minus(anchor != null ? anchor.start() : Offset.ZERO);
        Proportion divisions = anchor != null ? anchor.notation().divisions() : bar.source().divisions();
        String indent = anchor != null ? splice.indentAt(position) : splice.indentOfElementEndingAt(position);
        StringBuilder element = new StringBuilder(indent).append("<direction placement=\"").append(placement)
                .append("\">").append(OwnMarks.MARK).append("<direction-type><words font-style=\"italic\">")
                .append(MarkupText.text(words)).append("</words></direction-type>");
        if (!after.isZero()) {
            element.append("<offset>").append(divisions(after, divisions)).append("</offset>");
        }
        if (anchor != null && anchor.staff() > 1) {
            element.append("<staff>").append(anchor.staff()).append("</staff>");
        }
        splice.insert(position, element.append("</direction>").toString());
    }

    /** The counted event that begins at {@code at}, else the last one that begins before it; null in an empty bar. */
    private Event anchor(Bar bar, Offset at) {
        Event best = null;
        for (Voice voice : bar.voices()) {
            for (Event event : voice.events()) {
                if (event.isGrace() || !selection.takes(voice.name(), event.staff()) || event.start().isAfter(at)) {
                    continue;
                }
                if (best == null || event.start().isAfter(best.start())) {
                    best = event;
                }
            }
        }
        return best;
    }

    /** Where the closing tag of a bar begins. */
    private int endOfContent(Bar bar) {
        return splice.lastTagBefore(bar.source().spot().end());
    }

    /**
     * A length in the divisions of the place. The standard's divisions are decimals, but most readers expect whole
     * numbers: a fraction is written only where it is short and exact.
     */
    private static String divisions(Duration length, Proportion perQuarter) {
        Proportion exact = length.over(Duration.QUARTER).times(perQuarter);
        if (exact.isWhole()) {
            return exact.toString();
        }
        Proportion tenThousandths = exact.times(10_000);
        return tenThousandths.isWhole()
                ? BigDecimal.valueOf(tenThousandths.numerator(), 4).stripTrailingZeros().toPlainString()
                : String.valueOf(Math.round(exact.toDouble()));
    }
}
