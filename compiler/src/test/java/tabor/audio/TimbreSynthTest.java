package tabor.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tabor.timbre.Timbre;
import tabor.timbre.TimbreLayer;
import tabor.timbre.Timbres;

/** What the sounds of the kit are made of. */
class TimbreSynthTest {
  private static final double RATE = 44100;
  private static final Map<Timbre, TimbreSynth.Samples> MADE = new HashMap<>();

  /** What a small loudspeaker leaves: fourth order, nothing to speak of under 450 Hz. */
  private static double[] onAPhone(double[] samples) {
    double[] out = samples;
    for (int pass = 0; pass < 2; pass++) {
      out = highPass(out, 450);
    }
    return out;
  }

  /** A second-order Butterworth high-pass by the bilinear transform, written out for this test. */
  private static double[] highPass(double[] x, double cutoff) {
    double k = Math.tan(Math.PI * cutoff / RATE);
    double norm = 1 / (1 + Math.sqrt(2) * k + k * k);
    double b1 = -2 * norm;
    double a1 = 2 * (k * k - 1) * norm;
    double a2 = (1 - Math.sqrt(2) * k + k * k) * norm;
    double[] y = new double[x.length];
    for (int i = 2; i < x.length; i++) {
      y[i] = norm * (x[i] + x[i - 2]) + b1 * x[i - 1] - a1 * y[i - 1] - a2 * y[i - 2];
    }
    return y;
  }

  private static double[] stroke(String name, int velocity) {
    Timbre timbre = Timbres.of(name);
    TimbreSynth.Samples samples =
        MADE.computeIfAbsent(timbre, t -> TimbreSynth.compute(t, RATE, 0));
    double hardness = velocity / 127.0;
    double[] out = new double[samples.body().length];
    for (int i = 0; i < out.length; i++) {
      double edge = samples.edge().length > 0 ? samples.edge()[i] : 0;
      out[i] = hardness * hardness * (samples.body()[i] + hardness * edge);
    }
    return out;
  }

  private static double decibels(double[] samples, double from, double to) {
    double sum = 1e-15;
    for (int i = (int) (from * RATE); i < (int) (to * RATE); i++) {
      sum += samples[i] * samples[i];
    }
    return 10 * Math.log10(sum);
  }

  @Test
  void aPhoneLetsTheDrumsBeHeardBesideTheHiHat() {
    double hat = decibels(onAPhone(stroke("hihat", 78)), 0, 0.1);
    for (String drum : List.of("kick", "snare", "tom1", "tom2", "floor")) {
      double heard = decibels(onAPhone(stroke(drum, 78)), 0, 0.1);
      assertThat(heard).as(drum).isGreaterThan(hat - 6);
    }
  }

  @Test
  void aTomHasFourModesOrMoreAndAStick() {
    for (String tom : List.of("tom1", "tom2", "floor")) {
      List<TimbreLayer> layers = Timbres.of(tom).layers();
      assertThat(layers.stream().filter(l -> l.kind() == TimbreLayer.Kind.MODE))
          .as(tom)
          .hasSizeGreaterThanOrEqualTo(4);
      assertThat(layers).anyMatch(l -> l.edge() && l.kind() == TimbreLayer.Kind.NOISE);
    }
  }

  /** The zeros of Bessel functions: 3.8317, 5.1356, 5.5201 and 6.3802 over 2.4048. */
  @Test
  void theModesOfATomAreThoseOfACircularSkin() {
    for (String tom : List.of("tom1", "tom2", "floor")) {
      List<TimbreLayer> layers = Timbres.of(tom).layers();
      double ground = layers.get(0).figure(0, 0);
      double[] zeros = {3.8317, 5.1356, 5.5201, 6.3802};
      for (int i = 0; i < zeros.length; i++) {
        assertThat(layers.get(1 + i).figure(0, 0) / ground)
            .as(tom)
            .isCloseTo(zeros[i] / 2.4048, within(0.01));
      }
    }
  }

  @Test
  void aGhostStrokeHasItsWires() {
    double[] ghost = stroke("snare", 30);
    double[] high = highPass(highPass(ghost, 2500), 2500);
    // The wires ring on when the skin's high modes are gone.
    assertThat(decibels(high, 0.03, 0.08)).isGreaterThan(decibels(ghost, 0.03, 0.08) - 12);
  }

  @Test
  void everyStepOfVelocityIsLouderAndBrighterByALittle() {
    for (String name : List.of("kick", "snare", "tom1", "hihat", "ride", "crash")) {
      double last = decibels(stroke(name, 20), 0, 0.1);
      double lastBright = bright(name, 20);
      for (int velocity = 22; velocity <= 127; velocity += 2) {
        double now = decibels(stroke(name, velocity), 0, 0.1);
        double nowBright = bright(name, velocity);
        assertThat(now - last).as(name + " " + velocity).isBetween(0.1, 2.0);
        assertThat(nowBright - lastBright).as(name + " " + velocity).isBetween(-0.01, 0.25);
        last = now;
        lastBright = nowBright;
      }
    }
  }

  /** How much of a stroke lies above 3 kHz, in decibels of the whole. */
  private static double bright(String name, int velocity) {
    double[] stroke = stroke(name, velocity);
    return decibels(highPass(stroke, 3000), 0, 0.1) - decibels(stroke, 0, 0.1);
  }

  @Test
  void theRandomNumbersHaveTheFullPeriodAndNoRowsInThem() {
    // Hull and Dobell: the increment is odd, the multiplier one more than a multiple of four.
    assertThat(3066278165L % 4).isEqualTo(1);
    assertThat(297410973 % 2).isEqualTo(1);
    NoiseSource source = new NoiseSource("snare", 0);
    int[][] pairs = new int[16][16];
    Set<Double> seen = new HashSet<>();
    double before = source.next();
    for (int i = 0; i < 64000; i++) {
      double now = source.next();
      assertThat(now).isBetween(0.0, 1 - 1e-9);
      pairs[(int) (before * 16)][(int) (now * 16)]++;
      seen.add(now);
      before = now;
    }
    double square = 0;
    for (int[] row : pairs) {
      for (int count : row) {
        square += (count - 250.0) * (count - 250.0) / 250;
      }
    }
    // Chi-square with 255 degrees of freedom lies in this range 999 times in 1000.
    assertThat(square).isBetween(186.0, 330.5);
    assertThat(seen).hasSizeGreaterThan(63000);
  }
}
