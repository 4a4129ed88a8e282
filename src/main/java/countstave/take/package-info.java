/**
 * Takes: recordings of what was played, as sound (WAV) or as a Standard MIDI file, and the moments at which something
 * begins to sound in them. Nothing is recorded here, and nothing of music is known: bars and counts come later.
 *
 * <p>Sound is read in blocks and never kept as a whole, twice: once for its levels ({@link countstave.take.Levels}), once
 * for its onsets; only of a take with a guide track that speaks two minutes are kept for as long as it takes to learn from
 * them ({@link countstave.take.RoomFilter}). Seconds in this package are measurements, and so floating point.
 */
package countstave.take;
