package tabor.notation;

import java.util.function.Predicate;
import tabor.groove.Stroke;

/** Which voice of the staff a stroke is written in. */
@FunctionalInterface
public interface Voicing {
  /** Hands above, feet below (Weinberg 1994). */
  Voicing BY_LIMB = stroke -> Voice.of(stroke.limb());

  /** The voice of a stroke. */
  Voice of(Stroke stroke);

  /**
   * One row over the whole body: what it holds is one voice, stems up, beamed together; the rest
   * goes by limb.
   *
   * @param row true for the strokes of the row
   */
  static Voicing row(Predicate<Stroke> row) {
    return stroke -> row.test(stroke) ? Voice.HANDS : BY_LIMB.of(stroke);
  }
}
