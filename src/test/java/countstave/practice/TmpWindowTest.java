package countstave.practice;
import countstave.*; import countstave.musicxml.*; import countstave.time.*; import java.nio.file.*; import java.util.*;
import org.junit.jupiter.api.Test;
class TmpWindowTest {
  @Test void x() throws Exception {
    List<Path> files = new ArrayList<>(countstave.testing.Corpus.scores());
    for (String s : List.of("dense","groove","song","meters","polyrhythms")) files.add(Path.of("scores", s+".musicxml"));
    long whole=0, window=0; 
    for (Path f : files) {
      try {
        CountedScore c = CountedScore.of(ScoreFile.load(f), CountingOptions.defaults());
        for (var p : c.parts()) {
          if (p.bars().isEmpty() || !Stretch.of(p).hasAttacks()) continue;
          PracticePlan plan = PracticePlan.of(p, PracticeOptions.DEFAULT);
          Set<Object> speeds = new HashSet<>(); long w=0;
          for (Passage x : plan.passages()) for (var r : x.ladder()) { speeds.add(x.speed(r)); w += x.stretch().size()+4; }
          whole += (long) speeds.size()*p.bars().size(); window += w;
          if ((long) speeds.size()*p.bars().size() > 3*w) System.out.println("BAD "+f.getFileName()+" speeds "+speeds.size()+" bars "+p.bars().size()+" window "+w);
        }
      } catch (RuntimeException e) { System.out.println("FAILED "+f+" "+e); }
    }
    System.out.println("RESULT whole "+whole+" window "+window);
  }
}
