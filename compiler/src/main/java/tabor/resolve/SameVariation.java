package tabor.resolve;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Time;

/**
 * What two variations have in common if they are one: length, places, surfaces, levels, ornaments
 * and limbs. How a beat is divided does not count, nor whether a limb is written or dealt: a kick
 * that is added is the one that a part writes for the right foot.
 */
record SameVariation(int bars, Set<SameVariation.Struck> strokes) {
  /** A stroke; no limb where none is free. */
  record Struck(
      int bar, Time at, String surface, Level level, Ornaments ornaments, @Nullable Limb limb) {}

  /** What is struck in a section as it is written. */
  static SameVariation of(Groove groove) {
    List<Struck> struck = new ArrayList<>(groove.written().size());
    for (Stroke stroke : groove.written()) {
      struck.add(
          new Struck(
              stroke.bar(),
              stroke.at(),
              stroke.surface().name(),
              stroke.level(),
              stroke.ornaments(),
              stroke.hasLimb() ? stroke.limb() : null));
    }
    return new SameVariation(groove.bars(), new HashSet<>(struck));
  }
}
