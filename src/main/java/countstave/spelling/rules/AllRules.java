package countstave.spelling.rules;

import countstave.spelling.Rule;
import java.util.List;

/** Every rule, in the order in which they are listed: errors, warnings, hints. */
public final class AllRules {

    private AllRules() {
    }

    public static List<Rule> list() {
        return List.of(
                new BarOverfull(), new BarShort(), new MeterDisagrees(), new ValueDiffers(), new DurationRounded(),
                new DurationMissing(), new TupletUnmatched(), new TupletUnfilled(), new TupletNumber(),
                new TupletNesting(), new TieLoose(), new TiePitch(), new BackupTooFar(), new VoiceOverlap(),
                new BeamUnmatched(), new BeamOverRest(),
                new MiddleHidden(), new BeatHidden(), new RestHidesBeat(), new BeamAgainstMeter(),
                new TripletsThroughout(), new DupletsThroughout(), new TupletAllDotted(),
                new TupletNeedless(), new TupletReducible(), new RatioUnusual(), new TupletOffBeat(),
                new PolyrhythmPlain(), new ManyCountChanges());
    }
}
