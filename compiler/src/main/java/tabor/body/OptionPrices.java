package tabor.body;

import org.jspecify.annotations.Nullable;
import tabor.body.Loop.Hit;

/**
 * What one option costs from each state: a part that hangs on the right limb's past, a part that
 * hangs on the left's, both worked out once for each past, and the little that hangs on both.
 */
final class OptionPrices {
  private final long[] right;
  private final long[] left;
  private final int[] nextRight;
  private final int[] nextLeft;
  private final @Nullable Pair pairRight;
  private final @Nullable Pair pairLeft;

  OptionPrices(
      long[] right,
      long[] left,
      int[] nextRight,
      int[] nextLeft,
      @Nullable Pair pairRight,
      @Nullable Pair pairLeft) {
    this.right = right;
    this.left = left;
    this.nextRight = nextRight;
    this.nextLeft = nextLeft;
    this.pairRight = pairRight;
    this.pairLeft = pairLeft;
  }

  /** The price from a state whose limbs have these pasts, by number. */
  long of(int r, int l) {
    long cost = right[r] + left[l];
    if (pairRight != null) {
      cost += pairRight.of(r, l);
    }
    return pairLeft == null ? cost : cost + pairLeft.of(l, r);
  }

  /** The state that the option leads to. */
  int next(int r, int l) {
    return Last.pair(nextRight[r], nextLeft[l]);
  }

  /** What a stroke costs by what its own limb and the other did last together. */
  static final class Pair {
    private final int[] ownAge;
    private final int[] otherAge;
    private final boolean[] ownLast;
    private final boolean[] otherLast;
    private final long[] repeat;
    private final boolean keepsTime;

    /**
     * A pair of pasts.
     *
     * @param hit the stroke
     * @param keepsTime true if another hand on its piece is a change of hand
     */
    Pair(Hit hit, boolean keepsTime, Pricing pricing, int k, Pasts own, Pasts other) {
      this.keepsTime = keepsTime;
      ownAge = ages(hit, pricing, own);
      otherAge = ages(hit, pricing, other);
      ownLast = struckLast(own);
      otherLast = struckLast(other);
      repeat = new long[own.size()];
      for (int i = 0; i < repeat.length; i++) {
        repeat[i] = hit.alternating() && ownLast[i] ? pricing.repeatOf(k, own.last(i)) : 0;
      }
    }

    /** How long ago each past struck the hit's piece; far away where it did not. */
    private static int[] ages(Hit hit, Pricing pricing, Pasts pasts) {
      int[] ages = new int[pasts.size()];
      for (int i = 0; i < ages.length; i++) {
        int last = pasts.last(i);
        ages[i] =
            Last.isRecent(last) && pricing.same(hit, last) ? Last.age(last) : Integer.MAX_VALUE;
      }
      return ages;
    }

    private static boolean[] struckLast(Pasts pasts) {
      boolean[] struck = new boolean[pasts.size()];
      for (int i = 0; i < struck.length; i++) {
        struck[i] = Pricing.struckLast(pasts.last(i));
      }
      return struck;
    }

    long of(int own, int other) {
      long cost = ownLast[own] && !otherLast[other] ? repeat[own] : 0;
      int there = otherAge[other];
      return keepsTime && there != Integer.MAX_VALUE && ownAge[own] > there
          ? cost + Costs.CHANGE_OF_HAND
          : cost;
    }
  }
}
