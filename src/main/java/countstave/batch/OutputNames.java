package countstave.batch;

import countstave.files.FileNames;
import java.nio.file.Path;

/** Outputs that are called like their score: in a folder of outputs by the same name, beside it by a name of their own. */
public final class OutputNames implements Naming {

    private final String addition;
    private final String ending;

    /**
     * @param addition what is put behind the name of an output beside its score; null if none is written there
     * @param ending ending of the outputs, or null for that of the score
     */
    public OutputNames(String addition, String ending) {
        this.addition = addition;
        this.ending = ending;
    }

    @Override
    public String inFolder(NamedScore score, String stem) {
        return stem + ending(score);
    }

    @Override
    public Path beside(NamedScore score, String stem) {
        return addition == null ? null : FileNames.beside(score.path(), stem + addition + ending(score));
    }

    @Override
    public Path formerly(NamedScore score) {
        return addition == null ? null : FileNames.beside(score.path(), score.stem() + addition + score.ending());
    }

    @Override
    public boolean asksBeside() {
        return addition != null;
    }

    private String ending(NamedScore score) {
        return ending == null ? score.ending() : ending;
    }
}
