import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;

/**
 * Makes a Debian package of the self-contained image that {@code BuildImage} has made:
 * {@code java src/image/BuildPackage.java target VERSION}. It needs dpkg-deb and fakeroot.
 *
 * <p>jpackage puts the image and a launcher under {@code /usr} and tells the system of the two file types; the manual pages,
 * the completion and the licences, for which it has no place, are then put where Debian looks for them.
 */
public final class BuildPackage {

    private static final String NAME = "countstave";
    /** Those of the image's own launcher. */
    private static final List<String> OPTIONS = List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xshare:auto");

    private final Path target;
    private final String version;

    private BuildPackage(Path target, String version) {
        this.target = target;
        this.version = version;
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        if (args.length != 2) {
            System.err.println("usage: java BuildPackage.java TARGET VERSION");
            System.exit(2);
        }
        new BuildPackage(Path.of(args[0]), args[1]).build();
    }

    private void build() throws IOException, InterruptedException {
        Path work = target.resolve("deb-work");
        Path image = target.resolve("image").resolve(NAME);
        Path extra = Path.of("src", "image", "deb");
        delete(work);
        Files.createDirectories(work);
        List<String> arguments = new ArrayList<>(List.of("--type", "deb", "--name", NAME, "--app-version", version,
                "--description", "Counts under the notes of a MusicXML score", "--vendor", NAME,
                "--linux-package-name", NAME, "--linux-app-category", "sound", "--linux-shortcut", "--linux-deb-maintainer",
                NAME + "@localhost", "--install-dir", "/usr", "--runtime-image", image.toString(),
                "--module", "countstave/countstave.Main", "--resource-dir", extra.toString(), "--dest", work.toString()));
        for (String option : OPTIONS) {
            arguments.addAll(List.of("--java-options", option));
        }
        for (String type : List.of("musicxml", "mxl")) {
            arguments.addAll(List.of("--file-associations", extra.resolve(type + ".properties").toString()));
        }
        ToolProvider jpackage = ToolProvider.findFirst("jpackage").orElseThrow(
                () -> new IOException("this JDK has no jpackage: use a full JDK, 17 or later"));
        if (jpackage.run(System.out, System.err, arguments.toArray(String[]::new)) != 0) {
            throw new IOException("jpackage failed");
        }
        Path made;
        try (Stream<Path> files = Files.list(work)) {
            made = files.filter(file -> file.toString().endsWith(".deb")).findFirst().orElseThrow();
        }
        Path tree = work.resolve("tree");
        run("dpkg-deb", "--raw-extract", made.toString(), tree.toString());
        complete(image.resolve("share"), tree.resolve("usr").resolve("share"));
        Path done = target.resolve(made.getFileName());
        run("dpkg-deb", "--root-owner-group", "-Zxz", "--build", tree.toString(), done.toString());
        System.out.println("made " + done);
    }

    /** Manual pages, completion and licences to the places where a Debian system looks for them. */
    private static void complete(Path from, Path to) throws IOException {
        Path pages = Files.createDirectories(to.resolve("man").resolve("man1"));
        try (Stream<Path> files = Files.list(from.resolve("man").resolve("man1"))) {
            for (Path page : files.toList()) {
                try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(pages.resolve(page.getFileName() + ".gz")))) {
                    Files.copy(page, out);
                }
            }
        }
        copy(from.resolve("bash-completion"), to.resolve("bash-completion"));
        copy(from.resolve("licenses"), Files.createDirectories(to.resolve("doc").resolve(NAME)).resolve("licenses"));
    }

    private static void run(String... command) throws IOException, InterruptedException {
        int code = new ProcessBuilder(command).inheritIO().start().waitFor();
        if (code != 0) {
            throw new IOException("exit code " + code + " from " + String.join(" ", command));
        }
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> files = Files.walk(from)) {
            for (Path file : files.toList()) {
                Files.copy(file, to.resolve(from.relativize(file).toString()), StandardCopyOption.REPLACE_EXISTING);
            }
        }
    }

    private static void delete(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
