package tabor.syntax;

import tabor.source.Span;

/** A line. */
public sealed interface Statement
    permits Heading,
        SettingStatement,
        KitStatement,
        PartStatement,
        Edit,
        ChartStatement,
        PlayerStatement,
        SheetLine,
        Statement.Prose,
        Statement.Broken {
  /** Where it is written: from its first word to its last, comment left out. */
  Span span();

  /** {@code text "…"}. */
  record Prose(Text text, Span span) implements Statement {}

  /**
   * A line that could not be read. It has said so, and says nothing else.
   *
   * @param keyword its first word, as far as it could be read; empty if there is none
   * @param lane true if it looks like a lane or a played pattern, which then counts as fitting
   * @param span where
   */
  record Broken(String keyword, boolean lane, Span span) implements Statement {}
}
