/**
 * Texts that come from files and are not music: settings that are read, and words that are made fit to be shown, or for a
 * URI.
 */
package countstave.plain;
