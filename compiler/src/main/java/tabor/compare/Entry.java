package tabor.compare;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.source.Passage;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.Name;
import tabor.syntax.SectionKind;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Text;

/**
 * A section as written and, if it has no errors, as it sounds.
 *
 * @param syntax as written
 * @param kind what it is
 * @param label its name, or its title in quotes, or the name that it gets
 * @param section as it sounds; null if it has errors, or is none that sounds
 */
record Entry(SectionSyntax syntax, SectionKind kind, String label, @Nullable Section section) {

  /** The sections of a file in order, patterns and kits left out: they are heard in the others. */
  static List<Entry> of(Compiled file) {
    Map<Passage, List<Section>> sounding = new IdentityHashMap<>();
    Set<Passage> wrong = Collections.newSetFromMap(new IdentityHashMap<>());
    for (Diagnostic diagnostic : file.diagnostics()) {
      if (diagnostic.severity() == Severity.ERROR) {
        wrong.add(diagnostic.spot().passage());
      }
    }
    for (Section section : file.lesson().sections()) {
      sounding
          .computeIfAbsent(section.heading().passage(), passage -> new ArrayList<>())
          .add(section);
    }
    List<Entry> entries = new ArrayList<>();
    for (SectionSyntax syntax : file.syntax()) {
      Line line = syntax.heading();
      if (line == null || !(line.statement() instanceof Heading heading)) {
        continue;
      }
      if (heading.kind() == SectionKind.PATTERN || heading.kind() == SectionKind.KIT) {
        continue;
      }
      List<Section> own =
          wrong.contains(syntax.passage())
              ? List.of()
              : sounding.getOrDefault(syntax.passage(), List.of());
      if (own.isEmpty()) {
        entries.add(new Entry(syntax, heading.kind(), label(heading, null), null));
      }
      for (Section section : own) {
        entries.add(new Entry(syntax, heading.kind(), label(heading, section), section));
        if (section instanceof Sheet sheet) {
          for (Sheet.Variation one : sheet.variations()) {
            // A title that only counts is nothing that somebody wrote or changed.
            Groove variation = one.groove().named(one.groove().name(), one.caption());
            entries.add(new Entry(syntax, heading.kind(), variation.name(), variation));
          }
        }
      }
    }
    return entries;
  }

  private static String label(Heading heading, @Nullable Section section) {
    Name name = heading.name();
    if (name != null) {
      return section == null ? name.text() : section.name();
    }
    Text title = heading.title();
    return title == null ? "without a name" : '"' + title.value() + '"';
  }

  /** True for a variation of a sheet; its sheet has an entry of its own before it. */
  boolean isVariation() {
    return kind == SectionKind.SHEET && section instanceof Groove;
  }

  /** The groove, step or variation; null for everything else. */
  @Nullable Groove groove() {
    return section instanceof Groove groove ? groove : null;
  }
}
