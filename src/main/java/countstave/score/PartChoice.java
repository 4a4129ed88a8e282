package countstave.score;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A choice of parts, each by its id, its name or its number from 1; an empty choice means every part with notes. */
public record PartChoice(List<String> wanted) {

    public static final PartChoice ALL = new PartChoice(List.of());

    /** @throws ScoreException if a wanted part does not exist, or the score has no part with notes */
    public List<Part> of(Score score) {
        if (wanted.isEmpty()) {
            List<Part> playing = score.parts().stream().filter(Part::hasNotes).toList();
            if (playing.isEmpty()) {
                throw new ScoreException("no part has a note in it: there is nothing to count");
            }
            return playing;
        }
        List<Part> chosen = new ArrayList<>();
        for (String name : wanted) {
            Part part = find(score, name.strip());
            if (!chosen.contains(part)) {
                chosen.add(part);
            }
        }
        return chosen;
    }

    private static Part find(Score score, String name) {
        for (Part part : score.parts()) {
            if (part.id().equals(name)) {
                return part;
            }
        }
        for (Part part : score.parts()) {
            if (part.name().strip().equalsIgnoreCase(name)) {
                return part;
            }
        }
        if (name.matches("\\d{1,6}")) {
            int number = Integer.parseInt(name);
            if (number >= 1 && number <= score.parts().size()) {
                return score.parts().get(number - 1);
            }
        }
        StringBuilder known = new StringBuilder();
        for (int i = 0; i < score.parts().size() && i < 12; i++) {
            Part part = score.parts().get(i);
            known.append(i == 0 ? "" : ", ").append(i + 1).append(" = ").append(part.name());
        }
        throw new ScoreException("there is no part '" + name + "'; the parts are " + known
                + (score.parts().size() > 12 ? " ..." : ""));
    }

    @Override
    public String toString() {
        return wanted.stream().collect(Collectors.joining(", "));
    }
}
