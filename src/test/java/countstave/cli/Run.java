package countstave.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Stream;

/** A run of the whole tool in this process, and what it leaves. */
record Run(int code, String out, String err) {

    static Run of(String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Countstave.run(args, new ByteArrayInputStream(new byte[0]),
                new PrintStream(out, true, StandardCharsets.UTF_8), new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Run(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** What is told of single scores: all but the summary, which has the time in it. */
    List<String> told() {
        return err.lines().filter(l -> !isSummary(l)).toList();
    }

    /** The line on how it went, without the time and the place of the results. */
    String summary() {
        return err.lines().filter(Run::isSummary).map(l -> l.replaceFirst(", [0-9.]+ s(; .*)?$", "")).findFirst().orElse("");
    }

    private static boolean isSummary(String line) {
        return line.matches("countstave: \\d+ (of \\d+ )?scores? done.*, [0-9.]+ s(; .*)?");
    }

    /** Contents of all files below a folder by their names. */
    static TreeMap<String, String> tree(Path folder) throws IOException {
        TreeMap<String, String> tree = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(f -> !Files.isDirectory(f, LinkOption.NOFOLLOW_LINKS)).toList()) {
                tree.put(folder.relativize(file).toString().replace('\\', '/'),
                        Files.readString(file, StandardCharsets.ISO_8859_1));
            }
        }
        return tree;
    }
}
