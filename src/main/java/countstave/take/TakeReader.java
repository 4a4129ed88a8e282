package countstave.take;

import countstave.score.ScoreException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Reads a take, whatever it is, by what is in it and not by its name. */
public final class TakeReader {

    private static final int HEAD = 12;
    private static final double SLIGHTLY_CLIPPED = 2e-4;
    private static final double SHORTEST = 0.1;

    private TakeReader() {
    }

    /**
     * @param name what it is called in messages
     * @param notes which notes of a MIDI file are heard
     * @param click the guide track that is heard in it, or null
     * @throws ScoreException in one line if it cannot be read, or nothing is heard in it
     */
    public static Take read(Path file, String name, NoteChoice notes, GuideFile click) {
        try {
            return switch (format(file, name)) {
                case "MIDI" -> midi(file, name, notes, click);
                case "WAV" -> sound(file, name, notes, click);
                default -> throw new ScoreException(name + " is " + format(file, name) + "; save the take as WAV, or as a"
                        + " Standard MIDI file");
            };
        } catch (IOException e) {
            throw new ScoreException(e instanceof AccessDeniedException ? name + " may not be read; change its permissions"
                    : name + " cannot be read: " + e.getMessage() + "; copy it again", e);
        }
    }

    private static Take midi(Path file, String name, NoteChoice notes, GuideFile click) throws IOException {
        if (click != null) {
            throw new ScoreException(name + " is MIDI, in which no click is heard: leave out --click");
        }
        return MidiTake.read(file, name, notes);
    }

    private static Take sound(Path file, String name, NoteChoice notes, GuideFile click) throws IOException {
        if (!notes.isAll()) {
            throw new ScoreException(name + " is sound, whose notes have no numbers: --notes and --channel are for MIDI; leave"
                    + " them out");
        }
        Samples.Source source = () -> SoundStream.open(file, name);
        Levels levels = Levels.of(source, name);
        if (levels.seconds() < SHORTEST) {
            throw new ScoreException(name + " is shorter than a tenth of a second; record the whole passage");
        }
        List<String> remarks = new ArrayList<>();
        if (levels.clipped() > SLIGHTLY_CLIPPED) {
            remarks.add(String.format(Locale.ROOT, "%s is clipped here and there (%.2f %% of it): the onsets are found, record"
                    + " quieter next time", name, 100 * levels.clipped()));
        }
        GuideBleed heard = click != null ? GuideBleed.find(click, name, levels, source)
                : new GuideBleed(OnsetFinder.find(source, levels), List.of(), List.of());
        remarks.addAll(heard.remarks());
        if (heard.strokes().isEmpty()) {
            throw new ScoreException("no stroke is heard in " + name + "; record it nearer, or louder");
        }
        return new Take(name, Take.Kind.SOUND, levels.seconds(), heard.strokes(), List.of(), heard.clicks(), List.copyOf(remarks));
    }

    /** {@code WAV}, {@code MIDI}, or words for something else. */
    static String format(Path file, String name) throws IOException {
        if (!Files.exists(file)) {
            throw new ScoreException(name + ": there is no such file; check its name");
        }
        if (Files.isDirectory(file)) {
            throw new ScoreException(name + " is a folder; name a take in it");
        }
        byte[] head;
        try (InputStream in = Files.newInputStream(file)) {
            head = in.readNBytes(HEAD);
        }
        if (head.length == 0) {
            throw new ScoreException(name + " is empty; record the take again");
        }
        String text = new String(head, StandardCharsets.ISO_8859_1);
        if (text.startsWith("MThd")) {
            return "MIDI";
        }
        if (text.startsWith("RIFF") && text.endsWith("WAVE")) {
            return "WAV";
        }
        if (text.startsWith("ID3") || head.length > 1 && (head[0] & 0xFF) == 0xFF && (head[1] & 0xE0) == 0xE0) {
            return "MP3 sound, which is not read";
        }
        if (text.startsWith("fLaC") || text.startsWith("OggS") || text.startsWith("FORM") || text.startsWith(".snd")
                || text.startsWith("caff") || text.startsWith("RF64") || text.substring(Math.min(4, head.length)).startsWith("ftyp")) {
            return "sound in a format that is not read";
        }
        return "no sound: neither WAV nor MIDI";
    }
}
