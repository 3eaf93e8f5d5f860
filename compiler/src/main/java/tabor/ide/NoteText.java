package tabor.ide;

import org.jspecify.annotations.Nullable;
import tabor.syntax.StatementRow;

/** The pieces that notes beside the cursor are made of. */
final class NoteText {
  private NoteText() {}

  /** One below the other; either may be missing. */
  static @Nullable String joined(@Nullable String one, @Nullable String other) {
    return one == null ? other : other == null ? one : one + "\n\n" + other;
  }

  /** How a statement or sign is written, what it does, and an example. */
  static String row(StatementRow row) {
    return "`" + row.usage() + "`\n\n" + row.meaning() + code(row.example());
  }

  /** A text as it is written. */
  static String code(String text) {
    return "\n\n```text\n" + text + "\n```";
  }
}
