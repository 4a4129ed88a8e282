package countstave.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.MusicXmlSchema;
import countstave.score.Bar;
import countstave.time.Duration;
import countstave.time.Offset;
import java.io.StringReader;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.xml.sax.InputSource;

/** What other tests build on: the notation of rhythms gives valid MusicXML 4.0 with the attacks it says. */
class SnippetsTest {

    @Test
    void shortNotationIsValidAgainstTheMusicXmlSchema() throws Exception {
        String xml = Snippets.in("4/4").tempo(96).percussion().bar("16 16> 16~ 16 g8 8 r8 4. 8 / R")
                .bar("3:2[4 5:4[16 16 16 16 16] 4] 2")
                .meter("3+2+2/8").bar("7:4[16 16 16 16 16 16 16] 8 3:2[8 8 8] 8 8").xml();
        MusicXmlSchema.validate(new InputSource(new StringReader(xml)));
    }

    @Test
    void notesStandWhereTheShortNotationPutsThem() {
        Bar bar = Snippets.part(Snippets.rhythm("4/4", "8. 16 3:2[8 8 8] r4 3:2[8 8 8]")).bars().get(0);
        assertEquals(Duration.WHOLE, bar.length());
        assertEquals(List.of("0/1", "3/16", "1/4", "1/3", "5/12", "1/2", "3/4", "5/6", "11/12"),
                bar.voices().get(0).events().stream().map(e -> e.start().toString()).toList());
        assertEquals(Offset.of(1, 2), bar.voices().get(0).events().get(5).start());
    }
}
