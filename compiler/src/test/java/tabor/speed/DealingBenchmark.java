package tabor.speed;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
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
import tabor.body.Dealer;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Levels;
import tabor.groove.Ornaments;
import tabor.groove.SectionWords;
import tabor.groove.Stroke;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Division;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Slot;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.source.Spot;

/** What dealing open strokes to limbs costs, by the length of the section. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 3, time = 2)
@Fork(value = 1, jvmArgsAppend = "-Xmx2g")
public class DealingBenchmark {
  private static final Groove.Setting SETTING =
      new Groove.Setting(
          Meters.of(Meter.COMMON),
          Kits.FIVE_PIECE,
          new Tempo(Time.of(1, 4), Time.of(90)),
          Feel.STRAIGHT,
          Levels.DEFAULT,
          true,
          true,
          true,
          SectionWords.USUAL);

  /** Bars of the section; longer ones than a file may have show how the time grows. */
  @Param({"1", "1000", "10000"})
  public int bars;

  private final List<Dealer.Open> groove = new ArrayList<>();
  private final List<Dealer.Open> roll = new ArrayList<>();

  /** Makes a groove of hi-hat, snare and kick, and a snare roll in sixteenths. */
  @Setup
  public void write() {
    for (int bar = 1; bar <= bars; bar++) {
      for (int beat = 0; beat < 4; beat++) {
        for (int sixteenth = 0; sixteenth < 4; sixteenth++) {
          Slot slot = new Slot(new Division(beat, 1, 4), sixteenth, List.of());
          roll.add(open(bar, slot, "snare"));
          if (sixteenth % 2 == 0) {
            groove.add(open(bar, slot, "hihat"));
          }
          if (sixteenth == 0) {
            groove.add(open(bar, slot, beat % 2 == 0 ? "kick" : "snare"));
          }
        }
      }
    }
  }

  private static Dealer.Open open(int bar, Slot slot, String name) {
    Surface surface = Kits.FIVE_PIECE.surfaces().get(name);
    boolean hands = !surface.isFoot();
    Stroke stroke =
        new Stroke(
            bar,
            slot.start(Meter.COMMON),
            slot.length(Meter.COMMON),
            hands ? Limb.RIGHT_HAND : Limb.RIGHT_FOOT,
            surface,
            Level.PLAIN,
            Ornaments.NONE,
            slot,
            new Spot(new Passage(""), new Span(0, 0)),
            false,
            false,
            false,
            null);
    return new Dealer.Open(stroke, hands, false, null);
  }

  /** Hi-hat, snare and kick: both hands meet twice a bar. */
  @Benchmark
  public List<@Nullable Limb> groove() {
    return Dealer.deal(SETTING, bars, Time.ZERO, List.of(), groove);
  }

  /** A roll: the hands never meet, so that the loop has no easy place to begin. */
  @Benchmark
  public List<@Nullable Limb> roll() {
    return Dealer.deal(SETTING, bars, Time.ZERO, List.of(), roll);
  }
}
