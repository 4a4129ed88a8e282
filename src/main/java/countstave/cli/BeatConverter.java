package countstave.cli;

import countstave.score.PulseChoice;
import picocli.CommandLine.ITypeConverter;

/** {@code --beat}: {@code meter}, {@code groups} or a note value. */
final class BeatConverter implements ITypeConverter<PulseChoice> {

    @Override
    public PulseChoice convert(String text) {
        return switch (text) {
            case "meter" -> PulseChoice.BY_METER;
            case "groups" -> PulseChoice.BY_GROUPS;
            default -> PulseChoice.of(NoteLengths.parse(text));
        };
    }
}
