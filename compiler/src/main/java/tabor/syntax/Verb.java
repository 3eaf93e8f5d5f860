package tabor.syntax;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tabor.groove.Level;
import tabor.groove.Ornament;

/** What a {@code VERB TARGET AT} line does to strokes that are there. */
public enum Verb {
  /** Leaves them out. */
  DROP,
  /** Makes them accents. */
  ACCENT(Level.ACCENT),
  /** Makes them ghost strokes. */
  GHOST(Level.GHOST),
  /** Makes them plain. */
  PLAIN(Level.PLAIN),
  /** Makes each two equal strokes in its slot. */
  DOUBLE(2),
  /** Makes each three equal strokes in its slot. */
  TRIPLE(3),
  FLAM(Ornament.FLAM),
  DRAG(Ornament.DRAG),
  RUFF(Ornament.RUFF),
  BUZZ(Ornament.BUZZ),
  DIDDLE(Ornament.DIDDLE),
  ROLL(Ornament.ROLL),
  CHOKE(Ornament.CHOKE),
  /** Moves them to the open zone of their piece. */
  OPEN,
  RIMSHOT(Ornament.RIMSHOT);

  private final @Nullable Level level;
  private final @Nullable Ornament ornament;
  private final int strokes;

  Verb() {
    this(null, null, 1);
  }

  Verb(Level level) {
    this(level, null, 1);
  }

  Verb(Ornament ornament) {
    this(null, ornament, 1);
  }

  Verb(int strokes) {
    this(null, null, strokes);
  }

  Verb(@Nullable Level level, @Nullable Ornament ornament, int strokes) {
    this.level = level;
    this.ornament = ornament;
    this.strokes = strokes;
  }

  /** The level that it sets; null if it sets none. */
  public @Nullable Level level() {
    return level;
  }

  /** The ornament that it adds; null if it adds none. */
  public @Nullable Ornament ornament() {
    return ornament;
  }

  /** How many strokes it makes of each: 1, 2 or 3. */
  public int strokes() {
    return strokes;
  }

  /** As written: {@code accent}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The verb that a word names. Throws {@link IllegalArgumentException} if there is none. */
  public static Verb of(String word) {
    return valueOf(word.toUpperCase(Locale.ROOT));
  }
}
