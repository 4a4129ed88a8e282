package countstave.files;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;

/** Standard output that remembers what went wrong with it, since a print stream keeps that to itself. */
public final class StandardOutput extends OutputStream {

    private final OutputStream out;
    private IOException fault;

    public StandardOutput() {
        this(new FileOutputStream(FileDescriptor.out));
    }

    StandardOutput(OutputStream out) {
        this.out = out;
    }

    @Override
    public void write(int b) throws IOException {
        write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
        try {
            out.write(bytes, from, length);
        } catch (IOException e) {
            fault = fault == null ? e : fault;
            throw e;
        }
    }

    /**
     * One line for the user, or null if all is well. A reader that has gone away, as {@code head} does when it has seen
     * enough, is no fault.
     */
    public String fault() {
        if (fault == null || "Broken pipe".equals(fault.getMessage())) {
            return null;
        }
        return "the output cannot be written (" + fault.getMessage() + "); is the disk full?";
    }
}
