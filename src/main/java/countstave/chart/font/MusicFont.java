package countstave.chart.font;

import countstave.chart.shape.Box;
import countstave.chart.shape.Point;
import java.awt.geom.GeneralPath;
import java.io.IOException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;
import org.apache.fontbox.cff.CFFFont;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.OTFParser;
import org.apache.fontbox.ttf.OpenTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * The music font: measures from its SMuFL metadata ({@link SignMeasures}), outlines from the font file (read only when something is drawn).
 *
 * <p>Measures are in staff spaces, relative to a glyph's origin, y upwards, as the SMuFL specification defines them
 * (metadata: {@code glyphBBoxes}, {@code glyphsWithAnchors}, {@code glyphAdvanceWidths}, {@code engravingDefaults}).
 */
public final class MusicFont {

    /** SMuFL: the em is four staff spaces. */
    private static final double SPACES_PER_EM = 4;

    private static MusicFont bravura;

    private final Map<String, Integer> codePoints;
    private final Map<Integer, String> signs = new HashMap<>();
    private final SignMeasures measures;
    private CFFFont outlines;
    private CmapLookup glyphIds;
    private double unitsPerSpace;

    private MusicFont() {
        codePoints = readNames();
        codePoints.forEach((name, codePoint) -> signs.put(codePoint, name));
        String file = "smufl-measures.txt";
        try {
            measures = new SignMeasures(FontFiles.text(file));
        } catch (NoSuchElementException | NumberFormatException e) {
            throw FontFiles.missing(file, e);
        }
    }

    /**
     * The font of the chart, read once.
     *
     * @throws countstave.score.ScoreException if its files are missing
     */
    public static synchronized MusicFont bravura() {
        if (bravura == null) {
            bravura = new MusicFont();
        }
        return bravura;
    }

    private static Map<String, Integer> readNames() {
        Map<String, Integer> names = new LinkedHashMap<>();
        FontFiles.text("smufl-names.txt").lines().filter(l -> !l.isBlank() && !l.startsWith("#")).forEach(line -> {
            int space = line.indexOf(' ');
            names.put(line.substring(0, space), Integer.parseInt(line.substring(space + 1).trim(), 16));
        });
        return names;
    }

    /** The SMuFL names of all signs that can be used. */
    public Set<String> names() {
        return codePoints.keySet();
    }

    /** The bounding box of a sign. */
    public Box box(String name) {
        Box box = measures.boxes.get(name);
        if (box == null) {
            throw new IllegalArgumentException("no sign " + name + " in smufl-names.txt and the font");
        }
        return box;
    }

    public double width(String name) {
        return box(name).width();
    }

    /** How far the next sign in a row of signs (digits, dynamics letters) stands to the right. */
    public double advance(String name) {
        Double advance = measures.advances.get(name);
        return advance == null ? box(name).right() : advance;
    }

    /** A registered point of a sign, such as {@code stemUpSE}; null where the font gives none. */
    public Point anchor(String name, String anchor) {
        return measures.anchors.getOrDefault(name, Map.of()).get(anchor);
    }

    /** An engraving default in staff spaces, such as {@code stemThickness}. */
    public double engraving(String key) {
        Double value = measures.engravingDefaults.get(key);
        if (value == null) {
            throw new IllegalArgumentException("no engraving default " + key);
        }
        return value;
    }

    /** The sign that stands at a code point of a SMuFL font, as files that use one write it in words; or null. */
    public String nameAt(int codePoint) {
        return signs.get(codePoint);
    }

    public int codePoint(String name) {
        return codePoints.get(name);
    }

    /** The outline of a sign, in staff spaces. */
    public synchronized GeneralPath outline(String name) {
        try {
            if (outlines == null) {
                open();
            }
            int glyphId = glyphIds.getGlyphId(codePoint(name));
            GeneralPath path = new GeneralPath(outlines.getType2CharString(glyphId).getPath());
            path.transform(java.awt.geom.AffineTransform.getScaleInstance(1 / unitsPerSpace, 1 / unitsPerSpace));
            return path;
        } catch (IOException e) {
            throw FontFiles.missing("bravura/bravura.otf", e);
        }
    }

    private void open() throws IOException {
        // stays open on purpose: the outlines are read from it one by one, and the program ends soon after
        OpenTypeFont font = new OTFParser().parse(new RandomAccessReadBuffer(FontFiles.bytes("bravura/bravura.otf")));
        glyphIds = font.getUnicodeCmapLookup();
        unitsPerSpace = font.getUnitsPerEm() / SPACES_PER_EM;
        outlines = font.getCFF().getFont();
    }
}
