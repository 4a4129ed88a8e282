package countstave.spelling.rules;

import countstave.spelling.Rule;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Every rule, in the order in which they are listed: errors, warnings, hints. */
public final class AllRules {

    private AllRules() {
    }

    public static List<Rule> list() {
        return List.of(
                new BarOverfull(), new BarShort(), new MeterDisagrees(), new ValueDiffers(),
                new DurationMissing(), new DurationRounded(), new TupletUnmatched(), new TupletUnfilled(),
                new TupletNumber(), new TupletNesting(), new TieLoose(), new TiePitch(), new BackupTooFar(), new VoiceOverlap(),
                new BeamUnmatched(), new BeamOverRest(),
                new MiddleHidden(), new BeatHidden(), new RestHidesBeat(), new BeamAgainstMeter(),
                new TripletsThroughout(), new DupletsThroughout(), new TupletAllDotted(),
                new TupletNeedless(), new TupletReducible(), new RatioUnusual(), new TupletOffBeat(),
                new PolyrhythmPlain(), new ManyCountChanges());
    }

    /** Their ids, in the same order. */
    public static Set<String> ids() {
        return list().stream().map(rule -> rule.info().id()).collect(Collectors.toCollection(LinkedHashSet::new));
    }
}
