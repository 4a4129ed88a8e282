package countstave.testing;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The same Java with the same classes in a process of its own. */
public final class JavaProcess {

    /** A process is short: one thread collects, and compiling well costs more than it saves. */
    private static final List<String> SHORT = List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-XX:-UsePerfData");

    private JavaProcess() {
    }

    public static Path program() {
        return Path.of(System.getProperty("java.home"), "bin", "java");
    }

    public static String classPath() {
        return System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
    }

    /** Up to the class that is run, which comes next. */
    public static List<String> command(String... options) {
        List<String> command = new ArrayList<>(List.of(program().toString()));
        command.addAll(SHORT);
        command.addAll(List.of(options));
        command.addAll(List.of("-cp", classPath()));
        return command;
    }

    /** The same as one line for a shell, each word in its quotes. */
    public static String line() {
        return "\"" + String.join("\" \"", command()) + "\"";
    }
}
