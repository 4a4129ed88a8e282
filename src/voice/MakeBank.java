import countstave.voice.CleanSound;
import countstave.voice.Clip;
import countstave.voice.Register;
import countstave.voice.StepCode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;

/**
 * Makes the bank of spoken syllables from the word list beside it, with a speech program that is called as a command:
 * {@code java -cp target/classes src/voice/MakeBank.java src/voice/words.txt src/main/resources/countstave/voice}.
 * What becomes of a word after it is spoken is the program's own code, the same that takes a person's own recordings.
 */
public final class MakeBank {

    private static final String PROGRAM = "espeak-ng";
    /** Words a minute, as the program counts them: crisp, as one counts. */
    private static final int SPEED = 280;
    private static final int[] SLOWER = {280, 240, 200, 170, 140, 120};
    private static final int[] FASTER = {280, 310, 340, 370, 400};
    /** A word shorter than this is said slower, one longer than that faster; seconds. */
    private static final double SHORTEST = 0.11;
    private static final double LONGEST = 0.40;

    private final Path words;
    private final Path target;

    private MakeBank(Path words, Path target) {
        this.words = words;
        this.target = target;
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        if (args.length != 2) {
            System.err.println("usage: java -cp target/classes src/voice/MakeBank.java WORDS TARGET");
            System.exit(2);
        }
        MakeBank maker = new MakeBank(Path.of(args[0]), Path.of(args[1]));
        for (Register register : Register.values()) {
            maker.make(register, register == Register.LOW ? "m3" : "f1");
        }
    }

    private void make(Register register, String variant) throws IOException, InterruptedException {
        StringBuilder table = new StringBuilder("# Words of the bank in the order of " + register.id() + ".adpcm:"
                + " printed word | as it is said | samples | first step | perceptual centre, milliseconds from the first sample\n"
                + "# Made by src/voice/MakeBank.java with " + version() + ", variant " + variant + "\n");
        ByteArrayOutputStream sound = new ByteArrayOutputStream();
        String voice = "";
        double noise = 0;
        double power = 0;
        for (String line : Files.readAllLines(words)) {
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            String[] cells = line.split(" *\\| *");
            if (line.startsWith("[")) {
                String[] section = cells[0].split("\\] *");
                table.append('\n').append(section[0]).append("]\n");
                voice = section[1];
                continue;
            }
            float[] clean = spoken(voice, variant, cells.length > 2 && !cells[2].isEmpty() ? cells[2] : cells[1]);
            byte[] code = null;
            int beginning = 0;
            double least = Double.MAX_VALUE;
            for (int i = 0; i < StepCode.BEGINNINGS; i++) {
                byte[] tried = StepCode.encode(clean, i);
                double error = error(clean, StepCode.decode(tried, 0, clean.length, i));
                if (error < least) {
                    least = error;
                    code = tried;
                    beginning = i;
                }
            }
            noise += least;
            power += error(clean, new float[clean.length]);
            Clip clip = Clip.of(StepCode.decode(code, 0, clean.length, beginning));
            table.append(String.format(Locale.ROOT, "%s | %s | %d | %d | %.2f%n", cells[0], cells[1], clean.length, beginning,
                    1000 * clip.centre() / Clip.RATE));
            sound.write(code);
        }
        Files.createDirectories(target);
        Files.write(target.resolve(register.id() + ".adpcm"), sound.toByteArray());
        Files.writeString(target.resolve(register.id() + ".txt"), table);
        System.out.printf(Locale.ROOT, "%s: %d bytes, coding noise %.1f dB below the words%n", register.id(), sound.size(),
                10 * Math.log10(power / noise));
    }

    private static double error(float[] one, float[] other) {
        double sum = 0;
        for (int i = 0; i < one.length; i++) {
            sum += (one[i] - other[i]) * (one[i] - other[i]);
        }
        return sum;
    }

    private static float[] spoken(String voice, String variant, String input) throws IOException, InterruptedException {
        int colon = input.indexOf(":[[");
        String speaker = (colon > 0 ? input.substring(0, colon) : voice) + "+" + variant;
        String text = colon > 0 ? input.substring(colon + 1) : input;
        float[] word = said(speaker, SPEED, text);
        for (int i = 1; i < SLOWER.length && seconds(word) < SHORTEST; i++) {
            word = said(speaker, SLOWER[i], text);
        }
        for (int i = 1; i < FASTER.length && seconds(word) > LONGEST; i++) {
            word = said(speaker, FASTER[i], text);
        }
        return word;
    }

    private static double seconds(float[] word) {
        return (double) word.length / Clip.RATE;
    }

    private static float[] said(String speaker, int speed, String text) throws IOException, InterruptedException {
        byte[] wave = run(PROGRAM, "-v", speaker, "-s", Integer.toString(speed), "--stdout", text);
        // a header of 44 bytes whose lengths a stream cannot know; 16 bits, one channel
        ByteBuffer buffer = ByteBuffer.wrap(wave).order(ByteOrder.LITTLE_ENDIAN);
        if (buffer.getInt(24) != Clip.RATE) {
            throw new IOException(speaker + " speaks at another rate than " + Clip.RATE);
        }
        float[] sound = new float[(wave.length - 44) / 2];
        for (int i = 0; i < sound.length; i++) {
            sound[i] = buffer.getShort(44 + 2 * i) / 32_768f;
        }
        if (sound.length == 0 || CleanSound.isSilent(sound)) {
            throw new IOException(speaker + " says nothing for " + text);
        }
        return CleanSound.of(sound);
    }

    private static String version() throws IOException, InterruptedException {
        String text = new String(run(PROGRAM, "--version"), StandardCharsets.UTF_8);
        return text.substring(0, text.indexOf("  Data")).strip();
    }

    private static byte[] run(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
        byte[] out;
        try (InputStream in = process.getInputStream()) {
            out = in.readAllBytes();
        }
        if (process.waitFor() != 0) {
            throw new IOException(Arrays.toString(command) + " has failed");
        }
        return out;
    }
}
