package countstave.chart.font;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.chart.shape.Box;
import countstave.chart.shape.Point;
import java.awt.geom.Area;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The music font against its own SMuFL metadata (npm package @vexflow-fonts/bravura 1.0.2, metadata.json 1.392). */
class MusicFontTest {

    private final MusicFont font = MusicFont.bravura();

    /** Our table of code points is right if each outline has the bounding box that the metadata gives for its name. */
    @Test
    void everySignStandsAtItsCodePoint() {
        List<String> wrong = new ArrayList<>();
        for (String name : font.names()) {
            try {
                Rectangle2D drawn = new Area(font.outline(name)).getBounds2D();
                Box told = font.box(name);
                // as an area, whose bounds are those of the curve and not of its control points; metadata has 1/250 spaces
                double off = Math.max(Math.max(Math.abs(drawn.getMinX() - told.left()),
                        Math.abs(drawn.getMaxX() - told.right())), Math.max(Math.abs(drawn.getMinY() - told.bottom()),
                        Math.abs(drawn.getMaxY() - told.top())));
                if (off > 0.005) {
                    wrong.add(name + " off by " + off);
                }
            } catch (IllegalArgumentException e) {
                wrong.add(e.getMessage());
            }
        }
        assertEquals(List.of(), wrong);
    }

    /** Values read in metadata.json with another program. */
    @Test
    void measuresAreThoseOfTheMetadata() {
        assertEquals(new Box(0, -0.5, 1.18, 0.5), font.box("noteheadBlack"));
        assertEquals(new Point(1.18, 0.168), font.anchor("noteheadBlack", "stemUpSE"));
        assertEquals(new Point(0, -0.168), font.anchor("noteheadBlack", "stemDownNW"));
        assertEquals(0.12, font.engraving("stemThickness"));
        assertEquals(0.5, font.engraving("beamThickness"));
        assertEquals(0.25, font.engraving("beamSpacing"));
        assertEquals(1.18, font.advance("noteheadBlack"));
    }

    @Test
    void aSignThatIsNotThereIsNamed() {
        Exception e = org.junit.jupiter.api.Assertions.assertThrows(IllegalArgumentException.class,
                () -> font.box("noSuchSign"));
        assertTrue(e.getMessage().contains("noSuchSign"));
    }
}
