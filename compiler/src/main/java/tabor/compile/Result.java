package tabor.compile;

import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Groove;
import tabor.groove.Player;
import tabor.groove.Section;
import tabor.lists.Lists;
import tabor.resolve.Resolved;
import tabor.syntax.Beat;

/**
 * What one file comes to.
 *
 * @param setting what its sections start from
 * @param sections in the order of the file
 * @param grooves grooves, steps and charts by name, the first of each name
 * @param kits the names of the file's kits
 * @param players the players of the files in use and of this one, by name
 * @param patterns the file's patterns by name
 * @param diagnostics in the order of the file
 * @param unused the patterns and kits of the file that it does not use itself, each with the
 *     diagnostic that says so
 * @param uses the patterns and kits of other files that it uses
 */
record Result(
    Groove.Setting setting,
    List<Section> sections,
    Map<String, Resolved> grooves,
    Set<String> kits,
    Map<String, Player> players,
    Map<String, List<Beat.Element>> patterns,
    List<Diagnostic> diagnostics,
    Map<Compiled.Definition, Diagnostic> unused,
    Set<Compiled.Definition> uses) {

  List<Diagnostic> errors() {
    return Lists.filter(diagnostics, d -> d.severity() == Severity.ERROR);
  }
}
