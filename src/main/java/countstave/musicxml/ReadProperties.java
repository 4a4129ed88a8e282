package countstave.musicxml;

import java.lang.reflect.Field;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import org.audiveris.proxymusic.Note;

/**
 * Which properties of ProxyMusic's classes are bound: those that the readers in this package ask for. All others stay
 * unset, and a class that stands behind none of them is bound as if it were empty.
 *
 * <p>A getter that is called without its property being listed gives nothing; a test compares this list with the calls.
 */
final class ReadProperties {

    /** Class, then its fields as ProxyMusic names them. */
    private static final String LISTED = """
            Accidental bracket parentheses value
            AccidentalMark value
            Arpeggiate direction
            Articulations accentOrStrongAccentOrStaccato
            Attributes clef divisions key measureStyle staffDetails staves time
            Backup duration
            BarStyleColor value
            Barline barStyle ending location repeat
            Beam number value
            BeatRepeat type
            Bend bendAlter preBend release
            Clef clefOctaveChange line number sign
            Dashes number type
            Direction directionType offset placement sound staff
            DirectionType accordionRegistration bracket coda damp dampAll dashes dynamics eyeglasses harpPedals image\
             metronome octaveShift otherDirection pedal percussion principalVoice rehearsal scordatura segno staffDivide\
             stringMute wedge wordsOrSymbol
            Dynamics pOrPpOrPpp
            Ending number type
            Extend type
            Fermata value
            Fingering value
            FormattedTextId fontStyle fontWeight value
            Forward duration
            Fret value
            Glissando lineType number type value
            Grace slash
            HammerOnPullOff number type value
            Key fifths keyOctave nonTraditionalKey number
            KeyAccidental value
            KeyOctave number value
            Lyric elisionAndSyllabicAndText extend number
            MeasureRepeat type value
            MeasureStyle beatRepeat measureRepeat multipleRest slash
            Metronome parentheses perMinute printObject
            MultipleRest value
            Notations tiedOrSlurOrTuplet
            Note accidental beam chord cue dot duration dynamics grace lyric notations notehead pitch printObject printSpacing rest staff\
             stem tie timeModification type unpitched voice
            NoteType value
            Notehead filled parentheses value
            OctaveShift number size type
            Offset sound value
            Ornaments trillMarkOrTurnOrDelayedTurn
            OtherText value
            Pedal line number type
            PerMinute value
            Pitch alter octave step
            Repeat direction
            Rest displayOctave displayStep measure
            Slash type
            Slide lineType number type value
            Slur number orientation placement type
            Sound offset swing tempo
            StaffDetails number staffLines
            String value
            Stem value
            Swing first second straight swingType
            Technical upBowOrDownBowOrHarmonic
            TextElementData value
            Tie type
            Tied type
            Time printObject senzaMisura symbol timeSignature
            TimeModification actualNotes normalDot normalNotes normalType
            Tremolo type value
            Tuplet bracket number placement showNumber showType tupletActual tupletNormal type
            TupletNumber value
            TupletPortion tupletNumber tupletType
            TupletType value
            Unpitched displayOctave displayStep
            WavyLine number placement type
            Wedge niente number type
            """;

    /**
     * Classes of which only the presence, or the element's name, is asked; and Credit, Encoding and Interchangeable, of
     * whose contents ProxyMusic's registry speaks.
     */
    private static final String PRESENT = """
            AccordionRegistration Arrow Bracket BreathMark Caesura Coda Credit\
             Elision Empty EmptyLine EmptyPlacement EmptyPlacementSmufl EmptyPrintStyleAlignId EmptyTrillSound\
             Encoding FormattedSymbolId Handbell HarmonMute Harmonic\
             HarpPedals HeelToe Hole HorizontalTurn Image Interchangeable Mordent NonArpeggiate OtherDirection\
             OtherNotation OtherPlacementText Percussion PlacementText PrincipalVoice Release Scordatura Segno\
             StaffDivide StringMute StrongAccent Tap""";

    private static final String PACKAGE = Note.class.getPackageName();

    private final Map<String, Set<String>> fields = new HashMap<>();

    ReadProperties() {
        for (String line : LISTED.split("\n")) {
            int end = line.indexOf(' ');
            fields.put(line.substring(0, end), Set.of(line.substring(end + 1).split(" ")));
        }
        for (String name : PRESENT.split(" ")) {
            fields.put(name, Set.of());
        }
    }

    /** Whether this class of ProxyMusic's is left out; enumerations and foreign classes never are. */
    boolean leavesOut(Class<?> type) {
        return isStructure(type) && !fields.containsKey(type.getSimpleName());
    }

    /** Whether this field of ProxyMusic's is left out; constants of its enumerations and foreign fields never are. */
    boolean leavesOut(Field field) {
        Class<?> owner = field.getDeclaringClass();
        return isStructure(owner) && !fields.getOrDefault(owner.getSimpleName(), Set.of()).contains(field.getName());
    }

    private static boolean isStructure(Class<?> type) {
        return !type.isEnum() && type.getPackageName().equals(PACKAGE);
    }

    /** The fields that are bound by class, both by simple name; none where only the presence is asked. */
    Map<String, Set<String>> fields() {
        return Map.copyOf(fields);
    }
}
