package countstave.cli;

import java.io.IOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.ThreadLocalRandom;

/**
 * The files that are being written beside their places. When the run is interrupted they are taken away, and from then on
 * none is begun and none is moved to its place. Only a process that is killed outright leaves them: their names begin
 * with {@value #PREFIX} and end with {@value #ENDING}.
 */
final class Unfinished {

    static final String PREFIX = ".countstave-";
    static final String ENDING = ".part";

    private static final Set<Path> FILES = new HashSet<>();
    private static boolean watched;
    private static boolean over;

    private Unfinished() {
    }

    /** A new empty file in this folder, with the permissions of any new file. */
    static synchronized Path begin(Path folder) throws IOException {
        awaitTheEnd();
        if (!watched) {
            Runtime.getRuntime().addShutdownHook(new Sweeper());
            watched = true;
        }
        while (true) {
            Path file = folder.resolve(PREFIX + Long.toHexString(ThreadLocalRandom.current().nextLong()) + ENDING);
            try {
                Files.createFile(file);
                FILES.add(file);
                return file;
            } catch (FileAlreadyExistsException e) {
                // one that a killed run has left; the next name will be free
            }
        }
    }

    /** Moves a finished file to its place, in one step. A file that is replaced hands its permissions on. */
    static synchronized void finish(Path file, Path place) throws IOException {
        awaitTheEnd();
        if (Files.isRegularFile(place, LinkOption.NOFOLLOW_LINKS)
                && place.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(file, Files.getPosixFilePermissions(place));
        }
        try {
            Files.move(file, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(file, place, StandardCopyOption.REPLACE_EXISTING);
        }
        FILES.remove(file);
    }

    static synchronized void discard(Path file) {
        FILES.remove(file);
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // nothing more can be done; the message about the first fault is the useful one
        }
    }

    /** Once the process is ending, whoever still writes is held here. */
    private static void awaitTheEnd() {
        while (over) {
            try {
                Unfinished.class.wait();
            } catch (InterruptedException e) {
                // nothing is to be done any more
            }
        }
    }

    private static synchronized void sweep() {
        over = true;
        for (Path file : Set.copyOf(FILES)) {
            discard(file);
        }
    }

    private static final class Sweeper extends Thread {
        @Override
        public void run() {
            sweep();
        }
    }
}
