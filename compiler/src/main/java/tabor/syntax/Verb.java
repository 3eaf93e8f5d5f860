package tabor.syntax;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.kit.Kit;
import tabor.kit.Surface;

/** What a {@code VERB TARGET AT} line does to strokes that are there. */
public enum Verb {
  /** Leaves them out. */
  DROP(Kind.DROP),
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
  OPEN(Kind.OPEN),
  RIMSHOT(Ornament.RIMSHOT);

  /** What kind of change a verb makes: each is carried out in its own way. */
  public enum Kind {
    /** Leaves strokes out. */
    DROP,
    /** Sets a level. */
    LEVEL,
    /** Makes several strokes of one. */
    STROKES,
    /** Adds an ornament. */
    ORNAMENT,
    /** Moves strokes to the open zone of their piece. */
    OPEN
  }

  private final String word = name().toLowerCase(Locale.ROOT);
  private final Kind kind;
  private final @Nullable Level level;
  private final @Nullable Ornament ornament;
  private final int strokes;

  Verb(Kind kind) {
    this(kind, null, null, 1);
  }

  Verb(Level level) {
    this(Kind.LEVEL, level, null, 1);
  }

  Verb(Ornament ornament) {
    this(Kind.ORNAMENT, null, ornament, 1);
  }

  Verb(int strokes) {
    this(Kind.STROKES, null, null, strokes);
  }

  Verb(Kind kind, @Nullable Level level, @Nullable Ornament ornament, int strokes) {
    this.kind = kind;
    this.level = level;
    this.ornament = ornament;
    this.strokes = strokes;
  }

  /** What kind of change it makes. */
  public Kind kind() {
    return kind;
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

  /** True if strokes on a surface of a kit can be changed so. */
  public boolean takes(Surface surface, Kit kit) {
    return switch (this) {
      case CHOKE -> surface.canChoke();
      case RIMSHOT -> surface.canRimshot();
      case OPEN -> kit.opened(surface) != null;
      case DROP, ACCENT, GHOST, PLAIN, DOUBLE, TRIPLE, FLAM, DRAG, RUFF, BUZZ, DIDDLE, ROLL -> true;
    };
  }

  /**
   * What of a stroke it decides, for whoever puts two edited copies together: two verbs that decide
   * the same of one stroke cannot both be kept without asking.
   */
  public String decides() {
    return switch (kind) {
      case LEVEL -> "level";
      case ORNAMENT -> ornament != null && ornament.graceNotes() > 0 ? "grace" : word();
      case DROP, STROKES, OPEN -> word();
    };
  }

  /** As written: {@code accent}. */
  public String word() {
    return word;
  }

  /** The verb that a word names. Throws {@link IllegalArgumentException} if there is none. */
  public static Verb of(String word) {
    return valueOf(word.toUpperCase(Locale.ROOT));
  }
}
