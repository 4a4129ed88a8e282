package countstave.take;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes WAV files of every format that is read, byte by byte and not by the code under test; and reads all samples of one. */
public final class SoundFiles {

    /** Bits of a sample, and whether they are a number with a point. */
    public record Form(int bits, boolean floating, int channels) {

        public static final Form PLAIN = new Form(16, false, 1);
    }

    private SoundFiles() {
    }

    public static Path write(Path file, float[] samples, int rate) throws IOException {
        return write(file, samples, rate, Form.PLAIN);
    }

    public static Path write(Path file, float[] samples, int rate, Form form) throws IOException {
        int width = form.bits / 8;
        ByteBuffer data = ByteBuffer.allocate(samples.length * width * form.channels).order(ByteOrder.LITTLE_ENDIAN);
        for (float sample : samples) {
            for (int channel = 0; channel < form.channels; channel++) {
                put(data, sample, form);
            }
        }
        Files.write(file, wav(data.array(), rate, form, data.capacity()));
        return file;
    }

    /** @param said how many bytes the header says */
    public static byte[] wav(byte[] data, int rate, Form form, int said) throws IOException {
        int frame = form.bits / 8 * form.channels;
        ByteBuffer header = ByteBuffer.allocate(44).order(ByteOrder.LITTLE_ENDIAN);
        header.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(36 + said).put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII));
        header.putInt(16).putShort((short) (form.floating ? 3 : 1)).putShort((short) form.channels).putInt(rate)
                .putInt(rate * frame).putShort((short) frame).putShort((short) form.bits);
        header.put("data".getBytes(StandardCharsets.US_ASCII)).putInt(said);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(header.array());
        out.write(data);
        return out.toByteArray();
    }

    private static void put(ByteBuffer data, float sample, Form form) {
        if (form.floating) {
            if (form.bits == 32) {
                data.putFloat(sample);
            } else {
                data.putDouble(sample);
            }
            return;
        }
        double clipped = Math.max(-1, Math.min(1, sample));
        if (form.bits == 8) {
            data.put((byte) Math.round(128 + 127 * clipped));
            return;
        }
        long value = Math.round(clipped * ((1L << form.bits - 1) - 1));
        for (int i = 0; i < form.bits / 8; i++) {
            data.put((byte) (value >> 8 * i));
        }
    }

    /** All samples of a WAV file, thinned as the program does. */
    public static float[] read(Path file) throws IOException {
        try (SoundStream stream = SoundStream.open(file, file.toString())) {
            float[] all = new float[1 << 20];
            int n = 0;
            float[] block = new float[Samples.BLOCK];
            for (int got = stream.read(block); got > 0; got = stream.read(block)) {
                if (n + got > all.length) {
                    all = java.util.Arrays.copyOf(all, 2 * all.length);
                }
                System.arraycopy(block, 0, all, n, got);
                n += got;
            }
            return java.util.Arrays.copyOf(all, n);
        }
    }
}
