package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.Event;
import countstave.score.Score;
import countstave.score.ScoreException;
import countstave.testing.Corpus;
import countstave.testing.Snippets;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From bytes to text and back, whatever the encoding, plain and compressed. */
class ScoreFileTest {

    private static final String SCORE = Snippets.rhythm("2/4", "8 8 4")
            .replace("<part-name>Drums", "<part-name>Schlägel é");

    private static byte[] zip(Object... namesAndTexts) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (int i = 0; i < namesAndTexts.length; i += 2) {
                zip.putNextEntry(new ZipEntry((String) namesAndTexts[i]));
                zip.write(namesAndTexts[i + 1] instanceof byte[] bytes ? bytes
                        : ((String) namesAndTexts[i + 1]).getBytes(StandardCharsets.UTF_8));
                zip.closeEntry();
            }
        }
        return out.toByteArray();
    }

    private static String container(String path) {
        return "<?xml version=\"1.0\"?><container><rootfiles><rootfile full-path=\"" + path
                + "\"/></rootfiles></container>";
    }

    private static String refused(byte[] bytes) {
        String message = assertThrows(ScoreException.class, () -> ScoreFile.of("x.mxl", bytes)).getMessage();
        assertFalse(message.contains("\n"), message);
        return message;
    }

    @ParameterizedTest
    @CsvSource({"UTF-8,UTF-8,", "UTF-8,UTF-8,EFBBBF", "UTF-16,UTF-16LE,FFFE", "UTF-16,UTF-16BE,FEFF",
        "UTF-16,UTF-16LE,", "UTF-16,UTF-16BE,", "ISO-8859-1,ISO-8859-1,", "windows-1252,windows-1252,",
        "ISO-8859-15,ISO-8859-15,"})
    void everyEncodingGivesTheSameScoreAndItsOwnBytesBack(String declared, String charset, String mark) {
        String text = SCORE.replace("encoding=\"UTF-8\"", "encoding=\"" + declared + "\"");
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        for (int i = 0; mark != null && i < mark.length(); i += 2) {
            bytes.write(Integer.parseInt(mark.substring(i, i + 2), 16));
        }
        bytes.writeBytes(text.getBytes(Charset.forName(charset)));
        ScoreFile file = ScoreFile.of("a.xml", bytes.toByteArray());
        assertEquals(text, file.text());
        assertEquals(charset, file.charset().name());
        assertEquals(mark != null, file.hasBom());
        assertArrayEquals(bytes.toByteArray(), file.toPlain());
        Score score = ScoreReader.read(file, ReadOptions.DEFAULT);
        assertEquals("Schlägel é", score.parts().get(0).name());
        // a change and its undoing give the same bytes
        ScoreFile changed = file.withText(text.replace("Schlägel", "S"));
        assertArrayEquals(bytes.toByteArray(), changed.withText(text).toPlain());
    }

    @Test
    void charactersTheEncodingLacksBecomeReferences() {
        byte[] latin = SCORE.replace("UTF-8", "ISO-8859-1").getBytes(StandardCharsets.ISO_8859_1);
        ScoreFile file = ScoreFile.of("a.xml", latin);
        byte[] out = file.withText(file.text().replace("Schlägel é", "♩ 𝅘𝅥 é")).toPlain();
        String written = new String(out, StandardCharsets.ISO_8859_1);
        assertTrue(written.contains("<part-name>&#9833; &#119128;&#119141; é</part-name>"), written);
        assertEquals("♩ 𝅘𝅥 é", ScoreReader.read(ScoreFile.of("a.xml", out), ReadOptions.DEFAULT).parts().get(0).name());
    }

    @Test
    void bytesThatAreNotTextAreRefused() {
        byte[] latin = SCORE.getBytes(StandardCharsets.ISO_8859_1);
        assertTrue(refused(latin).contains("is not UTF-8 text"), refused(latin));
        assertTrue(refused(SCORE.replace("UTF-8", "x-unheard-of").getBytes(StandardCharsets.UTF_8))
                .contains("x-unheard-of"));
        assertTrue(refused(new byte[0]).contains("empty"));
        // declared as UTF-16 but saved as UTF-8: what can be read is read
        String wrong = SCORE.replace("encoding=\"UTF-8\"", "encoding=\"UTF-16\"");
        assertEquals(wrong, ScoreFile.of("a.xml", wrong.getBytes(StandardCharsets.UTF_8)).text());
    }

    @Test
    void positionsCountCharactersOfTheTextWhateverItsLineEndsAndPlanes() {
        for (String text : List.of(SCORE.replace("\n", "\r\n"), SCORE.replace("\n", "\r"),
                SCORE.replace("Schlägel", "𝄞𝄞 drums &amp; &#x1D11E;"), "\uFEFF" + SCORE)) {
            ScoreFile file = ScoreFile.of("a.xml", text.getBytes(StandardCharsets.UTF_8));
            Score score = ScoreReader.read(file, ReadOptions.DEFAULT);
            for (Event event : score.parts().get(0).bars().get(0).voices().get(0).events()) {
                String note = file.text().substring(event.source().start(), event.source().end());
                assertTrue(note.startsWith("<note>") && note.endsWith("</note>"), note);
                String lyricPlace = file.text().substring(event.source().lyricSlot());
                assertTrue(lyricPlace.startsWith("</note>"), lyricPlace);
            }
        }
    }

    /** Order in a note by MusicXML 4.0: … notations, lyric, play, listen. */
    @Test
    void lyricSlotLiesBehindLyricsAndBeforePlay() {
        String note = "<note><unpitched/><duration>1</duration><voice>1</voice><notations/>\n <lyric><text>la</text></lyric>"
                + "\n <play><mute>off</mute></play>\n <listen><wait/></listen>\n</note>";
        ScoreFile file = ScoreFile.of("a.xml", Snippets.score("1/4", 1, note).getBytes(StandardCharsets.UTF_8));
        int slot = ScoreReader.read(file, ReadOptions.DEFAULT).parts().get(0).bars().get(0).voices().get(0).events()
                .get(0).source().lyricSlot();
        assertTrue(file.text().substring(0, slot).endsWith("</lyric>"));
        assertTrue(file.text().substring(slot).startsWith("\n <play>"));
    }

    @Test
    void compressedScoreIsFoundByItsContainerAndOtherEntriesStay() throws IOException {
        byte[] picture = {1, 2, 3};
        byte[] bytes = zip("decoy.xml", "<html/>", "META-INF/container.xml", container("in/the/score.xml"),
                "in/the/score.xml", SCORE, "picture.png", picture);
        ScoreFile file = ScoreFile.of("a.mxl", bytes);
        assertEquals(SCORE, file.text());
        assertTrue(file.isCompressed());
        assertArrayEquals(bytes, file.toMxl());
        byte[] changed = file.withText(SCORE.replace("Schlägel", "S")).toMxl();
        List<String> names = new ArrayList<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(changed))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                names.add(entry.getName());
                byte[] content = zip.readAllBytes();
                if (entry.getName().equals("picture.png")) {
                    assertArrayEquals(picture, content);
                } else if (entry.getName().equals("decoy.xml")) {
                    assertEquals("<html/>", new String(content, StandardCharsets.UTF_8));
                }
            }
        }
        assertEquals(file.entryNames(), names);
        assertEquals(SCORE.replace("Schlägel", "S"), ScoreFile.of("a.mxl", changed).text());
    }

    /** Written piece by piece there are the same bytes as from the whole text. */
    @Test
    void insertionsAreWrittenIntoTheFormTheScoreCameIn() throws IOException {
        byte[] plain = SCORE.getBytes(StandardCharsets.UTF_8);
        for (byte[] bytes : List.of(plain, ("\uFEFF" + SCORE).getBytes(StandardCharsets.UTF_16LE),
                zip("META-INF/container.xml", container("a.xml"), "a.xml", SCORE, "b.png", new byte[] {1, 2}), stored(plain))) {
            ScoreFile file = ScoreFile.of("a.xml", bytes);
            Splice splice = new Splice(file.text());
            assertArrayEquals(bytes, written(file, splice, file.isCompressed()));
            splice.insert(file.text().indexOf("</note>"), "<lyric><text>1 \u2669</text></lyric>");
            ScoreFile whole = file.withText(splice.toString());
            assertArrayEquals(whole.toPlain(), written(file, splice, false));
            assertArrayEquals(whole.toMxl(), written(file, splice, true));
            assertTrue(ScoreFile.of("a.mxl", written(file, splice, true)).text().contains("1 \u2669</text></lyric></note>"));
        }
    }

    private static byte[] written(ScoreFile file, Splice splice, boolean compressed) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream() {
            @Override
            public void close() {
                throw new AssertionError("not its own to close");
            }
        };
        file.write(splice, compressed, out);
        return out.toByteArray();
    }

    /** A compressed score that is only packed, not compressed. */
    private static byte[] stored(byte[] score) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (String name : List.of("META-INF/container.xml", "a.xml")) {
                byte[] content = name.equals("a.xml") ? score : container("a.xml").getBytes(StandardCharsets.UTF_8);
                CRC32 sum = new CRC32();
                sum.update(content);
                ZipEntry entry = new ZipEntry(name);
                entry.setMethod(ZipEntry.STORED);
                entry.setSize(content.length);
                entry.setCrc(sum.getValue());
                zip.putNextEntry(entry);
                zip.write(content);
                zip.closeEntry();
            }
        }
        return out.toByteArray();
    }

    /** MusicXML 4.0, compressed files: the first entry is an uncompressed "mimetype". */
    @Test
    void plainScoreIsPackedAsTheStandardSays() {
        byte[] packed = ScoreFile.of("my chart.musicxml", SCORE.getBytes(StandardCharsets.UTF_8)).toMxl();
        assertEquals("mimetypeapplication/vnd.recordare.musicxml", new String(packed, 30, 42, StandardCharsets.US_ASCII));
        ScoreFile back = ScoreFile.of("x.mxl", packed);
        assertEquals(List.of("mimetype", "META-INF/container.xml", "my chart.musicxml"), back.entryNames());
        assertEquals(SCORE, back.text());
        assertArrayEquals(packed, ScoreFile.of("my chart.musicxml", SCORE.getBytes(StandardCharsets.UTF_8)).toMxl());
    }

    @Test
    void hostileArchivesAreRefused() throws IOException {
        assertTrue(refused(zip("a.xml", SCORE)).contains("META-INF/container.xml"));
        assertTrue(refused(zip("META-INF/container.xml", container("b.xml"), "a.xml", SCORE)).contains("\"b.xml\""));
        assertTrue(refused(zip("META-INF/container.xml", "<container/>", "a.xml", SCORE)).contains("names no score"));
        assertTrue(refused(zip("META-INF/container.xml", "<contai", "a.xml", SCORE)).contains("line 1"));
        for (String name : List.of("../a.xml", "/a.xml", "a/../../b.xml", "C:\\a.xml", "..\\a.xml")) {
            assertTrue(refused(zip("META-INF/container.xml", container(name), name, SCORE)).contains("points outside"), name);
        }
        assertTrue(refused(zip("META-INF/container.xml", container("a.mxl"), "a.mxl", zip("a.xml", SCORE)))
                .contains("itself a compressed file"));
        assertTrue(refused(zip("META-INF/container.xml", container("a.xml"), "a.xml", new byte[200 << 20]))
                .contains("unpacks to far more"));
        byte[] good = zip("META-INF/container.xml", container("a.xml"), "a.xml", SCORE);
        assertTrue(refused(java.util.Arrays.copyOf(good, 200)).contains("copy or export it again"));
        String escape = refused(zip("META-INF/container.xml", container("x"), "../\u001b[31m.xml", SCORE));
        assertFalse(escape.contains("\u001b"), escape);
    }

    @Test
    void filesThatCannotBeReadAreNamedClearly() {
        for (String path : List.of("no/such/file.xml", "src")) {
            String message = assertThrows(ScoreException.class, () -> ScoreFile.load(Path.of(path))).getMessage();
            assertTrue(message.startsWith("there is no such file") || message.startsWith("this is a folder"), message);
        }
    }

    @Test
    void everyOpenScoreComesBackByteForByte() {
        for (Path path : Corpus.scores("musicxml-test-suite")) {
            ScoreFile file = ScoreFile.load(path);
            byte[] before = file.toBytes();
            ScoreFile there = file.withText(file.text() + " ");
            assertArrayEquals(file.bytes(), there.withText(file.text()).toPlain(), path.toString());
            assertArrayEquals(before, file.toBytes());
        }
    }
}
