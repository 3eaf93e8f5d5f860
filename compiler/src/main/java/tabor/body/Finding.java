package tabor.body;

import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Time;

/**
 * Something the body cannot do, as found: facts, and the words for them.
 *
 * @param code what kind
 * @param at the stroke whose count names the place
 * @param strokes all strokes that have part in it, {@code at} among them
 * @param words the message, asked for where it is told: most findings are only counted
 * @param help what would put it right; null where there is nothing to say
 * @param limb for what is told once a limb and line, the worst of it; null for what is told once
 *     for each set of places in the source
 * @param weight how bad it is beside others of the same limb and line
 */
record Finding(
    Code code,
    Stroke at,
    List<Stroke> strokes,
    Supplier<String> words,
    @Nullable String help,
    @Nullable Limb limb,
    Time weight) {

  /** Copies the list. */
  Finding {
    strokes = List.copyOf(strokes);
  }

  /** A sentence, the count named, the bar not. */
  String message() {
    return words.get();
  }

  /** The same, told once for each line of that limb's. */
  Finding once(Limb each) {
    return new Finding(code, at, strokes, words, help, each, weight);
  }

  /** A clash: told once for each set of places in the source. */
  static Finding clash(Code code, Stroke at, List<Stroke> strokes, String message, String help) {
    return new Finding(code, at, strokes, () -> message, help, null, Time.ZERO);
  }
}
