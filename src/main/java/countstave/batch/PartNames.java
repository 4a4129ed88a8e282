package countstave.batch;

import countstave.files.FileNames;
import countstave.score.Part;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Outputs of which each score has one a part: {@code song_Bass.pdf}. The place that {@link Targets} settles stands for all
 * of a score's, {@code song_PART.pdf}.
 */
public final class PartNames implements Naming {

    /** What a part's name stands behind: none has it in it, so that no two scores' outputs meet in one folder. */
    private static final String BEFORE = "_";

    private static final String ENDING = ".pdf";
    private static final String ANY = BEFORE + "PART" + ENDING;

    /** File systems have names of 255 bytes; the score's must find room beside it. */
    private static final int LONGEST = 60;

    /** Letters that no decomposition takes apart, and signs that tell one instrument from another. */
    private static final Map<String, String> SPELLED = Map.of("\u00DF", "ss", "\u00E6", "ae", "\u00C6", "Ae", "\u00F8", "o",
            "\u00D8", "O", "\u0153", "oe", "\u0142", "l", "\u0141", "L", "\u266D", "b", "\u266F", "-sharp");

    private static final OutputNames WHOLE = new OutputNames("-counts", ENDING);

    @Override
    public String inFolder(NamedScore score, String stem) {
        return stem + ANY;
    }

    @Override
    public Path beside(NamedScore score, String stem) {
        return FileNames.beside(score.path(), stem + ANY);
    }

    @Override
    public Path formerly(NamedScore score) {
        return WHOLE.formerly(score);
    }

    @Override
    public boolean asksBeside() {
        return true;
    }

    @Override
    public boolean severalFiles() {
        return true;
    }

    /**
     * Where the output of each part goes, by the part's id.
     *
     * @param place what {@link Targets} has settled for the score
     * @param parts all parts of the score, so that the choice of some changes no name
     */
    public static Map<String, Path> places(Path place, List<Part> parts) {
        String all = FileNames.text(place.getFileName());
        String score = all.substring(0, all.length() - ANY.length());
        List<String> names = names(parts.stream().map(Part::name).toList());
        Map<String, Path> places = new HashMap<>();
        for (int i = 0; i < parts.size(); i++) {
            places.put(parts.get(i).id(), FileNames.beside(place, score + BEFORE + names.get(i) + ENDING));
        }
        return places;
    }

    /** The names as parts of file names; those that would be alike get the number of the part. */
    static List<String> names(List<String> parts) {
        List<String> names = new ArrayList<>(parts.stream().map(PartNames::safe).toList());
        Map<String, Integer> times = new HashMap<>();
        names.forEach(name -> times.merge(name.toLowerCase(Locale.ROOT), 1, Integer::sum));
        Set<String> taken = new HashSet<>();
        times.forEach((name, number) -> {
            if (number == 1) {
                taken.add(name);
            }
        });
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i);
            if (times.get(name.toLowerCase(Locale.ROOT)) > 1) {
                do {
                    name += "-" + (i + 1);
                } while (!taken.add(name.toLowerCase(Locale.ROOT)));
                names.set(i, name);
            }
        }
        return names;
    }

    /** Letters, digits and hyphens only, which every locale and every file system can write. */
    private static String safe(String name) {
        String spelled = name;
        for (Map.Entry<String, String> letter : SPELLED.entrySet()) {
            spelled = spelled.replace(letter.getKey(), letter.getValue());
        }
        String plain = Normalizer.normalize(spelled, Normalizer.Form.NFKD).replaceAll("\\p{M}+", "")
                .replaceAll("[^A-Za-z0-9]+", "-");
        String cut = plain.substring(0, Math.min(LONGEST, plain.length())).replaceAll("^-|-$", "");
        return cut.isEmpty() ? "part" : cut;
    }
}
