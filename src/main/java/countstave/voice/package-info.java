/**
 * The voice that counts: spoken syllables, when each of them is heard, and how they are made to fit between each other.
 * All sound here is one channel of {@link countstave.voice.Clip#RATE} samples a second between −1 and 1.
 */
package countstave.voice;
