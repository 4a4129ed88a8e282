package countstave.score;

/**
 * What sort of event it is. There are few, and each is made once.
 *
 * @param kind note or rest; a note that is not printed and left out is a rest that is not printed
 * @param grace whether a grace note stands here, and of what kind
 * @param cue whether it is a cue: it takes its time but is not counted
 * @param barRest whether it is a rest of the whole bar ({@code measure="yes"})
 * @param printed false for {@code print-object="no"}
 */
public record Nature(Event.Kind kind, Event.Grace grace, boolean cue, boolean barRest, boolean printed) {

    private static final int GRACES = Event.Grace.values().length;
    private static final Nature[] ALL = new Nature[Event.Kind.values().length * GRACES * 8];

    /** A plain note. */
    public static final Nature NOTE = of(Event.Kind.NOTE, Event.Grace.NONE, false, false, true);

    /** A plain rest. */
    public static final Nature REST = of(Event.Kind.REST, Event.Grace.NONE, false, false, true);

    public static Nature of(Event.Kind kind, Event.Grace grace, boolean cue, boolean barRest, boolean printed) {
        int flags = (cue ? 4 : 0) + (barRest ? 2 : 0) + (printed ? 1 : 0);
        int place = (kind.ordinal() * GRACES + grace.ordinal()) * 8 + flags;
        Nature known = ALL[place];
        if (known == null) {
            known = new Nature(kind, grace, cue, barRest, printed);
            ALL[place] = known;
        }
        return known;
    }
}
