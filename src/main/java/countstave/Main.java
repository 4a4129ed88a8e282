package countstave;

import countstave.cli.Countstave;
import countstave.files.Arguments;
import countstave.files.StandardOutput;
import java.io.BufferedOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** The process: hands the streams and arguments over and ends with the exit code. */
public final class Main {

    private Main() {
    }

    public static void main(String[] args) {
        StandardOutput standard = new StandardOutput();
        PrintStream out = new PrintStream(new BufferedOutputStream(standard), false, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(new java.io.FileOutputStream(java.io.FileDescriptor.err), true,
                StandardCharsets.UTF_8);
        String[] typed = Arguments.typed(args);
        if (!Arguments.isReadable(typed)) {
            err.println("countstave: this locale has no letters for what was typed: set LC_ALL to one that has, such as C.UTF-8");
            System.exit(2);
        }
        int code = Countstave.run(typed, System.in, out, err);
        out.flush();
        if (standard.fault() != null) {
            err.println("countstave: " + standard.fault());
            code = Math.max(code, 2);
        }
        System.exit(code);
    }
}
