package countstave.count;

/** Placeholder of the data-driven counting system; see DEVELOPERS.md. */
public final class CountingSystem {
}
