import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import javax.imageio.ImageIO;

/**
 * Makes a Debian package of the self-contained image that {@code BuildImage} has made:
 * {@code java src/image/BuildPackage.java target VERSION}. It needs dpkg-deb.
 *
 * <p>jpackage makes a launcher that belongs to the image. The package is laid out here and not by jpackage: that one would
 * ask for the libraries of a desktop, which no command uses, and register the file types by scripts, where a Debian system
 * does it by itself for files that lie in the right folders.
 */
public final class BuildPackage {

    private static final String NAME = "countstave";
    /** Those of the image's own launcher. */
    private static final List<String> OPTIONS = List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xshare:auto");
    /** What the virtual machine and the launcher are linked to. */
    private static final String DEPENDS = "libc6, libgcc-s1, libstdc++6, zlib1g";
    private static final int ICON = 128;

    private final Path target;
    private final String version;
    private final Path work;
    private final Path tree;

    private BuildPackage(Path target, String version) {
        this.target = target;
        this.version = version;
        this.work = target.resolve("deb-work");
        this.tree = work.resolve("tree");
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        if (args.length != 2) {
            System.err.println("usage: java BuildPackage.java TARGET VERSION");
            System.exit(2);
        }
        new BuildPackage(Path.of(args[0]), args[1]).build();
    }

    private void build() throws IOException, InterruptedException {
        delete(work);
        Files.createDirectories(work);
        Path image = target.resolve("image").resolve(NAME);
        Path usr = tree.resolve("usr");
        Files.createDirectories(usr.resolve("lib"));
        Files.move(program(image), usr.resolve("lib").resolve(NAME));
        Files.createSymbolicLink(Files.createDirectories(usr.resolve("bin")).resolve(NAME),
                Path.of("..", "lib", NAME, "bin", NAME));
        share(image.resolve("share"), usr.resolve("share"));
        // the package has them where a system looks for them
        delete(usr.resolve("lib").resolve(NAME).resolve("lib").resolve("runtime").resolve("share"));
        control();
        Path made = target.resolve(NAME + "_" + version + "_" + architecture() + ".deb");
        run("dpkg-deb", "--root-owner-group", "-Zxz", "-z6", "--build", tree.toString(), made.toString());
        delete(work);
        System.out.println("made " + made);
    }

    /** The image with a launcher of its own. */
    private Path program(Path image) throws IOException {
        List<String> arguments = new ArrayList<>(List.of("--type", "app-image", "--name", NAME, "--app-version",
                version.replaceFirst("[^0-9.].*", ""), "--runtime-image", image.toString(), "--module",
                "countstave/countstave.Main", "--icon", icon().toString(), "--dest", work.toString()));
        for (String option : OPTIONS) {
            arguments.addAll(List.of("--java-options", option));
        }
        ToolProvider jpackage = ToolProvider.findFirst("jpackage").orElseThrow(
                () -> new IOException("this JDK has no jpackage: use a full JDK, 17 or later"));
        if (jpackage.run(System.out, System.err, arguments.toArray(String[]::new)) != 0) {
            throw new IOException("jpackage failed");
        }
        return work.resolve(NAME);
    }

    /** Manual pages, completion, licences, file types and the icon to the places where a Debian system looks for them. */
    private void share(Path from, Path to) throws IOException {
        Path pages = Files.createDirectories(to.resolve("man").resolve("man1"));
        try (Stream<Path> files = Files.list(from.resolve("man").resolve("man1"))) {
            for (Path page : files.toList()) {
                try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(pages.resolve(page.getFileName() + ".gz")))) {
                    Files.copy(page, out);
                }
            }
        }
        copy(from.resolve("bash-completion"), to.resolve("bash-completion"));
        Path doc = Files.createDirectories(to.resolve("doc").resolve(NAME));
        copy(from.resolve("licenses"), doc.resolve("licenses"));
        Path extra = Path.of("src", "image", "deb");
        Files.copy(extra.resolve("copyright"), doc.resolve("copyright"));
        Files.copy(extra.resolve(NAME + ".desktop"), Files.createDirectories(to.resolve("applications")).resolve(NAME + ".desktop"));
        Files.copy(extra.resolve(NAME + ".xml"), Files.createDirectories(to.resolve("mime").resolve("packages")).resolve(NAME + ".xml"));
        Path icons = to.resolve("icons").resolve("hicolor").resolve(ICON + "x" + ICON).resolve("apps");
        Files.copy(icon(), Files.createDirectories(icons).resolve(NAME + ".png"));
    }

    private void control() throws IOException, InterruptedException {
        long size;
        try (Stream<Path> files = Files.walk(tree)) {
            size = files.filter(Files::isRegularFile).mapToLong(file -> file.toFile().length()).sum();
        }
        Files.writeString(Files.createDirectories(tree.resolve("DEBIAN")).resolve("control"), "Package: " + NAME
                + "\nVersion: " + version + "\nSection: sound\nPriority: optional\nArchitecture: " + architecture()
                + "\nMaintainer: " + NAME + " <" + NAME + "@localhost>\nInstalled-Size: " + size / 1024 + "\nDepends: "
                + DEPENDS + "\nDescription: what to count under the notes of a score\n"
                + " Reads a MusicXML score, finds the subdivision that covers every note and writes the\n"
                + " counts under the notes, with a mark wherever the counting has to change; makes sheets\n"
                + " and tracks to practise them.\n");
    }

    private static String architecture() throws IOException, InterruptedException {
        Process asked = new ProcessBuilder("dpkg", "--print-architecture").start();
        String name = new String(asked.getInputStream().readAllBytes(), StandardCharsets.US_ASCII).strip();
        if (asked.waitFor() != 0) {
            throw new IOException("dpkg does not tell the architecture");
        }
        return name;
    }

    /** A staff with the beat counted under it. */
    private Path icon() throws IOException {
        Path file = work.resolve(NAME + ".png");
        if (Files.exists(file)) {
            return file;
        }
        BufferedImage picture = new BufferedImage(ICON, ICON, BufferedImage.TYPE_INT_ARGB);
        Graphics2D pen = picture.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setColor(Color.WHITE);
        pen.fillRoundRect(2, 2, ICON - 4, ICON - 4, 20, 20);
        pen.setColor(Color.BLACK);
        pen.setStroke(new BasicStroke(2));
        pen.drawRoundRect(2, 2, ICON - 4, ICON - 4, 20, 20);
        for (int line = 0; line < 5; line++) {
            pen.drawLine(12, 28 + 10 * line, ICON - 12, 28 + 10 * line);
        }
        pen.setStroke(new BasicStroke(4));
        for (int x = 40; x <= 88; x += 48) {
            pen.fillOval(x - 16, 52, 17, 13);
            pen.drawLine(x, 58, x, 18);
        }
        pen.drawLine(40, 19, 88, 19);
        pen.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 36));
        pen.drawString("1", 22, 110);
        pen.drawString("&", 68, 110);
        pen.dispose();
        ImageIO.write(picture, "png", file.toFile());
        return file;
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
                Files.copy(file, to.resolve(from.relativize(file).toString()));
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
