package tabor.notation;

import tabor.kit.Limb;

/** The two voices of the staff. */
public enum Voice {
  /** The upper voice, stems up. */
  HANDS,
  /** The lower voice, stems down. */
  FEET;

  /** 1 for the hands, 2 for the feet. */
  public int number() {
    return this == HANDS ? 1 : 2;
  }

  /** The voice that a limb is written in. */
  public static Voice of(Limb limb) {
    return limb.isHand() ? HANDS : FEET;
  }
}
