package tabor.resolve;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Section;
import tabor.source.Spot;

/**
 * A section worked out.
 *
 * @param section as far as it could be made; null where its meter does not add up
 * @param gaps what may be missing of it that is not missing in the source: some line of it, or of
 *     what it came from, could not be read or placed
 * @param diagnostics what is wrong with it, in no order
 * @param effort what it cost to work out, about the number of strokes looked at
 * @param variations of a sheet each of its variations, in order; none of other sections
 * @param items of a chart where each of its items stands; none of other sections
 */
public record Resolved(
    @Nullable Section section,
    Gaps gaps,
    List<Diagnostic> diagnostics,
    long effort,
    List<Resolved> variations,
    List<Spot> items) {
  /** Copies the lists. */
  public Resolved {
    diagnostics = List.copyOf(diagnostics);
    variations = List.copyOf(variations);
    items = List.copyOf(items);
  }

  /** A section that is neither a sheet nor a chart. */
  public Resolved(@Nullable Section section, Gaps gaps, List<Diagnostic> diagnostics, long effort) {
    this(section, gaps, diagnostics, effort, List.of(), List.of());
  }

  /** True if some line of it, or of what it came from, could not be read or placed. */
  public boolean partial() {
    return gaps.any();
  }
}
