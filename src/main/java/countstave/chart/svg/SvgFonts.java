package countstave.chart.svg;

import countstave.chart.font.Measures;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.zip.CRC32;
import org.apache.fontbox.ttf.TTFSubsetter;

/**
 * The fonts of some pages: of the text faces the letters that are used, as fonts inside the drawing; of the music font the
 * outlines of the signs that are used, each once.
 *
 * @param family name of the text font: another one for other letters, so that drawings in one page of the web do not take
 *     each other's
 * @param faces rules of a style sheet
 * @param signs elements for {@code defs}
 */
record SvgFonts(String family, String faces, String signs) {

    /** What a browser asks of a TrueType font (OpenType specification, required tables), and what its hints need. */
    private static final List<String> TABLES = List.of("head", "hhea", "maxp", "hmtx", "cmap", "name", "OS/2", "post", "glyf",
            "loca", "cvt ", "fpgm", "prep", "gasp");

    /** @param more letters that every face has besides those on the pages */
    static SvgFonts of(List<Chart.Page> pages, String more, Measures measures) {
        Map<Text.Style, TreeSet<Integer>> letters = new EnumMap<>(Text.Style.class);
        TreeSet<String> names = new TreeSet<>();
        for (Chart.Page page : pages) {
            for (Shape shape : page.shapes()) {
                if (shape instanceof Text text) {
                    TreeSet<Integer> used = letters.computeIfAbsent(text.style(), s -> new TreeSet<>());
                    text.string().codePoints().forEach(used::add);
                } else if (shape instanceof Glyph glyph) {
                    names.add(glyph.name());
                }
            }
        }
        letters.values().forEach(used -> more.codePoints().forEach(used::add));
        CRC32 fingerprint = new CRC32();
        fingerprint.update(letters.toString().getBytes(StandardCharsets.UTF_8));
        String family = String.format(Locale.ROOT, "countstave-%08x", fingerprint.getValue());
        StringBuilder faces = new StringBuilder();
        letters.forEach((style, used) -> faces.append("@font-face{font-family:").append(family)
                .append(style.isBold() ? ";font-weight:bold" : "").append(style.isItalic() ? ";font-style:italic" : "")
                .append(";src:url(data:font/ttf;base64,").append(subset(style, used, measures)).append(")}\n"));
        StringBuilder signs = new StringBuilder();
        for (String name : names) {
            SvgPath outline = new SvgPath(0);
            outline.outline(measures.music().outline(name).getPathIterator(null));
            signs.append("<path id=\"").append(id(name)).append("\" d=\"").append(outline).append("\"/>\n");
        }
        return new SvgFonts(family, faces.toString(), signs.toString());
    }

    /** How a sign is called in a drawing. */
    static String id(String glyph) {
        return "countstave-" + glyph;
    }

    private static String subset(Text.Style style, TreeSet<Integer> letters, Measures measures) {
        try {
            TTFSubsetter subsetter = new TTFSubsetter(measures.text().program(style), TABLES);
            // beyond the Basic Multilingual Plane the subset's table of letters does not reach
            letters.stream().filter(c -> c < 0x10000).forEach(subsetter::add);
            ByteArrayOutputStream font = new ByteArrayOutputStream();
            subsetter.writeToStream(font);
            return Base64.getEncoder().encodeToString(font.toByteArray());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
