package tabor.notation;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.lists.Lists;

/**
 * Which voice of the staff the strokes of a section are written in: the hands above, the feet below
 * (Weinberg 1994); a line over the whole body as one voice, stems up.
 *
 * <p>A bar has its line as one voice if no other part plays there with a hand, or with a foot that
 * the line uses; so a foot that goes on beneath the line stays below. A section whose line is for
 * the feet alone is written below.
 */
final class Voicing {
  private final Set<Integer> rows;

  private Voicing(Set<Integer> rows) {
    this.rows = rows;
  }

  /** The voices of a section. */
  static Voicing of(Groove groove) {
    if (!Lists.any(groove.strokes(), s -> s.inLine() && s.limb().isHand())) {
      return new Voicing(Set.of());
    }
    Map<Integer, Set<Limb>> lines = new HashMap<>();
    Map<Integer, Set<Limb>> others = new HashMap<>();
    for (Stroke stroke : groove.strokes()) {
      (stroke.inLine() ? lines : others)
          .computeIfAbsent(stroke.bar(), none -> EnumSet.noneOf(Limb.class))
          .add(stroke.limb());
    }
    Set<Integer> rows = new HashSet<>();
    lines.forEach(
        (bar, limbs) -> {
          Set<Limb> other = others.getOrDefault(bar, Set.of());
          if (!Lists.any(other, limb -> limb.isHand() || limbs.contains(limb))) {
            rows.add(bar);
          }
        });
    return new Voicing(rows);
  }

  /** True if the line is one voice in this bar. */
  boolean isRow(int bar) {
    return rows.contains(bar);
  }

  /** True if a stroke is part of a line that is one voice. */
  boolean isRow(Stroke stroke) {
    return stroke.inLine() && isRow(stroke.bar());
  }

  /** The voice of a stroke. */
  Voice of(Stroke stroke) {
    return isRow(stroke) ? Voice.HANDS : Voice.of(stroke.limb());
  }
}
