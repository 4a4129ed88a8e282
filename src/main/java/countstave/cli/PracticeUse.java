package countstave.cli;

import countstave.folder.GuideFiles;
import countstave.sound.Layer;
import java.util.EnumSet;
import java.util.Set;
import picocli.CommandLine.Model.CommandSpec;

/**
 * Which options of {@code practice} do something where its plan goes: printed, to a page or into a folder. Each other one that
 * was typed is refused in one line, so that nobody waits for what it was to do.
 */
final class PracticeUse {

    private static final String FOLDER = "name a folder with -o";
    private static final String HEARD = "what is heard";

    private final CommandSpec command;
    private final SoundOptions sound;
    private final VoiceOptions voice;

    /** @param voice whose speaker was chosen already */
    PracticeUse(CommandSpec command, SoundOptions sound, VoiceOptions voice) {
        this.command = command;
        this.sound = sound;
        this.voice = voice;
    }

    /** For a plan that is printed. */
    void printed(OutputOptions files, boolean json) {
        files.refuseForce();
        GivenOptions.refuseAllBut(Set.of("--at"), command, SoundOptions.class, "guide tracks", FOLDER);
        voice.refuse(command, HEARD, FOLDER);
        if (json) {
            GivenOptions.refuse(command, "--ascii", "text", "leave it out, or --format json");
        } else {
            GivenOptions.refuse(command, "--at", "guide tracks and data", FOLDER + ", or add --format json");
        }
    }

    /** For a page by itself. */
    void page() {
        GivenOptions.refuse(command, SoundOptions.class, "guide tracks", "set it on the page, or " + FOLDER);
        GivenOptions.refuse(command, DayChoice.class, "the plan of days", FOLDER);
        GivenOptions.refuse(command, "--top", "the plan", FOLDER + ", or leave out -o");
        GivenOptions.refuse(command, "--format", "what is printed", "leave out -o");
        GivenOptions.refuse(command, "--ascii", "what is printed", "leave out -o");
        refuseSofterSilence();
    }

    private void refuseSofterSilence() {
        if (voice.isSilent()) {
            GivenOptions.refuse(command, "--voice-softer", "a voice that speaks", "leave out --voice none");
        }
    }

    /** For a folder, which has the page too. */
    void folder() {
        GivenOptions.refuse(command, "--format", "what is printed", "leave it out, the folder has the text and the data");
        GivenOptions.refuse(command, "--ascii", "what is printed", "leave it out, or -o");
        Set<Layer> heard = EnumSet.copyOf(sound.layers);
        if (!heard.contains(Layer.VOICE)) {
            voice.refuse(command, "a voice that speaks", "add voice to --layers");
        } else {
            refuseSofterSilence();
        }
        if (sound.tracks == 0) {
            // the practice page speaks or not by the layers, and the data tell the tempi
            GivenOptions.refuseAllBut(Set.of("--tracks", "--sound", "--layers", "--at"), command, SoundOptions.class, "guide tracks",
                    "leave out --tracks 0");
        }
        if (!sound.formats.contains(GuideFiles.Format.wav)) {
            GivenOptions.refuse(command, "--wav-tracks", "WAV files", "add wav to --sound");
            GivenOptions.refuse(command, "--peak", "WAV files", "add wav to --sound");
        }
        if (!heard.contains(Layer.GRID)) {
            GivenOptions.refuse(command, "--whole-grid", "clicks on the counted positions", "add grid to --layers");
        }
        if (!heard.contains(Layer.RHYTHM)) {
            GivenOptions.refuse(command, "--place", "the played notes", "add rhythm to --layers");
        }
        if (!heard.contains(Layer.BAR) && !heard.contains(Layer.BEAT)) {
            GivenOptions.refuse(command, "--click", "clicks on beats", "add beat to --layers");
        }
    }
}
