package countstave.musicxml;

import countstave.score.ScoreException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/**
 * A score's file: its bytes, the text in them, and the way back from a changed text to a file of the same encoding.
 *
 * <p>Immutable. {@link #text()} begins with the first character after a byte order mark; every position in a
 * {@link countstave.score.SourceSpot} counts from there.
 */
public final class ScoreFile {

    /** A score of a million notes has some 300 MB. */
    private static final long MOST_BYTES = 1L << 30;

    private final String name;
    private final byte[] whole;
    private final Archive archive;
    private final byte[] root;
    private final TextEncoding encoding;
    private final String text;

    private ScoreFile(String name, byte[] whole, Archive archive, byte[] root, TextEncoding encoding, String text) {
        this.name = name;
        this.whole = whole;
        this.archive = archive;
        this.root = root;
        this.encoding = encoding;
        this.text = text;
    }

    /**
     * Reads a file.
     *
     * @throws ScoreException if it cannot be read or is not text or a compressed score
     */
    public static ScoreFile load(Path path) {
        return load(path, path.getFileName() == null ? path.toString() : path.getFileName().toString());
    }

    /**
     * The same where the name cannot be told from the path.
     *
     * @param name the file's name, without folders
     */
    public static ScoreFile load(Path path, String name) {
        byte[] bytes;
        try {
            if (Files.isDirectory(path)) {
                throw new ScoreException("this is a folder: name a score in it");
            }
            if (Files.size(path) > MOST_BYTES) {
                throw new ScoreException("the file is larger than 1 GiB: no score is; check what it is");
            }
            bytes = Files.readAllBytes(path);
        } catch (NoSuchFileException e) {
            throw new ScoreException("there is no such file: check the name", e);
        } catch (AccessDeniedException e) {
            throw new ScoreException("the file may not be read: change its permissions", e);
        } catch (IOException e) {
            throw new ScoreException("the file cannot be read (" + Plain.shown(e.getMessage()) + ")", e);
        }
        return of(name, bytes);
    }

    /**
     * Takes bytes that are at hand (standard input).
     *
     * @param name what to call the score
     * @throws ScoreException if they are not text or a compressed score
     */
    public static ScoreFile of(String name, byte[] bytes) {
        if (bytes.length == 0) {
            throw new ScoreException("the file is empty: export the score again");
        }
        Archive archive = Archive.isZip(bytes) ? Archive.unpack(bytes) : null;
        byte[] root = archive == null ? bytes : archive.root();
        TextEncoding encoding = TextEncoding.of(root);
        return new ScoreFile(name, bytes, archive, root, encoding, encoding.decode(root));
    }

    /**
     * This file with another text in place of its own: same encoding and byte order mark. Characters that the encoding
     * does not have become numeric character references.
     */
    public ScoreFile withText(String newText) {
        if (newText.equals(text)) {
            return this;
        }
        byte[] newRoot = encoding.encode(newText);
        return new ScoreFile(name, null, archive == null ? null : archive.withRoot(newRoot), newRoot, encoding,
                newText);
    }

    /**
     * Writes this score with insertions into its text, encoded as it came: as a plain file, or as {@link #toMxl()} has it.
     * Characters that the encoding does not have become numeric character references. {@code out} stays open.
     */
    public void write(Splice edited, boolean compressed, OutputStream out) throws IOException {
        if (edited.isEmpty()) {
            out.write(compressed ? toMxl() : root);
        } else if (compressed) {
            Archive box = archive == null ? Archive.around(stem() + ".musicxml", root) : archive;
            box.pack(out, entry -> encode(edited, entry));
        } else {
            encode(edited, out);
        }
    }

    private void encode(Splice edited, OutputStream out) throws IOException {
        try (EncodingWriter writer = encoding.writer(out)) {
            edited.appendTo(writer);
        }
    }

    /** The score as a plain file. */
    public byte[] toPlain() {
        return root.clone();
    }

    /**
     * The score as a compressed file: the one it came in, with all other entries as they were, or a new one around a
     * plain score.
     */
    public byte[] toMxl() {
        if (archive == null) {
            return Archive.around(stem() + ".musicxml", root).pack();
        }
        return whole != null ? whole.clone() : archive.pack();
    }

    /** The score in the form it came in, plain or compressed. */
    public byte[] toBytes() {
        return isCompressed() ? toMxl() : toPlain();
    }

    /** Name of the file, without folders. */
    public String name() {
        return name;
    }

    /** The name without its ending. */
    public String stem() {
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }

    /** Raw bytes of the score itself; of a compressed file, those of its root score. */
    public byte[] bytes() {
        return root.clone();
    }

    /** The decoded text of the score, without a byte order mark. */
    public String text() {
        return text;
    }

    public Charset charset() {
        return encoding.charset();
    }

    public boolean hasBom() {
        return encoding.mark().length > 0;
    }

    /** Whether it came as {@code .mxl}. */
    public boolean isCompressed() {
        return archive != null;
    }

    /** Names of all entries of a compressed file in order; empty for a plain one. */
    public java.util.List<String> entryNames() {
        return archive == null ? java.util.List.of() : archive.entries().stream().map(Archive.Entry::name).toList();
    }
}
