package tabor.resolve;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.source.Spot;
import tabor.syntax.Line;

/**
 * One choice of a line that varies, and of the lines that change along with it.
 *
 * @param lines what is left of each of these lines, by the line as written: the very line, not one
 *     like it
 * @param caption what the variation is called; null for its name
 * @param spot where the choice is written
 */
record SheetChoice(Map<Line, List<Line>> lines, @Nullable String caption, Spot spot) {
  /** Copies the map. */
  SheetChoice {
    lines = Collections.unmodifiableMap(new IdentityHashMap<>(lines));
  }
}
