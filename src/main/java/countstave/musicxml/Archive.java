package countstave.musicxml;

import countstave.plain.MarkupText;
import countstave.score.ScoreException;
import java.io.BufferedOutputStream;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;

/**
 * A compressed score ({@code .mxl}): a zip whose {@code META-INF/container.xml} names the score in it (MusicXML 4.0,
 * "Compressed .mxl files").
 *
 * @param entries every entry, in order
 * @param rootIndex index of the score's entry
 */
record Archive(List<Entry> entries, int rootIndex) {

    static final String CONTAINER = "META-INF/container.xml";
    static final String SCORE_TYPE = "application/vnd.recordare.musicxml+xml";
    private static final String ARCHIVE_TYPE = "application/vnd.recordare.musicxml";
    /** The zip's calendar begins in 1980; its very first day is taken for "before that" and gets an extra field. */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 2, 1, 0, 0);

    /** Limits of what is unpacked: a score of a million notes has some 300 MB. */
    private static final long MOST_BYTES = 1L << 30;
    private static final int MOST_ENTRIES = 2000;
    private static final int MOST_EXPANSION = 200;
    private static final long EXPANSION_FREE = 1L << 20;

    /** One entry: {@code method} is the zip's, {@code time} its local time stamp or null. */
    record Entry(String name, int method, LocalDateTime time, byte[] extra, String comment, byte[] content) {

        boolean isFolder() {
            return name.endsWith("/");
        }
    }

    /** Writes the bytes of an entry. */
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    static boolean isZip(byte[] bytes) {
        return bytes.length >= 4 && bytes[0] == 'P' && bytes[1] == 'K'
                && (bytes[2] == 3 && bytes[3] == 4 || bytes[2] == 5 && bytes[3] == 6);
    }

    static Archive unpack(byte[] bytes) {
        List<Entry> entries = new ArrayList<>();
        long total = 0;
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes), StandardCharsets.UTF_8)) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (entries.size() >= MOST_ENTRIES) {
                    throw new ScoreException("the compressed file holds more than " + MOST_ENTRIES
                            + " files: that is no score; export it again");
                }
                checkName(entry.getName());
                // a few bytes that unpack to gigabytes are an attack
                long limit = Math.min(MOST_BYTES, EXPANSION_FREE + (long) bytes.length * MOST_EXPANSION);
                byte[] content = read(zip, limit - total);
                total += content.length;
                entries.add(new Entry(entry.getName(), entry.getMethod(), timeOf(entry), entry.getExtra(),
                        entry.getComment(), content));
            }
        } catch (ZipException | IllegalArgumentException e) {
            throw new ScoreException("the compressed file is damaged (" + Plain.shown(e.getMessage())
                    + "): copy or export it again", e);
        } catch (IOException e) {
            throw new ScoreException("the compressed file ends in the middle: copy or export it again", e);
        }
        return new Archive(List.copyOf(entries), rootOf(entries));
    }

    /** A compressed score that holds {@code score} under {@code name}, laid out as MusicXML 4.0 says. */
    static Archive around(String name, byte[] score) {
        String container = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<container>\n  <rootfiles>\n"
                + "    <rootfile full-path=\"" + MarkupText.quoted(name)
                + "\" media-type=\"" + SCORE_TYPE + "\"/>\n  </rootfiles>\n</container>\n";
        return new Archive(List.of(
                // first and not compressed, so that the kind of file can be told from its first bytes
                entry("mimetype", ZipEntry.STORED, ARCHIVE_TYPE.getBytes(StandardCharsets.US_ASCII)),
                entry(CONTAINER, ZipEntry.DEFLATED, container.getBytes(StandardCharsets.UTF_8)),
                entry(name, ZipEntry.DEFLATED, score)), 2);
    }

    private static Entry entry(String name, int method, byte[] content) {
        return new Entry(name, method, NO_TIME, null, null, content);
    }

    byte[] root() {
        return entries.get(rootIndex).content();
    }

    Archive withRoot(byte[] content) {
        List<Entry> changed = new ArrayList<>(entries);
        Entry old = entries.get(rootIndex);
        changed.set(rootIndex,
                new Entry(old.name(), old.method(), old.time(), old.extra(), old.comment(), content));
        return new Archive(List.copyOf(changed), rootIndex);
    }

    byte[] pack() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            pack(out, root -> root.write(root()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** Writes the archive with what {@code score} writes as its score; {@code out} stays open. */
    void pack(OutputStream out, Content score) throws IOException {
        OutputStream kept = new BufferedOutputStream(out, 1 << 16) {
            @Override
            public void close() throws IOException {
                flush();
            }
        };
        try (ZipOutputStream zip = new ZipOutputStream(kept, StandardCharsets.UTF_8)) {
            for (int i = 0; i < entries.size(); i++) {
                Entry entry = entries.get(i);
                pack(zip, entry, i == rootIndex ? score : content -> content.write(entry.content()));
            }
        }
    }

    private static void pack(ZipOutputStream zip, Entry entry, Content content) throws IOException {
        ZipEntry written = new ZipEntry(entry.name());
        written.setTimeLocal(entry.time() == null ? NO_TIME : entry.time());
        written.setComment(entry.comment());
        if (entry.method() == ZipEntry.STORED) {
            // size and sum stand before the content
            ByteArrayOutputStream gathered = new ByteArrayOutputStream(entry.content().length);
            content.writeTo(gathered);
            byte[] bytes = gathered.toByteArray();
            CRC32 sum = new CRC32();
            sum.update(bytes);
            written.setMethod(ZipEntry.STORED);
            written.setSize(bytes.length);
            written.setCrc(sum.getValue());
            zip.putNextEntry(written);
            zip.write(bytes);
        } else {
            written.setMethod(ZipEntry.DEFLATED);
            zip.putNextEntry(written);
            content.writeTo(zip);
        }
        zip.closeEntry();
    }

    private static byte[] read(InputStream zip, long limit) throws IOException {
        // one byte more than may be: that it is there is what tells
        byte[] content = zip.readNBytes((int) limit + 1);
        if (content.length > limit) {
            throw new ScoreException("the compressed file unpacks to far more than it holds: it is not a score, "
                    + "or it is damaged; export it again");
        }
        return content;
    }

    private static LocalDateTime timeOf(ZipEntry entry) {
        try {
            return entry.getTime() < 0 ? null : entry.getTimeLocal();
        } catch (DateTimeException e) {
            // a day that no calendar has
            return null;
        }
    }

    /** Nothing is ever unpacked to a folder, but whoever unpacks our output must be as safe as we are. */
    private static void checkName(String name) {
        String slashes = name.replace('\\', '/');
        boolean escapes = slashes.startsWith("/") || slashes.matches("^[A-Za-z]:.*");
        for (String step : slashes.split("/")) {
            escapes |= step.equals("..");
        }
        if (escapes || name.isEmpty() || name.indexOf('\0') >= 0) {
            throw new ScoreException("the compressed file holds the name \"" + Plain.shown(name)
                    + "\", which points outside of it: do not trust this file; export the score again");
        }
    }

    private static int rootOf(List<Entry> entries) {
        int container = indexOf(entries, CONTAINER);
        if (container < 0) {
            throw new ScoreException("this is a zip file without " + CONTAINER
                    + ": it is not a compressed score; unpack it, or export the score again");
        }
        String path = rootPath(entries.get(container).content());
        int root = indexOf(entries, path);
        if (root < 0) {
            throw new ScoreException("the compressed file names \"" + Plain.shown(path)
                    + "\" as its score but does not hold it: export the score again");
        }
        if (isZip(entries.get(root).content())) {
            throw new ScoreException("the score in the compressed file is itself a compressed file: unpack it once");
        }
        return root;
    }

    private static int indexOf(List<Entry> entries, String name) {
        for (int i = 0; i < entries.size(); i++) {
            if (entries.get(i).name().equals(name) && !entries.get(i).isFolder()) {
                return i;
            }
        }
        return -1;
    }

    /** The first rootfile that is a MusicXML score: by the standard, one without media-type is. */
    private static String rootPath(byte[] container) {
        String text = TextEncoding.of(container).decode(container);
        try {
            SpotReader xml = XmlInput.open(text);
            while (xml.hasNext()) {
                if (xml.next() == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("rootfile")) {
                    String type = xml.getAttributeValue(null, "media-type");
                    String path = xml.getAttributeValue(null, "full-path");
                    if (path != null && (type == null || type.equals(SCORE_TYPE) || type.equals("application/xml")
                            || type.equals("text/xml"))) {
                        return path;
                    }
                }
            }
        } catch (XMLStreamException e) {
            throw new ScoreException("in " + CONTAINER + ", " + XmlInput.describe(e).getMessage(), e);
        }
        throw new ScoreException(CONTAINER + " in the compressed file names no score: export the score again");
    }
}
