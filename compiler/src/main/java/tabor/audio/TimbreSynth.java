package tabor.audio;

import tabor.timbre.Timbre;
import tabor.timbre.TimbreLayer;

/**
 * Makes the samples of a timbre from its layers. {@code sounds.js} of the practice page does the
 * same, step for step.
 */
final class TimbreSynth {
  /** A timbre that rings longer than this has one take, a shorter one two. */
  private static final double LONG = 0.7;

  private static final double ROOT_HALF = StrictMath.sqrt(0.5);

  private final float[] out;
  private final double rate;
  private final NoiseSource random;

  private TimbreSynth(float[] out, double rate, NoiseSource random) {
    this.out = out;
    this.rate = rate;
    this.random = random;
  }

  /**
   * The samples of a timbre.
   *
   * @param body what every stroke has
   * @param edge what is added in proportion to the velocity; empty for none
   */
  record Samples(float[] body, float[] edge) {}

  /** How many takes of a timbre are made: the same sound once more, with other noise. */
  static int takes(Timbre timbre) {
    return timbre.seconds() > LONG ? 1 : 2;
  }

  /**
   * Computes a timbre.
   *
   * @param rate samples a second
   * @param take from 0
   * @return its samples; body and edge together reach the peak of the timbre
   */
  static Samples compute(Timbre timbre, double rate, int take) {
    float[] body = part(timbre, rate, take, false);
    boolean edged = timbre.layers().stream().anyMatch(TimbreLayer::edge);
    float[] edge = edged ? part(timbre, rate, take, true) : new float[0];
    double top = 0;
    for (int i = 0; i < body.length; i++) {
      top = Math.max(top, Math.abs((double) body[i] + (edged ? edge[i] : 0)));
    }
    double scale = timbre.peak() / top;
    scale(body, scale);
    scale(edge, scale);
    return new Samples(body, edge);
  }

