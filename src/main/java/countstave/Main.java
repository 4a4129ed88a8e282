package countstave;

import countstave.cli.Countstave;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** The process: hands the streams and arguments over and ends with the exit code. */
public final class Main {

    private Main() {
    }

    public static void main(String[] args) {
        PrintStream out = new PrintStream(new java.io.FileOutputStream(java.io.FileDescriptor.out), false,
                StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(new java.io.FileOutputStream(java.io.FileDescriptor.err), true,
                StandardCharsets.UTF_8);
        int code = Countstave.run(args, System.in, out, err);
        out.flush();
        System.exit(code);
    }
}
