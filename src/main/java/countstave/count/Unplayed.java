package countstave.count;

/** How many of the words that are said but not played are shown. */
public enum Unplayed {
    /** In a beat with an attack off its start every word, in any other beat the number alone. */
    NEEDED,
    /** All. */
    ALL,
    /** None: only what is played. */
    NONE
}
