package tabor.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.source.Span;

/**
 * A line of a sheet that makes variations: {@code each LINE}, or {@code and LINE} below one, which
 * changes along with it.
 *
 * @param along true for {@code and}
 * @param bars N of {@code each N bars LANE}; null where it is not written
 * @param line the lane, played pattern or edit behind the keyword, as it would stand alone: with
 *     the first pattern of a list
 * @param others the patterns after the first of a list of patterns
 * @param caption what its variations are called; null where nothing is said
 * @param span where
 */
public record SheetLine(
    boolean along,
    @Nullable Num bars,
    Statement line,
    List<Pattern> others,
    @Nullable Text caption,
    Span span)
    implements Statement {
  /** Copies the list. */
  public SheetLine {
    others = List.copyOf(others);
  }

  /** One pattern of a list. */
  public record Pattern(PartStatement.PatternSource source, boolean leftLead) {}
}
