package tabor.ide;

import java.util.Locale;
import java.util.Optional;
import tabor.ide.SyntaxToken.Role;
import tabor.syntax.SectionKind;

/** The sets of names: within one, no two may be equal. */
public enum NameKind {
  /** Grooves, steps, sheets and charts. */
  SECTION(Role.SECTION_NAME, Role.SECTION),
  PATTERN(Role.PATTERN_NAME, Role.PATTERN),
  KIT(Role.KIT_NAME, Role.KIT),
  PLAYER(Role.PLAYER_NAME, Role.PLAYER);

  private final Role given;
  private final Role used;

  NameKind(Role given, Role used) {
    this.given = given;
    this.used = used;
  }

  /** What a token is where such a name is given. */
  Role given() {
    return given;
  }

  /** {@code section}. */
  String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The set that a section's own name belongs to. */
  static NameKind of(SectionKind kind) {
    return switch (kind) {
      case PATTERN -> PATTERN;
      case KIT -> KIT;
      case PLAYER -> PLAYER;
      case HEADER, GROOVE, STEP, SHEET, CHART -> SECTION;
    };
  }

  /** The set that a token's name belongs to; empty for what names none of these. */
  static Optional<NameKind> of(Role role) {
    for (NameKind kind : values()) {
      if (kind.given == role || kind.used == role) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }
}
