package countstave.musicxml;

import countstave.score.Direction;
import countstave.score.Event;
import countstave.score.Fact;
import countstave.score.Head;
import countstave.score.Look;
import countstave.score.Lyric;
import countstave.score.ScoreException;
import countstave.score.SourceSpot;
import countstave.score.TupletMark;
import countstave.score.Written;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import countstave.time.Ratio;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.audiveris.proxymusic.Note;
import org.audiveris.proxymusic.YesNo;

/** Reads the notes of a part and moves the cursor over them, in exact time. */
final class NoteReader {

    private static final int MOST_STAVES = 100;

    private final BarClock clock;
    private final FactList facts;
    private final ReadOptions options;
    private final Supplier<String> place;
    private final LengthReader lengths;
    private final VoiceNames voices = new VoiceNames();
    /** Of each voice, the ratios of the brackets that are open, by number. */
    private final Map<String, Map<Integer, Ratio>> brackets = new HashMap<>();
    private Set<Note> rounded = Set.of();
    private BarDraft bar;
    private EventDraft last;
    private Duration tupletUnit;
    private int highestStaff = 1;
    private int lastLyricNumber;

    /** @param place tells for a message where the reader is */
    NoteReader(BarClock clock, FactList facts, ReadOptions options, Supplier<String> place) {
        this.clock = clock;
        this.facts = facts;
        this.options = options;
        this.place = place;
        this.lengths = new LengthReader(facts, place);
    }

    int highestStaff() {
        return highestStaff;
    }

    int lastLyricNumber() {
        return lastLyricNumber;
    }

    Proportion divisions() {
        return lengths.divisions();
    }

    void divisions(BigDecimal number) {
        lengths.divisions(number);
    }

    /** The notes of this bar that last what is written however their durations differ. */
    void rounded(Set<Note> found) {
        rounded = found;
    }

    void beginBar(BarDraft draft) {
        bar = draft;
        last = null;
        tupletUnit = null;
        voices.beginBar();
    }

    void endBar() {
        HiddenNotes.settle(bar, options.countHidden(), facts);
        bar.close();
        bar.tuplets = TupletFinder.find(bar.voices);
        last = null;
    }

    void backup(BigDecimal duration) {
        Duration length = jumpLength(duration, Fact.BadDuration.Fault.BACKUP);
        last = null;
        if (length == null) {
            return;
        }
        voices.wentBack();
        if (!clock.back(length)) {
            facts.addOnce(new Fact.BackupTooFar(facts.place(bar, null, Offset.ZERO)));
        }
    }

    void forward(BigDecimal duration) {
        Duration length = jumpLength(duration, Fact.BadDuration.Fault.FORWARD);
        last = null;
        if (length != null) {
            clock.forward(length, tupletUnit, lengths.division());
            bar.fill(clock.now());
            checkLength();
        }
    }

    private Duration jumpLength(BigDecimal duration, Fact.BadDuration.Fault fault) {
        Duration length = lengths.sounding(duration, null, bar, null, clock.now());
        if (length == null || length.isZero()) {
            facts.addOnce(new Fact.BadDuration(facts.place(bar, null, clock.now()), fault, false));
            return null;
        }
        return length;
    }

    void note(Note note, SourceSpot spot) {
        NotationReader notations = new NotationReader(note);
        Head head = NoteConverter.head(note, notations, options.countHidden());
        if (note.getChord() != null && last != null && (note.getGrace() != null) == (last.sounding == null
                && last.grace != Event.Grace.NONE)) {
            join(note, head, notations);
            return;
        }
        EventDraft draft = draft(note, head, notations, spot);
        String voice = voices.name(note.getVoice(), clock.now());
        Written written = NoteConverter.written(note);
        if (draft.grace == Event.Grace.NONE) {
            draft.sounding = lengths.sounding(note.getDuration(), written, bar, voice, clock.now());
            draft.divisions = lengths.divisions();
            written = bracketed(written, draft, voice);
        }
        draft.written = written;
        if (written != null && !written.ratio().isPlain()) {
            tupletUnit = written.length();
            clock.guess(tupletUnit, lengths.division());
        }
        draft.start = clock.now();
        draft.length = length(draft, voice, note);
        bar.drafts.computeIfAbsent(voice, v -> new ArrayList<>()).add(draft);
        voices.filled(voice, draft.start.plus(draft.length));
        if (draft.grace == Event.Grace.NONE) {
            clock.advance(draft.length, draft.sounding == null ? draft.length : draft.sounding);
            if (draft.barRest) {
                bar.barRest = bar.barRest == null || bar.barRest.isShorterThan(draft.length) ? draft.length
                        : bar.barRest;
            } else {
                bar.hasContent = true;
                bar.fill(clock.now());
            }
            checkLength();
        } else {
            bar.hasContent = true;
        }
        for (String sign : notations.dynamics()) {
            bar.directions.add(new Direction(draft.start, draft.staff, Direction.Kind.DYNAMICS, sign, null, null));
        }
        last = draft;
    }

