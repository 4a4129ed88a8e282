package countstave.spelling;

import java.io.IOException;

/** Tells what was found, file by file, so that no more than one file's findings need be at hand. */
public interface FindingsReport {

    /** Tells one file's findings, or why there are none. */
    void file(CheckedFile file) throws IOException;

    /** Ends the report. */
    void end() throws IOException;
}
