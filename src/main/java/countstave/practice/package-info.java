/**
 * From a plan to the work of learning it: how fast the counts must be said, which passages are hard, tempo steps,
 * counts thinned in stages, and places to breathe.
 *
 * <p>Pure functions of a part's plan and words. Figures that rank are heuristics and say so (docs/practice.md);
 * positions, speeds and seconds are exact.
 */
package countstave.practice;