    private void checkLength() {
        if (clock.now().sinceStart().isLongerThan(Duration.of(LengthReader.LONGEST, 1))) {
            throw new ScoreException(place.get() + ": the bar is longer than " + LengthReader.LONGEST
                    + " whole notes, which cannot be right; correct its durations or export the score again");
        }
    }

    private EventDraft draft(Note note, Head head, NotationReader notations, SourceSpot spot) {
        EventDraft draft = new EventDraft();
        draft.kind = note.getRest() != null ? Event.Kind.REST : Event.Kind.NOTE;
        if (head != null) {
            draft.heads.add(head);
        }
        draft.grace = NoteConverter.grace(note);
        draft.divisions = lengths.divisions();
        draft.cue = note.getCue() != null;
        draft.barRest = note.getRest() != null && note.getRest().getMeasure() == YesNo.YES;
        draft.printed = NoteConverter.isPrinted(note);
        draft.staff = Rationals.bounded(note.getStaff(), 1, MOST_STAVES, 1);
        highestStaff = Math.max(highestStaff, draft.staff);
        draft.look = look(note, notations);
        draft.marks = notations.tuplets();
        draft.source = spot;
        draft.openTremolo = options.openTremolo();
        return draft;
    }

    private Look look(Note note, NotationReader notations) {
        List<Lyric> lyrics = NoteConverter.lyrics(note);
        for (Lyric lyric : lyrics) {
            if (lyric.number().matches("[0-9]{1,6}")) {
                lastLyricNumber = Math.max(lastLyricNumber, Integer.parseInt(lyric.number()));
            }
        }
        Look look = NoteConverter.look(note, notations, lyrics);
        return look.isPlain() ? Look.PLAIN : look;
    }

    /** A further member of a chord: it adds a head, and its own length is nobody's business. */
    private void join(Note note, Head head, NotationReader notations) {
        if (head != null) {
            last.heads.add(head);
        }
        last.printed |= NoteConverter.isPrinted(note);
        last.look = last.look.and(look(note, notations));
        last.marks = Look.union(last.marks, notations.tuplets());
    }

    /**
     * Some files bracket a tuplet and scale its durations, but leave out {@code time-modification}: where the bracket's
     * ratio explains the duration, it is part of the notation.
     */
    private Written bracketed(Written written, EventDraft draft, String voice) {
        Map<Integer, Ratio> open = brackets.computeIfAbsent(voice, v -> new HashMap<>());
        for (TupletMark mark : draft.marks) {
            if (mark.start() && mark.shownRatio() != null) {
                open.put(mark.number(), mark.shownRatio());
            }
        }
        Written read = written;
        if (written != null && written.ratio().equals(Ratio.ONE) && draft.sounding != null && !open.isEmpty()
                && !lengths.agree(written.length(), draft.sounding)) {
            Ratio product = Ratio.ONE;
            for (Ratio ratio : open.values()) {
                product = product.times(ratio);
            }
            Written scaled = Written.of(written.value(), written.dots(), product);
            read = lengths.agree(scaled.length(), draft.sounding) ? scaled : written;
        }
        for (TupletMark mark : draft.marks) {
            if (!mark.start()) {
                open.remove(mark.number());
            }
        }
        return read;
    }

    /** The exact length: design of the whole timeline, see {@link LengthReader}. */
    private Duration length(EventDraft draft, String voice, Note note) {
        if (draft.grace != Event.Grace.NONE) {
            return Duration.ZERO;
        }
        Duration written = draft.written == null ? null : draft.written.length();
        Duration sounding = draft.sounding;
        if (draft.barRest) {
            return sounding != null && sounding.isPositive() ? sounding
                    : bar.meter.isSenzaMisura() ? Duration.WHOLE : bar.meter.length();
        }
        if (sounding == null) {
            if (note.getDuration() == null) {
                badDuration(Fact.BadDuration.Fault.MISSING, draft, voice);
            }
            return written == null ? Duration.ZERO : written;
        }
        if (written == null) {
            if (sounding.isZero()) {
                badDuration(Fact.BadDuration.Fault.ZERO, draft, voice);
            }
            return sounding;
        }
        if (lengths.agree(written, sounding) || rounded.contains(note)) {
            draft.agreement = sounding.isZero() || written.equals(sounding) ? EventDraft.Agreement.EXACT
                    : EventDraft.Agreement.ROUNDED;
            return written;
        }
        if (sounding.isZero()) {
            badDuration(Fact.BadDuration.Fault.ZERO, draft, voice);
            return written;
        }
        draft.agreement = EventDraft.Agreement.DIFFERENT;
        return sounding;
    }

    private void badDuration(Fact.BadDuration.Fault fault, EventDraft draft, String voice) {
        facts.addOnce(new Fact.BadDuration(facts.place(bar, voice, draft.start), fault, draft.written != null));
    }
}
