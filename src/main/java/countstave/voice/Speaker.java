package countstave.voice;

import countstave.count.CountingSystem;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Who says the words of a counting system: a voice of the bank, or a person's own recordings with the bank for what they
 * lack. Remembers what it could not say as it is meant. For one thread.
 */
public final class Speaker {

    /**
     * Which voice is wanted.
     *
     * @param register of the bank's voice
     * @param language code of a language that the bank speaks, or null for that of the words
     * @param own recordings, or null
     * @param decibels by how much the voice is softer than it could be, 0 to 40
     */
    public record Choice(Register register, String language, Recordings own, double decibels) {

        public static final Choice DEFAULT = new Choice(Register.LOW, null, null, 0);
    }

    private final SyllableBank bank;
    private final Pronunciation pronunciation;
    private final Recordings own;
    private final double gain;
    private final Map<String, Clip> known = new HashMap<>();
    private final Set<String> notRecorded = new TreeSet<>();
    private final Set<String> stoodIn = new TreeSet<>();

    /** @param system whose words are said */
    public Speaker(Choice choice, CountingSystem system) {
        bank = SyllableBank.of(choice.register());
        pronunciation = new Pronunciation(bank, system, choice.language());
        own = choice.own();
        gain = Math.pow(10, -choice.decibels() / 20);
    }

    /** The sound of a printed word. */
    public Clip clip(String printed) {
        return known.computeIfAbsent(printed, this::find);
    }

    private Clip find(String printed) {
        Pronunciation.Found found = pronunciation.find(printed);
        String said = bank.said(found.section(), found.word());
        if (own != null) {
            List<String> names = new ArrayList<>(List.of(printed));
            if (!found.standIn()) {
                names.add(found.word());
                names.add(said);
            }
            Clip clip = own.clip(names);
            if (clip != null) {
                return clip;
            }
            notRecorded.add(found.standIn() ? printed : said);
        }
        if (found.standIn()) {
            stoodIn.add(printed + " (" + said + ")");
        }
        return bank.clip(found.section(), found.word());
    }

    /** How loud it speaks, 0 to 1. */
    public double gain() {
        return gain;
    }

    /** What the player is to be told of the words that were said so far: at most one sentence of each kind. */
    public List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (!notRecorded.isEmpty()) {
            notes.add(own.folder() + " has no recording of " + String.join(", ", notRecorded) + ": said by the bank's voice");
        }
        if (!stoodIn.isEmpty()) {
            notes.add("the bank has no word for " + String.join(", ", stoodIn) + ": said as in brackets");
        }
        return notes;
    }
}
