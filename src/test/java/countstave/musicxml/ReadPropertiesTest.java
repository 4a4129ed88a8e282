package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import jakarta.xml.bind.annotation.XmlElement;
import jakarta.xml.bind.annotation.XmlElementDecl;
import jakarta.xml.bind.annotation.XmlElements;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.audiveris.proxymusic.Attributes;
import org.audiveris.proxymusic.Backup;
import org.audiveris.proxymusic.Barline;
import org.audiveris.proxymusic.Direction;
import org.audiveris.proxymusic.Forward;
import org.audiveris.proxymusic.Note;
import org.audiveris.proxymusic.ObjectFactory;
import org.audiveris.proxymusic.Sound;
import org.junit.jupiter.api.Test;

/** What is bound is what is read: ProxyMusic's getters as the compiled classes call them. */
class ReadPropertiesTest {

    private static final Path CLASSES = Path.of("target/classes/countstave");
    private static final String LIBRARY = Note.class.getPackageName().replace('.', '/') + "/";

    @Test
    void listedIsWhatIsCalled() throws IOException, ReflectiveOperationException {
        Map<String, Set<String>> called = new TreeMap<>();
        List<Path> files;
        try (Stream<Path> tree = Files.walk(CLASSES)) {
            files = tree.filter(f -> f.toString().endsWith(".class")).toList();
        }
        assertFalse(files.isEmpty());
        for (Path file : files) {
            for (String[] call : libraryMethods(file)) {
                if (call[1].startsWith("get")) {
                    called.computeIfAbsent(call[0], c -> new TreeSet<>()).add(property(call[0], call[1].substring(3)));
                }
            }
        }
        Map<String, Set<String>> bound = new TreeMap<>();
        new ReadProperties().fields().forEach((type, fields) -> {
            if (!fields.isEmpty()) {
                bound.put(type, new TreeSet<>(fields));
            }
        });
        assertEquals(called.toString(), bound.toString());
    }

    /** What a bound property may hold is bound, and nothing else but what the registry needs for its own declarations. */
    @Test
    void whatIsBoundIsWhatCanBeReached() throws ReflectiveOperationException {
        Map<String, Set<String>> bound = new ReadProperties().fields();
        Set<String> reached = new TreeSet<>();
        for (Class<?> root : List.of(Note.class, Attributes.class, Backup.class, Forward.class, Direction.class,
                Sound.class, Barline.class)) {
            add(reached, root);
        }
        for (Map.Entry<String, Set<String>> type : bound.entrySet()) {
            for (String name : type.getValue()) {
                held(type(type.getKey()).getDeclaredField(name)).forEach(held -> add(reached, held));
            }
        }
        for (Method method : ObjectFactory.class.getDeclaredMethods()) {
            XmlElementDecl element = method.getAnnotation(XmlElementDecl.class);
            if (element != null) {
                add(reached, element.scope());
                if (!bound.getOrDefault(element.scope().getSimpleName(), Set.of()).isEmpty()) {
                    add(reached, method.getParameterTypes()[0]);
                }
            }
        }
        assertEquals(reached, new TreeSet<>(bound.keySet()));
    }

    private static void add(Set<String> names, Class<?> type) {
        if (!type.isEnum() && type.getPackage() == Note.class.getPackage()) {
            names.add(type.getSimpleName());
        }
    }

    /** The classes that may stand in a field. */
    private static List<Class<?>> held(Field field) {
        List<Class<?>> held = new ArrayList<>(List.of(field.getType()));
        if (field.isAnnotationPresent(XmlElement.class)) {
            held.add(field.getAnnotation(XmlElement.class).type());
        }
        if (field.isAnnotationPresent(XmlElements.class)) {
            for (XmlElement element : field.getAnnotation(XmlElements.class).value()) {
                held.add(element.type());
            }
        }
        if (field.getGenericType() instanceof ParameterizedType list
                && list.getActualTypeArguments()[0] instanceof Class<?> item) {
            held.add(item);
        }
        return held;
    }

    private static Class<?> type(String simpleName) throws ClassNotFoundException {
        return Class.forName((LIBRARY + simpleName).replace('/', '.'));
    }

    /** The field behind a getter: only the case of its first letters may differ. */
    private static String property(String type, String getter) throws ReflectiveOperationException {
        for (Field field : type(type).getDeclaredFields()) {
            if (field.getName().equalsIgnoreCase(getter)) {
                return field.getName();
            }
        }
        throw new NoSuchFieldException(type + "." + getter);
    }

    /** Class and method of every call into ProxyMusic, from a class file's constant pool (Java VM specification, 4.4). */
    private static List<String[]> libraryMethods(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file); DataInputStream data = new DataInputStream(in)) {
            data.skipNBytes(8);
            int count = data.readUnsignedShort();
            String[] text = new String[count];
            int[][] pairs = new int[count][];
            Set<Integer> methods = new TreeSet<>();
            for (int i = 1; i < count; i++) {
                int tag = data.readUnsignedByte();
                switch (tag) {
                    case 1 -> text[i] = data.readUTF();
                    case 7, 8, 16, 19, 20 -> pairs[i] = new int[] {data.readUnsignedShort()};
                    case 9, 10, 11, 12, 17, 18 -> pairs[i] = new int[] {data.readUnsignedShort(), data.readUnsignedShort()};
                    case 15 -> data.skipNBytes(3);
                    case 3, 4 -> data.skipNBytes(4);
                    case 5, 6 -> {
                        data.skipNBytes(8);
                        i++;
                    }
                    default -> throw new IOException(file + ": constant of kind " + tag);
                }
                if (tag == 10) {
                    methods.add(i);
                }
            }
            return methods.stream()
                    .map(m -> new String[] {text[pairs[pairs[m][0]][0]], text[pairs[pairs[m][1]][0]]})
                    .filter(m -> m[0].startsWith(LIBRARY))
                    .map(m -> new String[] {m[0].substring(LIBRARY.length()), m[1]}).toList();
        }
    }
}
