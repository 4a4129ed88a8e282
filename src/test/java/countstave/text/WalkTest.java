package countstave.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The walk in {@code DEVELOPERS.md} from the README to the line that decides a count leads where it says. */
class WalkTest {

    private static final int MOST_OPENINGS = 6;
    private static final Pattern STEP = Pattern.compile("^(\\d)\\. `([^`]+)`: .*: `([^`]+)`$");

    @Test
    void everyStepIsThereAndNamesTheNext() throws IOException {
        List<Path> files = new ArrayList<>();
        List<String> signs = new ArrayList<>();
        for (String line : Files.readAllLines(Path.of("DEVELOPERS.md"))) {
            Matcher step = STEP.matcher(line);
            if (step.matches()) {
                assertEquals(String.valueOf(files.size() + 1), step.group(1), line);
                files.add(Path.of(step.group(2)));
                signs.add(step.group(3));
            }
        }
        assertTrue(files.size() >= 3 && files.size() <= MOST_OPENINGS, files.toString());
        assertEquals(Path.of("README.md"), files.get(0));
        for (int i = 0; i < files.size(); i++) {
            String text = withoutWalk(Files.readString(files.get(i)));
            assertTrue(text.contains(signs.get(i)), files.get(i) + " does not hold: " + signs.get(i));
            if (i + 1 < files.size()) {
                String next = files.get(i + 1).getFileName().toString().replace(".java", "");
                assertTrue(text.contains(next), files.get(i) + " does not lead to " + next);
            }
        }
    }

    /** The walk itself is no proof of what DEVELOPERS.md says. */
    private static String withoutWalk(String text) {
        StringBuilder rest = new StringBuilder();
        text.lines().filter(line -> !STEP.matcher(line).matches()).forEach(line -> rest.append(line).append('\n'));
        return rest.toString();
    }
}
