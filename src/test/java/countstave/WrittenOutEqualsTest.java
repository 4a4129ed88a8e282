package countstave;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.EventRange;
import countstave.score.Look;
import countstave.score.NoteValue;
import countstave.score.Swung;
import countstave.score.Tempo;
import countstave.score.Tremolo;
import countstave.score.TupletMark;
import countstave.score.Written;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import countstave.time.Ratio;
import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Records whose equals is written out compare all their components, as the Java language says of a derived one. */
class WrittenOutEqualsTest {

    private static final Path CLASSES = Path.of("target/classes");

    @TestFactory
    List<DynamicTest> everyComponentCounts() throws IOException, ReflectiveOperationException {
        List<DynamicTest> tests = new ArrayList<>();
        List<Path> files;
        try (Stream<Path> tree = Files.walk(CLASSES.resolve("countstave"))) {
            files = tree.filter(f -> f.toString().endsWith(".class")).sorted().toList();
        }
        for (Path file : files) {
            String path = CLASSES.relativize(file).toString();
            String name = path.substring(0, path.length() - ".class".length()).replaceAll("[/\\\\]", ".");
            Class<?> type = Class.forName(name, false, getClass().getClassLoader());
            // the compiler makes the derived one final; ours are not
            if (type.isRecord() && !Modifier.isFinal(type.getDeclaredMethod("equals", Object.class).getModifiers())) {
                tests.add(DynamicTest.dynamicTest(name, () -> compares(type)));
            }
        }
        assertFalse(tests.isEmpty());
        return tests;
    }

    /** The same for the check that stands in for a comparison with {@link Look#PLAIN}. */
    @Test
    void everyComponentOfALookCounts() throws ReflectiveOperationException {
        RecordComponent[] components = Look.class.getRecordComponents();
        Class<?>[] types = Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        Constructor<Look> constructor = Look.class.getDeclaredConstructor(types);
        Object[] plain = new Object[types.length];
        for (int i = 0; i < types.length; i++) {
            plain[i] = components[i].getAccessor().invoke(Look.PLAIN);
        }
        assertTrue(constructor.newInstance(plain).isPlain());
        for (int i = 0; i < types.length; i++) {
            Object[] other = plain.clone();
            Object value = value(types[i], 0);
            other[i] = java.util.Objects.equals(plain[i], value) ? value(types[i], 1) : value;
            assertFalse(constructor.newInstance(other).isPlain(), components[i].getName());
        }
    }

    private static void compares(Class<?> type) throws ReflectiveOperationException {
        RecordComponent[] components = type.getRecordComponents();
        Class<?>[] types = Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        Constructor<?> constructor = type.getDeclaredConstructor(types);
        constructor.setAccessible(true);
        Object[] values = Arrays.stream(types).map(t -> value(t, 0)).toArray();
        Object one = constructor.newInstance(values);
        Object same = constructor.newInstance(Arrays.stream(types).map(t -> value(t, 0)).toArray());
        assertEquals(one, same);
        assertEquals(one.hashCode(), same.hashCode());
        assertNotEquals(one, null);
        assertNotEquals(one, "another kind of thing");
        for (int i = 0; i < types.length; i++) {
            Object[] other = values.clone();
            other[i] = value(types[i], 1);
            assertNotEquals(one, constructor.newInstance(other), components[i].getName());
            assertNotEquals(constructor.newInstance(other), one, components[i].getName());
        }
    }

    /** One of two unlike values of a type; the first anew each time, so that only equal, not the same, things are compared. */
    private static Object value(Class<?> type, int which) {
        if (type.isEnum()) {
            return type.getEnumConstants()[which];
        }
        return switch (type.getSimpleName()) {
            case "long" -> which + 2L;
            case "int" -> which + 2;
            case "char" -> (char) ('A' + which);
            case "boolean", "Boolean" -> which == 0;
            case "String" -> new StringBuilder("a").append(which).toString();
            case "BigDecimal" -> new BigDecimal(60 + which);
            case "List" -> List.of(which + 1000);
            case "Duration" -> Duration.of(1, 2 + which);
            case "Offset" -> Offset.of(1, 2 + which);
            case "Proportion" -> Proportion.of(1, 2 + which);
            case "Written" -> Written.of(NoteValue.QUARTER, which, Ratio.ONE);
            case "Ratio" -> new Ratio(3 + which, 2);
            case "EventRange" -> new EventRange("1", 1, which, which + 2);
            case "Swung" -> which == 0 ? null : new Swung(Duration.of(1, 8), 2, 1, List.of());
            case "Tempo" -> new Tempo(Duration.of(1, 4), new BigDecimal(60 + which));
            case "Tremolo" -> new Tremolo(Tremolo.Kind.SINGLE, 1 + which);
            case "TupletMark" -> which == 0 ? null : new TupletMark(true, 1, null, null, null, null,
                    TupletMark.Show.NONE, TupletMark.Show.NONE, null);
            default -> throw new AssertionError("no sample values of " + type + " here");
        };
    }
}
