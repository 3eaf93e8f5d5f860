package tabor.testing;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;

/**
 * Finds where sounds begin in a recording, from the samples alone: a place where the energy of the
 * second difference, taken over a millisecond, jumps far above that of the milliseconds before.
 */
public final class Onsets {
  private static final int WINDOW = 44;
  private static final int BEFORE = 132;

  private Onsets() {}

  /** Samples from base64 of little-endian floats. */
  public static float[] samples(String base64) {
    ByteBuffer bytes =
        ByteBuffer.wrap(Base64.getDecoder().decode(base64)).order(ByteOrder.LITTLE_ENDIAN);
    float[] samples = new float[bytes.remaining() / 4];
    bytes.asFloatBuffer().get(samples);
    return samples;
  }

  /**
   * The onsets in seconds.
   *
   * @param dead seconds after an onset in which there is no other
   */
  public static List<Double> of(float[] samples, double rate, double dead) {
    double[] energy = new double[samples.length + 1];
    for (int i = 2; i < samples.length; i++) {
      double bend = samples[i] - 2.0 * samples[i - 1] + samples[i - 2];
      energy[i + 1] = energy[i] + bend * bend;
    }
    List<Double> onsets = new ArrayList<>();
    int next = BEFORE + 2;
    for (int i = next; i + WINDOW < samples.length; i++) {
      double now = (energy[i + WINDOW] - energy[i]) / WINDOW;
      double before = (energy[i] - energy[i - BEFORE]) / BEFORE;
      if (i >= next && now > 1e-8 && now > 4 * before) {
        // The window reaches ahead: the sound begins with its first sample above what was before.
        int first = i;
        while (first < i + WINDOW
            && (energy[first + 1] - energy[first]) < 4 * before + 0.02 * now) {
          first++;
        }
        onsets.add(first / rate);
        next = i + (int) (dead * rate);
      }
    }
    return onsets;
  }
}
