package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.font.TextFont;
import countstave.score.Bar;

/**
 * What one bar needs to know about the rest.
 *
 * @param staff which staff of the part is engraved, 1 the uppermost
 * @param state what is in force at the bar's start, before the bar's own changes
 * @param previous the bar before, or null
 * @param next the bar after, or null at the end of the part
 * @param music the music font
 * @param text the text font
 */
public record EngraveContext(int staff, StaffState state, Bar previous, Bar next, MusicFont music, TextFont text) {
}
