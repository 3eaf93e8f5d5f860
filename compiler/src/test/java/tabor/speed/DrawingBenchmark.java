package tabor.speed;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.emit.engrave.Engraver;
import tabor.emit.engrave.Engraving;
import tabor.emit.engrave.Look;
import tabor.emit.font.OpenFont;
import tabor.emit.svg.SvgWriter;
import tabor.groove.Groove;
import tabor.notation.Score;
import tabor.notation.Speller;
import tabor.resolve.Options;

/** What drawing costs: it must grow with the number of sections and no faster. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 3, time = 3)
@Fork(value = 1, jvmArgsAppend = "-Xmx2g")
public class DrawingBenchmark {
  /** How many sections of four bars. */
  @Param({"10", "100", "1000"})
  public int sections;

  private final List<Score> scores = new ArrayList<>();

  /** Spells the sections: drawing alone is measured. */
  @Setup
  public void spell() {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < sections; i++) {
      text.append("groove g").append(i).append(" \"Section\"\n");
      text.append("  right : hh hh hhhh hh | % | hh h.hh hhh hh | Cc dd dddd ff\n");
      text.append("  left : . S (ss)s. S | . S . S. | . 's . S^ | . s// - s/s~\n");
      text.append("  feet : r l r.rl l | r l rr l | rlr l r l | r l r l\n");
    }
    List<Groove> grooves =
        new Compiler(Loader.NONE)
            .compile(Path.of("speed.tabor"), text.toString(), Options.NONE)
            .lesson()
            .grooves();
    for (Groove groove : grooves) {
      scores.add(Speller.spell(groove));
    }
    if (scores.size() != sections) {
      throw new IllegalStateException("only " + scores.size() + " sections are valid");
    }
  }

  /** Layout alone. */
  @Benchmark
  public int engrave() {
    int systems = 0;
    for (Score score : scores) {
      systems += Engraver.engrave(score, Look.FULL, OpenFont.get()).systems().size();
    }
    return systems;
  }

  /** Layout and SVG text. */
  @Benchmark
  public long svg() {
    long length = 0;
    for (Score score : scores) {
      Engraving engraving = Engraver.engrave(score, Look.FULL, OpenFont.get());
      length += SvgWriter.file(engraving.whole(), "speed").length();
    }
    return length;
  }
}
