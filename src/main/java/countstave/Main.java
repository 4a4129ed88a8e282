package countstave;

import countstave.cli.Countstave;
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
        int code = Countstave.run(args, System.in, out, err);
        out.flush();
        if (standard.fault() != null) {
            err.println("countstave: " + standard.fault());
            code = Math.max(code, 2);
        }
        System.exit(code);
    }
}
