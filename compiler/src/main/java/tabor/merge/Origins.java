package tabor.merge;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.syntax.Heading;

/**
 * What each step or sheet without {@code from} is made from: the groove or step above it, in each
 * of the three texts.
 */
final class Origins {
  private final List<Piece> base;
  private final List<Piece> ours;
  private final List<Piece> theirs;
  private final Map<Trio, Trio> inBase = new HashMap<>();
  private final Map<Trio, Trio> inOurs = new HashMap<>();
  private final Map<Trio, Trio> inTheirs = new HashMap<>();

  /**
   * What a step is to be made from.
   *
   * @param meant the section; null where it does not matter or cannot be told
   * @param conflict why it cannot be told; null where it can
   */
  record Origin(@Nullable Trio meant, @Nullable String conflict) {}

  Origins(List<Piece> base, List<Piece> ours, List<Piece> theirs, List<Trio> order) {
    this.base = base;
    this.ours = ours;
    this.theirs = theirs;
    Trio[] byBase = new Trio[base.size()];
    Trio[] byOurs = new Trio[ours.size()];
    Trio[] byTheirs = new Trio[theirs.size()];
    for (Trio trio : order) {
      put(byBase, trio.base(), trio);
      put(byOurs, trio.ours(), trio);
      put(byTheirs, trio.theirs(), trio);
    }
    above(base, byBase, inBase);
    above(ours, byOurs, inOurs);
    above(theirs, byTheirs, inTheirs);
  }

  /** True for a heading that leaves it to the section above. */
  static boolean isFromAbove(@Nullable Object heading) {
    return (heading instanceof Heading.Step step && step.from() == null)
        || (heading instanceof Heading.Sheet sheet && sheet.from() == null);
  }

  private static void put(Trio[] into, int index, Trio trio) {
    if (index >= 0) {
      into[index] = trio;
    }
  }

  private static void above(List<Piece> pieces, Trio[] trios, Map<Trio, Trio> into) {
    Trio above = null;
    for (int i = 0; i < trios.length; i++) {
      if (trios[i] == null) {
        continue;
      }
      if (above != null && isFromAbove(pieces.get(i).heading())) {
        into.put(trios[i], above);
      }
      above = pieces.get(i).isBase() ? trios[i] : above;
    }
  }

  /** What a step is to be made from, if neither side says. */
  Origin of(Trio trio) {
    Trio was = inBase.get(trio);
    Trio our = inOurs.get(trio);
    Trio their = inTheirs.get(trio);
    if (trio.ours() < 0) {
      return new Origin(their, null);
    }
    if (trio.theirs() < 0) {
      return new Origin(our, null);
    }
    if (our == null || their == null) {
      // One side says from: the heading is merged like any other line.
      return new Origin(null, null);
    }
    if (our.equals(their) || their.equals(was)) {
      return new Origin(our, null);
    }
    return our.equals(was)
        ? new Origin(their, null)
        : new Origin(null, words(trio) + " comes from another section on each side");
  }

  boolean isBase(Trio trio) {
    return piece(trio).isBase();
  }

  /** Its name in the merged text; null if it has none. */
  @Nullable String name(Trio trio) {
    String was = trio.base() < 0 ? null : base.get(trio.base()).name();
    String our = trio.ours() < 0 ? null : ours.get(trio.ours()).name();
    String their = trio.theirs() < 0 ? null : theirs.get(trio.theirs()).name();
    if (our == null) {
      return their;
    }
    return our.equals(was) && their != null ? their : our;
  }

  String words(Trio trio) {
    return piece(trio).words();
  }

  private Piece piece(Trio trio) {
    if (trio.ours() >= 0) {
      return ours.get(trio.ours());
    }
    return trio.theirs() >= 0 ? theirs.get(trio.theirs()) : base.get(trio.base());
  }
}
