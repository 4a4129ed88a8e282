/**
 * Guide tracks: clicks that follow the count, as a Standard MIDI file and as a WAV file.
 *
 * <p>Where each click lies is decided once, exactly, in {@link countstave.sound.GuideTrack}; the two writers turn the
 * same positions into ticks and samples. No audio device is needed: nothing is played here.
 */
package countstave.sound;
