package countstave;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The list of libraries in the jar against the class path, and the licence texts against those in the libraries' jars. */
class LicencesTest {

    private static final Path FOLDER = Path.of("src/main/resources/META-INF/licenses");
    private static final Pattern ROW = Pattern.compile("^\\| ([\\w.-]+) \\| (\\d[\\w.-]*) \\| ([^|]+) \\| ([^|]+) \\|$",
            Pattern.MULTILINE);
    private static final Pattern TEXT = Pattern.compile("`([^`]+)`");
    private static final Pattern IN_JAR = Pattern.compile("META-INF/([\\w-]+-)?(LICENSE|NOTICE)(\\.txt|\\.md)?");

    /** Groups that are on the class path of the tests only. */
    private static final List<String> TEST_ONLY = List.of("org/junit/", "org/opentest4j/", "org/apiguardian/",
            "org/xmlunit/", "org/apache/maven/", "com/code-intelligence/", "com/networknt/", "com/ethlo/", "org/yaml/",
            "com/fasterxml/jackson/core/jackson-databind/", "com/fasterxml/jackson/core/jackson-annotations/",
            "com/fasterxml/jackson/dataformat/", "org/seleniumhq/", "com/google/", "io/opentelemetry/", "dev/failsafe/",
            "net/bytebuddy/", "org/apache/commons/commons-exec/", "org/jspecify/", "org/checkerframework/");

    private record Row(String version, String licence, List<String> texts) {
    }

    @Test
    void everyLibraryIsListedWithItsOwnTexts() throws IOException {
        Map<String, Row> rows = rows();
        List<String> seen = new ArrayList<>();
        for (Path jar : libraries()) {
            String artifact = jar.getParent().getParent().getFileName().toString();
            String version = jar.getParent().getFileName().toString();
            seen.add(artifact);
            Row row = rows.get(artifact);
            assertTrue(row != null, artifact + " is missing in THIRD-PARTY.md");
            assertEquals(version, row.version(), artifact);
            for (String text : row.texts()) {
                assertTrue(Files.size(FOLDER.resolve(text)) > 0, text);
            }
            textsOfTheJarAreOurs(jar, row);
        }
        assertEquals(rows.keySet().stream().toList(), seen.stream().sorted().toList());
    }

    private static void textsOfTheJarAreOurs(Path jar, Row row) throws IOException {
        try (JarFile file = new JarFile(jar.toFile())) {
            for (JarEntry entry : file.stream().filter(e -> IN_JAR.matcher(e.getName()).matches()).toList()) {
                String ending = entry.getName().replace("META-INF/", "-");
                String ours = row.texts().stream().filter(t -> t.replaceFirst("\\.(txt|md)$", "")
                        .endsWith(ending.replaceFirst("\\.(txt|md)$", ""))).findFirst().orElseThrow(
                                () -> new AssertionError(jar.getFileName() + " has " + entry.getName()));
                try (InputStream in = file.getInputStream(entry)) {
                    assertArrayEquals(in.readAllBytes(), Files.readAllBytes(FOLDER.resolve(ours)), ours);
                }
            }
        }
    }

    @Test
    void noTextIsLeftOver() throws IOException {
        List<String> named = new ArrayList<>(List.of("THIRD-PARTY.md"));
        rows().values().forEach(row -> named.addAll(row.texts()));
        try (Stream<Path> files = Files.list(FOLDER)) {
            assertEquals(named.stream().distinct().sorted().toList(),
                    files.map(f -> f.getFileName().toString()).sorted().toList());
        }
    }

    @Test
    void fontsHaveTheirLicence() throws IOException {
        for (String text : List.of("bravura/LICENSE.txt", "noto-sans/LICENSE_FONT")) {
            String licence = Files.readString(Path.of("src/main/resources/countstave/fonts", text));
            assertTrue(licence.contains("SIL OPEN FONT LICENSE"), text);
            assertTrue(Files.readString(FOLDER.resolve("THIRD-PARTY.md")).contains(text));
        }
    }

    private static Map<String, Row> rows() throws IOException {
        Map<String, Row> rows = new TreeMap<>();
        Matcher row = ROW.matcher(Files.readString(FOLDER.resolve("THIRD-PARTY.md"), StandardCharsets.UTF_8));
        while (row.find()) {
            List<String> texts = TEXT.matcher(row.group(4)).results().map(m -> m.group(1)).toList();
            rows.put(row.group(1), new Row(row.group(2), row.group(3), texts));
        }
        return rows;
    }

    private static List<Path> libraries() {
        String classPath = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        return Arrays.stream(classPath.split(File.pathSeparator)).filter(p -> p.endsWith(".jar")).map(Path::of)
                .filter(p -> TEST_ONLY.stream().noneMatch(t -> p.toString().replace('\\', '/').contains('/' + t)))
                .toList();
    }
}
