package tabor.audio;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tabor.timbre.Timbre;
import tabor.timbre.Timbres;

/**
 * Mixes strokes into two channels, as the page's mixing desk does: amplitude by the square of the
 * velocity, the edge of a sound in proportion to it, pitch and level of each stroke varied by one
 * per cent, groups whose sounds end one another, a soft ceiling in place of clipping.
 */
final class StereoMixer {
  /** Frames a second. */
  static final int RATE = 44100;

  private static final double MASTER = 3.8;
  private static final double SPREAD = 0.01;
  private static final double WIDTH = 0.7;

  private final Map<String, TimbreSynth.Samples> shelf;
  private final Map<String, Variation> variations = new HashMap<>();
  private final Map<String, Voice> ringing = new HashMap<>();
  private final List<Voice> voices = new ArrayList<>();
  private long frame;

  StereoMixer() {
    this(new HashMap<>());
  }

  private StereoMixer(Map<String, TimbreSynth.Samples> shelf) {
    this.shelf = shelf;
  }

  /** One that has mixed nothing yet, with the samples of this one. */
  StereoMixer again() {
    return new StereoMixer(shelf);
  }

  /** How the strokes of one sound differ from one another, counted for that sound alone. */
  private static final class Variation {
    private final NoiseSource random;
    private int count;

    Variation(String timbre) {
      random = new NoiseSource(timbre, 1000);
    }

    double next() {
      return 1 + SPREAD * (2 * random.next() - 1);
    }
  }

  /** Takes a stroke; it must not lie before what has been mixed, and strokes come in order. */
  void strike(Strike strike) {
    Timbre timbre = Timbres.of(strike.timbre());
    Variation variation = variations.computeIfAbsent(strike.timbre(), Variation::new);
    int take = variation.count++ % TimbreSynth.takes(timbre);
    TimbreSynth.Samples samples =
        shelf.computeIfAbsent(
            strike.timbre() + "/" + take, key -> TimbreSynth.compute(timbre, RATE, take));
    Voice voice = new Voice(strike, samples, variation.next(), variation.next(), timbre.place());
    voices.add(voice);
    if (strike.damp() > 0) {
      voice.end(strike.seconds() + strike.damp(), 0.02);
    }
    if (timbre.group() != null) {
      Voice before = ringing.put(timbre.group(), voice);
      if (before != null && before.start < strike.seconds()) {
        // A stroke on open cymbals lets them ring on a little; a closing one does not.
        before.end(strike.seconds(), timbre.rings() ? 0.06 : 0.009);
      }
    }
  }

  /** The time up to which has been mixed, in seconds. */
  double seconds() {
    return (double) frame / RATE;
  }

  /** True if nothing that was struck sounds any longer. */
  boolean isSilent() {
    return voices.isEmpty();
  }

  /** Mixes the next frames into two channels of the same length. */
  void mix(float[] left, float[] right) {
    Arrays.fill(left, 0);
    Arrays.fill(right, 0);
    double[] seconds = new double[left.length];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = (double) (frame + i) / RATE;
    }
    for (Voice voice : voices) {
      voice.add(frame, seconds, left, right);
    }
    skip(left.length);
    for (int i = 0; i < left.length; i++) {
      left[i] = (float) ceiling(MASTER * left[i]);
      right[i] = (float) ceiling(MASTER * right[i]);
    }
  }

  /** Leaves out so many frames: what happens in them happens, unheard. */
  void skip(int frames) {
    frame += frames;
    voices.removeIf(voice -> voice.isOver(frame));
  }

  /** Straight for small values, bent towards 1 and never beyond it. */
  static double ceiling(double x) {
    double square = x * x;
    return x / Math.sqrt(Math.sqrt(1 + square * square));
  }

  /** A stroke that sounds. */
  private static final class Voice {
    private record End(double at, double factor) {}

    private final TimbreSynth.Samples samples;
    private final double start;
    private final double step;
    private final double bodyLevel;
    private final double edgeLevel;
    private final double toLeft;
    private final double toRight;
    private final List<End> ends = new ArrayList<>();
    private double stop = Double.POSITIVE_INFINITY;
    private double fading = 1;

    Voice(Strike strike, TimbreSynth.Samples samples, double step, double level, double place) {
      this.samples = samples;
      this.start = strike.seconds();
      this.step = step;
      double hardness = strike.velocity() / 127.0;
      this.bodyLevel = strike.heard() ? hardness * hardness * level : 0;
      this.edgeLevel = bodyLevel * hardness;
      double turn = (place * WIDTH + 1) / 2 * Math.PI / 2;
      this.toLeft = StrictMath.cos(turn);
      this.toRight = StrictMath.sin(turn);
    }

    void end(double at, double fall) {
      ends.add(new End(at, StrictMath.exp(-1 / (fall * RATE))));
      ends.sort(Comparator.comparingDouble(End::at));
      stop = at + fall * 9;
    }

    boolean isOver(long frame) {
      double seconds = (double) frame / RATE;
      return seconds >= stop || (seconds - start) * RATE * step >= samples.body().length;
    }

    void add(long from, double[] seconds, float[] left, float[] right) {
      // All that the loop reads stands in variables: the quick compiler takes no field out of a
      // loop.
      float[] body = samples.body();
      float[] edge = samples.edge();
      double start = this.start;
      double step = this.step;
      double bodyLevel = this.bodyLevel;
      double edgeLevel = this.edgeLevel;
      double toLeft = this.toLeft;
      double toRight = this.toRight;
      boolean edged = edge.length > 0;
      boolean fades = !ends.isEmpty();
      int first = (int) Math.max(0, Math.ceil(start * RATE) - from);
      for (int i = first; i < left.length; i++) {
        double now = seconds[i];
        double position = (now - start) * RATE * step;
        int index = (int) position;
        if (index + 1 >= body.length) {
          return;
        }
        double part = position - index;
        double value = bodyLevel * between(body, index, part);
        if (edged) {
          value += edgeLevel * between(edge, index, part);
        }
        if (fades) {
          if (now >= stop) {
            return;
          }
          fade(now);
          value *= fading;
        }
        left[i] = (float) (left[i] + value * toLeft);
        right[i] = (float) (right[i] + value * toRight);
      }
    }

    private static double between(float[] samples, int index, double part) {
      return samples[index] + part * (samples[index + 1] - samples[index]);
    }

    private void fade(double seconds) {
      for (int i = ends.size() - 1; i >= 0; i--) {
        if (ends.get(i).at() < seconds) {
          fading *= ends.get(i).factor();
          return;
        }
      }
    }
  }
}
