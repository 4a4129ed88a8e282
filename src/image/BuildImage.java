import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.jar.JarFile;
import java.util.spi.ToolProvider;
import java.util.stream.Stream;

/**
 * Makes the self-contained image of countstave for the system this runs on, from the packaged jar and the tools of the
 * JDK that runs it (17 or later): {@code java src/image/BuildImage.java target scores}.
 *
 * <p>The jar becomes one module, jlink builds a runtime with that module and a launcher in it, and the classes of the
 * main jobs are put into the runtime's class-data archive. The module lies inside the runtime and not beside it, so that
 * the archive still holds when the folder is moved or copied.
 */
public final class BuildImage {

    private static final String NAME = "countstave";
    private static final String MAIN = "countstave/countstave.Main";

    /**
     * A run is short: the quick compiler and the collector without threads of its own start fastest. Big scores still
     * run well with them; docs/benchmarks.md has the figures.
     */
    private static final String OPTIONS = "-XX:TieredStopAtLevel=1 -XX:+UseSerialGC -Xshare:auto";

    private final Path target;
    private final Path scores;
    private final Path work;
    private final Path image;

    private BuildImage(Path target, Path scores) {
        this.target = target;
        this.scores = scores;
        this.work = target.resolve("image-work");
        this.image = target.resolve("image").resolve(NAME);
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        if (args.length != 2) {
            System.err.println("usage: java BuildImage.java TARGET SCORES");
            System.exit(2);
        }
        new BuildImage(Path.of(args[0]), Path.of(args[1])).build();
    }

    private void build() throws IOException, InterruptedException {
        delete(work);
        delete(target.resolve("image"));
        Files.createDirectories(work);
        Path module = module();
        tool("jlink", "--module-path", module.toString(), "--add-modules", NAME, "--output", image.toString(),
                "--launcher", NAME + "=" + MAIN, "--strip-debug", "--no-header-files", "--no-man-pages",
                "--add-options=" + OPTIONS);
        archiveClasses();
        launcher();
        papers();
        describe();
        System.out.println("made " + image);
    }

    /** The jar with a module description: which JDK modules it needs, and the services in it. */
    private Path module() throws IOException {
        Path jar = work.resolve("countstave.jar");
        Files.copy(target.resolve("countstave.jar"), jar, StandardCopyOption.REPLACE_EXISTING);
        Path source = work.resolve("module-info.java");
        StringBuilder text = new StringBuilder("module countstave {\n");
        // what the jar asks of the JDK; java.base comes by itself
        for (String needed : List.of("java.xml", "java.logging", "java.desktop")) {
            text.append("    requires ").append(needed).append(";\n");
        }
        service(text, "jakarta.xml.bind.JAXBContextFactory", "org.glassfish.jaxb.runtime.v2.JAXBContextFactory");
        service(text, "org.slf4j.spi.SLF4JServiceProvider", "org.slf4j.nop.NOPServiceProvider");
        service(text, "jakarta.activation.spi.MailcapRegistryProvider",
                "org.eclipse.angus.activation.MailcapRegistryProviderImpl");
        service(text, "jakarta.activation.spi.MimeTypeRegistryProvider",
                "org.eclipse.angus.activation.MimeTypeRegistryProviderImpl");
        // PDFBox logs by it; there is no provider, and it is content with that
        text.append("    uses org.apache.commons.logging.LogFactory;\n");
        Files.writeString(source, text.append("}\n"), StandardCharsets.UTF_8);
        tool("javac", "--release", "17", "-Xlint:-module", "-d", work.resolve("module").toString(),
                "--patch-module", NAME + "=" + jar, source.toString());
        tool("jar", "--update", "--file", jar.toString(), "--module-version", version(jar), "-C", work.resolve("module").toString(),
                "module-info.class");
        return jar;
    }

    private static String version(Path jar) throws IOException {
        try (JarFile file = new JarFile(jar.toFile())) {
            return file.getManifest().getMainAttributes().getValue("Implementation-Version");
        }
    }

    private static void service(StringBuilder text, String service, String provider) {
        text.append("    uses ").append(service).append(";\n    provides ").append(service).append(" with ")
                .append(provider).append(";\n");
    }

