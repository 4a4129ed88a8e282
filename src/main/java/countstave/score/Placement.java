package countstave.score;

/** On which side of the staff something stands. */
public enum Placement { ABOVE, BELOW }
