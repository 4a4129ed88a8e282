package countstave.sound;

import countstave.practice.Parts;
import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.score.Meter;
import countstave.time.Exact;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;

/** A process that renders more than an hour of sound and prints how many seconds and bytes it was. */
final class LongTrack {

    private LongTrack() {
    }

    public static void main(String[] args) throws IOException {
        String bar = "16 16 16 16 3:2[8 8 8] 8 8 4";
        Stretch stretch = Stretch.of(Parts.of(Meter.of(4, 4), 60, bar, bar, bar, bar, bar, bar, bar, bar));
        List<Leg> legs = List.of(new Leg(stretch, Exact.ONE, Stage.ALL, 100, "one"),
                new Leg(stretch, Exact.of(7, 6), Stage.BEATS, 50, "two"));
        GuideTrack track = GuideTrack.of(legs, GuideOptions.DEFAULT);
        long[] bytes = {0};
        WavWriter.write(track, GuideOptions.DEFAULT_PEAK, new OutputStream() {
            @Override
            public void write(int b) {
                bytes[0]++;
            }

            @Override
            public void write(byte[] b, int off, int len) {
                bytes[0] += len;
            }
        }, done -> { });
        System.out.println(track.seconds().round() + " " + bytes[0] + " " + WavWriter.bytes(track));
    }
}
