/**
 * Reads MusicXML and writes it back: the only package that knows XML, MusicXML's element names and the binding classes.
 *
 * <p>The way through it: {@link countstave.musicxml.ScoreFile} turns bytes into text (encodings, compressed files),
 * {@link countstave.musicxml.ScoreReader} turns text into {@link countstave.score.Score}.
 */
package countstave.musicxml;
