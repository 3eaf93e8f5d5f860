package tabor.syntax;

import tabor.kit.Limb;
import tabor.source.Span;

/**
 * A limb as written.
 *
 * @param limb who strikes
 * @param spelledOut true if {@code hand} or {@code foot} is written; a bare {@code right} is a hand
 *     everywhere but after {@code with}, where it is a foot if the surface is one for feet
 * @param span where
 */
public record LimbRef(Limb limb, boolean spelledOut, Span span) {
  /** Throws {@link IllegalArgumentException} for a foot that is not spelled out. */
  public LimbRef {
    if (!spelledOut && !limb.isHand()) {
      throw new IllegalArgumentException(limb + " without its word");
    }
  }

  /** {@code right}, {@code right hand}, {@code left foot} … as written, with single spaces. */
  public String words() {
    return spelledOut ? limb.words() : limb.isRight() ? "right" : "left";
  }
}
