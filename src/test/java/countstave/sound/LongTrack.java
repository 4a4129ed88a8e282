package countstave.sound;

import countstave.practice.Parts;
import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.score.Meter;
import countstave.time.Exact;
import countstave.voice.Speaker;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.util.List;

/** A process that renders more than an hour of spoken counts; prints how many seconds and bytes, and its milliseconds of work. */
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
        Speaker speaker = new Speaker(Speaker.Choice.DEFAULT, stretch.system());
        WavSound sound = new WavSound(GuideOptions.DEFAULT_PEAK, speaker);
        WavWriter.write(track, sound, new OutputStream() {
            @Override
            public void write(int b) {
                bytes[0]++;
            }

            @Override
            public void write(byte[] b, int off, int len) {
                bytes[0] += len;
            }
        }, done -> { });
        long working = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() / 1_000_000;
        System.out.println(track.seconds().round() + " " + bytes[0] + " " + WavWriter.bytes(track, sound) + " " + working);
    }
}
