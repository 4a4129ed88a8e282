package countstave.take;

import java.nio.file.Path;
import java.util.List;
import java.util.function.IntFunction;

/**
 * The guide track that was heard while a take was made.
 *
 * @param path of its WAV file
 * @param sounds what its clicks sound like, at so many samples a second; by them they are told from words. None where that
 *     is not known
 */
public record GuideFile(Path path, IntFunction<List<double[]>> sounds) {
}