    /** Runs the main jobs once, and puts every class they needed into the image's own archive. */
    private void archiveClasses() throws IOException, InterruptedException {
        String score = scores.resolve("song.musicxml").toString();
        List<List<String>> jobs = List.of(
                List.of("count", score),
                List.of("count", score, "--format", "json"),
                List.of("annotate", score, "-o", work.resolve("counted.musicxml").toString(), "--force"),
                List.of("strip", work.resolve("counted.musicxml").toString(), "--force"),
                List.of("check", score),
                List.of("annotate", scores.toString(), "-o", work.resolve("counted").toString(), "--force"),
                List.of("annotate", score, "-o", work.resolve("counted.pdf").toString(), "--force"),
                List.of("practice", score),
                List.of("practice", score, "-o", work.resolve("practice").toString(), "--force"),
                List.of("--help"));
        Set<String> classes = new LinkedHashSet<>();
        for (int i = 0; i < jobs.size(); i++) {
            Path list = work.resolve("classes-" + i + ".lst");
            List<String> command = new ArrayList<>(List.of("-Xshare:off", "-XX:DumpLoadedClassList=" + list, "-m", MAIN));
            command.addAll(jobs.get(i));
            java(command);
            classes.addAll(Files.readAllLines(list, StandardCharsets.UTF_8));
        }
        Path all = work.resolve("classes.lst");
        Files.write(all, classes, StandardCharsets.UTF_8);
        // the archive also keeps ready-made objects when it is written under the default collector
        java(List.of("-XX:-UseSerialGC", "-XX:+UseG1GC", "-Xshare:dump", "-Xlog:cds=off", "-Xlog:cds+dynamic=off",
                "-XX:SharedClassListFile=" + all, "-m", MAIN));
    }

    private void java(List<String> arguments) throws IOException, InterruptedException {
        java(arguments, null);
    }

    /** @param out where what it prints goes; null for the log */
    private void java(List<String> arguments, Path out) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        command.add(image.resolve("bin").resolve("java").toString());
        command.addAll(arguments);
        Path log = work.resolve("java.log");
        ProcessBuilder.Redirect told = ProcessBuilder.Redirect.appendTo(log.toFile());
        Process process = new ProcessBuilder(command).redirectError(told)
                .redirectOutput(out == null ? told : ProcessBuilder.Redirect.to(out.toFile())).start();
        int code = process.waitFor();
        // 1 is what check says where it finds something
        if (code != 0 && !(code == 1 && arguments.contains("check"))) {
            throw new IOException("exit code " + code + " from " + String.join(" ", command) + "; see " + log);
        }
    }

    private static void tool(String name, String... arguments) throws IOException {
        String[] given = Stream.of(arguments).filter(a -> !a.isEmpty()).toArray(String[]::new);
        ToolProvider tool = ToolProvider.findFirst(name).orElseThrow(
                () -> new IOException("this JDK has no " + name + ": use a full JDK, 17 or later"));
        if (tool.run(System.out, System.err, given) != 0) {
            throw new IOException(name + " failed: " + String.join(" ", given));
        }
    }

    /** Where there is a shell: a launcher that may be linked to from elsewhere and may lie in a folder with blanks. */
    private void launcher() throws IOException {
        Path launcher = image.resolve("bin").resolve(NAME);
        if (System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("windows")) {
            return;
        }
        Files.writeString(launcher, """
                #!/bin/sh
                self=$0
                while [ -h "$self" ]; do
                    link=$(readlink "$self")
                    case $link in
                        /*) self=$link ;;
                        *) self=${self%/*}/$link ;;
                    esac
                done
                exec "${self%/*}/java" -m countstave/countstave.Main "$@"
                """, StandardCharsets.UTF_8);
    }

    /** The texts that go with the program, beside it; the licences of the libraries are in the runtime too. */
    private void papers() throws IOException {
        Path folder = image.resolve("share");
        Files.createDirectories(folder);
        Path licences = Path.of("src", "main", "resources", "META-INF", "licenses");
        copy(licences, folder.resolve("licenses"));
        Path parts = target.resolve("countstave.cdx.json");
        if (Files.exists(parts)) {
            Files.copy(parts, folder.resolve("countstave.cdx.json"));
        }
    }

    /** The manual pages and the completion of a shell's command line, as the program itself describes them. */
    private void describe() throws IOException, InterruptedException {
        Path pages = Files.createDirectories(image.resolve("share").resolve("man").resolve("man1"));
        java(List.of("-m", MAIN, "generate-man", "-o", pages.toString()));
        Path completions = Files.createDirectories(
                image.resolve("share").resolve("bash-completion").resolve("completions"));
        java(List.of("-m", MAIN, "generate-completion"), completions.resolve(NAME));
        for (Path made : List.of(pages.resolve(NAME + ".1"), completions.resolve(NAME))) {
            if (!Files.exists(made) || Files.size(made) == 0) {
                throw new IOException(made + " was not made; see " + work.resolve("java.log"));
            }
        }
    }

    private static void copy(Path from, Path to) throws IOException {
        if (!Files.isDirectory(from)) {
            return;
        }
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
