package countstave.folder;

import countstave.practice.Passage;
import java.io.IOException;
import java.io.OutputStream;

/**
 * A file that is going to lie in a practice folder.
 *
 * @param name its name in the folder
 * @param label what it is
 * @param passage the passage it belongs to, or null for the whole
 * @param bytes how large it is going to be, or 0 if it is small
 * @param content writes it
 */
record FolderFile(String name, String label, Passage passage, long bytes, Content content) {

    /** Writes a file. */
    interface Content {
        /** @return what is to be added to the label, mostly nothing */
        String writeTo(OutputStream out) throws IOException;
    }
}
