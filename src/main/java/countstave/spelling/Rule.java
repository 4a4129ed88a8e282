package countstave.spelling;

/** One thing that makes a rhythm wrong or needlessly hard to count. */
public interface Rule {

    RuleInfo info();

    /** Looks through a part and hands on what it finds. */
    void check(PartView part, Findings findings);
}
