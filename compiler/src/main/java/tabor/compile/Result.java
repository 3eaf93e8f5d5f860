package tabor.compile;

import java.util.List;
import java.util.Map;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Section;
import tabor.resolve.KitBuilder;
import tabor.resolve.Resolved;
import tabor.syntax.Beat;

/**
 * What one file comes to.
 *
 * @param sections in the order of the file
 * @param grooves grooves, steps and charts by name, the first of each name
 * @param kits the file's kits by name
 * @param patterns the file's patterns by name
 * @param diagnostics in the order of the file
 */
record Result(
    List<Section> sections,
    Map<String, Resolved> grooves,
    Map<String, KitBuilder.Built> kits,
    Map<String, List<Beat.Element>> patterns,
    List<Diagnostic> diagnostics) {

  long errors() {
    return diagnostics.stream().filter(d -> d.severity() == Severity.ERROR).count();
  }
}
