package tabor.groove;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tabor.rhythm.Time;

/** What is done to a stroke beside striking it, in the order of every list. */
@SuppressWarnings("ImmutableEnumChecker") // a way is a record of numbers and a time
public enum Ornament {
  FLAM("'", "", Way.grace(1)),
  DRAG("''", "", Way.grace(2)),
  RUFF("'''", "", Way.grace(3)),
  DIDDLE("", "/", Way.inSlot(2, false)),
  OPEN_ROLL("", "//", Way.inSlot(4, true)),
  ROLL("", "///", Way.inValue(Time.of(1, 32))),
  BUZZ("", "~", Way.PRESSED),
  CHOKE("", "!", Way.ONCE),
  RIMSHOT("", "^", Way.ONCE);

  /**
   * How an ornament is played.
   *
   * @param graceNotes how many grace notes come before the stroke, 0 to 3
   * @param inSlot how many measured strokes fill the slot of the stroke, and as many each further
   *     slot that it is held for; 0 if that is not how it is played
   * @param value the note value that it goes on in as long as the slot and its holds last; null if
   *     that is not how it is played
   * @param bothLimbs true if both limbs of the pair play it, two strokes each in turn
   * @param pressed true for bounces that nobody counts
   */
  record Way(int graceNotes, int inSlot, @Nullable Time value, boolean bothLimbs, boolean pressed) {
    static final Way ONCE = new Way(0, 0, null, false, false);
    static final Way PRESSED = new Way(0, 0, null, false, true);

    static Way grace(int notes) {
      return new Way(notes, 0, null, false, false);
    }

    static Way inSlot(int strokes, boolean bothLimbs) {
      return new Way(0, strokes, null, bothLimbs, false);
    }

    /** A roll of both limbs in a note value. */
    static Way inValue(Time value) {
      return new Way(0, 0, value, true, false);
    }

    boolean isMeasured() {
      return inSlot > 0 || value != null;
    }
  }

  private final String before;
  private final String after;
  private final Way way;

  Ornament(String before, String after, Way way) {
    this.before = before;
    this.after = after;
    this.way = way;
  }

  /** As lists name it: {@code open-roll}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** As a sentence names it: {@code open roll}. */
  public String words() {
    return word().replace('-', ' ');
  }

  /** The signs that the notation writes before the letter; empty if there are none. */
  public String before() {
    return before;
  }

  /** The signs that the notation writes after the letter; empty if there are none. */
  public String after() {
    return after;
  }

  Way way() {
    return way;
  }

  /** How many grace notes come before the main stroke: 1, 2, 3, or 0. */
  public int graceNotes() {
    return way.graceNotes;
  }

  /** True for the ornaments that replace each other with {@code other}. */
  public boolean excludes(Ornament other) {
    return (graceNotes() > 0 && other.graceNotes() > 0) || (isRoll() && other.isRoll());
  }

  /** True for what fills the slot and goes on while the stroke is held. */
  public boolean isRoll() {
    return way.pressed || isMeasured();
  }

  /** True for a roll whose strokes are counted: a diddle or an open roll. */
  public boolean isMeasured() {
    return way.isMeasured();
  }

  /** True for a roll that keeps both limbs of the pair busy. */
  public boolean takesBothLimbs() {
    return way.bothLimbs;
  }
}