  private static void scale(float[] samples, double by) {
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (float) (samples[i] * by);
    }
  }

  private static float[] part(Timbre timbre, double rate, int take, boolean edge) {
    float[] out = new float[(int) Math.ceil(timbre.seconds() * rate)];
    NoiseSource random = new NoiseSource(timbre.name(), 2 * take + (edge ? 1 : 0));
    TimbreSynth synth = new TimbreSynth(out, rate, random);
    for (TimbreLayer layer : timbre.layers()) {
      if (layer.edge() == edge) {
        synth.add(layer);
      }
    }
    synth.shape();
    return out;
  }

  private void add(TimbreLayer layer) {
    double a = layer.figure(0, 0);
    double b = layer.figure(1, 0);
    double c = layer.figure(2, 0);
    double d = layer.figure(3, 0);
    double e = layer.figure(4, 0);
    switch (layer.kind()) {
      case MODE -> mode(a, b, c, 0);
      case SKIN -> skin(a, b, c, d, e, layer.figure(5, 0));
      case NOISE -> noise(a, b, c, d, layer.figure(4, 0.0002), layer.figure(5, 0));
      case PLATE -> plate(a, b, (int) c, d, e, layer.figure(5, 0));
    }
  }

  /** Adds a decaying sine by its recurrence; {@code phase} in radians. */
  private void mode(double frequency, double gain, double tau, double phase) {
    if (frequency >= rate * 0.48) {
      return;
    }
    double turn = 2 * Math.PI * frequency / rate;
    double damp = StrictMath.exp(-1 / (tau * rate));
    int to = (int) Math.min(out.length, Math.ceil(tau * rate * 9));
    double near = 2 * damp * StrictMath.cos(turn);
    double far = damp * damp;
    double before = gain / damp * StrictMath.sin(phase - turn);
    double now = gain * StrictMath.sin(phase);
    for (int i = 0; i < to; i++) {
      out[i] = (float) (out[i] + now);
      double next = near * now - far * before;
      before = now;
      now = next;
    }
  }

  /** Adds a sine that glides down from the pitch of the stroke; {@code drive} bends its tops. */
  private void skin(double low, double high, double glide, double gain, double tau, double drive) {
    int to = (int) Math.min(out.length, Math.ceil(tau * rate * 9));
    double glideStep = StrictMath.exp(-1 / (glide * rate));
    double fallStep = StrictMath.exp(-1 / (tau * rate));
    double top = StrictMath.tanh(drive);
    double bend = 2 * Math.PI * (high - low) / rate;
    double fall = 1;
    double phase = 0;
    for (int i = 0; i < to; i++) {
      phase += 2 * Math.PI * low / rate + bend;
      double wave = StrictMath.sin(phase) * fall;
      double bent = drive > 0 ? StrictMath.tanh(wave * drive) / top : wave;
      out[i] = (float) (out[i] + gain * bent);
      bend *= glideStep;
      fall *= fallStep;
    }
  }

  private void noise(double low, double high, double gain, double tau, double rise, double start) {
    Filter[] sides = {
      new Filter(rate, low, true), new Filter(rate, low, true), new Filter(rate, high, false)
    };
    int from = (int) Math.round(start * rate);
    int to = (int) Math.min(out.length, from + Math.ceil(tau * rate * 9));
    double fallStep = StrictMath.exp(-1 / (tau * rate));
    double riseStep = StrictMath.exp(-1 / (rise * rate));
    double fall = 1;
    double missing = 1;
    for (int i = from; i < to; i++) {
      double sample = random.next() * 2 - 1;
      for (Filter side : sides) {
        sample = side.pass(sample);
      }
      out[i] = (float) (out[i] + gain * sample * (fall * (1 - missing)));
      fall *= fallStep;
      missing *= riseStep;
    }
  }

  /** Adds many modes without harmony; the lowest are weak, the highest die first. */
  private void plate(double low, double high, int count, double gain, double tau, double slope) {
    double share = gain / Math.sqrt(count);
    for (int k = 0; k < count; k++) {
      double frequency = low * StrictMath.pow(high / low, (k + random.next()) / count);
      double fall = tau * StrictMath.pow(low / frequency, slope) * (0.6 + 0.8 * random.next());
      double body = Math.min(1, StrictMath.pow(frequency / (4 * low), 0.8));
      double loud = share * body * (0.4 + 1.2 * random.next());
      mode(frequency, loud, fall, 2 * Math.PI * random.next());
    }
  }

  /** Starts and ends it in silence. */
  private void shape() {
    double ramp = Math.round(0.00025 * rate);
    double tail = Math.round(out.length * 0.3);
    for (int i = 0; i < out.length; i++) {
      int left = out.length - 1 - i;
      double end = left < tail ? 0.5 - 0.5 * StrictMath.cos(Math.PI * left / tail) : 1;
      out[i] = (float) (out[i] * Math.min(1, i / ramp) * end);
    }
  }

  /** A second-order high-pass or low-pass filter without resonance. */
  private static final class Filter {
    private final double edge;
    private final double middle;
    private final double back1;
    private final double back2;
    private double x1;
    private double x2;
    private double y1;
    private double y2;

    Filter(double rate, double cutoff, boolean high) {
      double turn = 2 * Math.PI * Math.min(cutoff, rate * 0.45) / rate;
      double cos = StrictMath.cos(turn);
      double alpha = StrictMath.sin(turn) * ROOT_HALF;
      double all = 1 + alpha;
      edge = (high ? (1 + cos) / 2 : (1 - cos) / 2) / all;
      middle = (high ? -(1 + cos) : 1 - cos) / all;
      back1 = 2 * cos / all;
      back2 = (1 - alpha) / all;
    }

    double pass(double x) {
      double y = edge * (x + x2) + middle * x1 + back1 * y1 - back2 * y2;
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      return y;
    }
  }
}
