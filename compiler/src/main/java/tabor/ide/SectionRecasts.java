package tabor.ide;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.source.Span;
import tabor.syntax.Edit;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Statement;
import tabor.syntax.Text;

/** A step as a groove with all its parts, and a groove as a step from the section before it. */
final class SectionRecasts {
  private SectionRecasts() {}

  static List<Mend> of(Cursor cursor, Library library) {
    Groove groove = cursor.groove().orElse(null);
    Line line = cursor.section().heading();
    if (groove == null || line == null) {
      return List.of();
    }
    if (line.statement() instanceof Heading.Step step) {
      return asGroove(cursor, groove, step.name() == null ? null : step.name().text(), step.title())
          .stream()
          .toList();
    }
    if (line.statement() instanceof Heading.Groove heading) {
      return asStep(cursor, groove, heading).stream().toList();
    }
    return List.of();
  }

  private static Optional<Mend> asGroove(
      Cursor cursor, Groove groove, @Nullable String name, @Nullable Text title) {
    Optional<List<String>> parts = new LaneWriter(groove).bySurface(groove.written());
    if (parts.isEmpty() || name == null || !groove.marks().isEmpty()) {
      return Optional.empty();
    }
    List<String> lines = new ArrayList<>();
    lines.add("groove " + name + written(cursor, title));
    if (groove.pickup().sign() > 0) {
      int beats =
          groove.meter().beatCount()
              - groove.meter().beatAt(groove.meter().bar().minus(groove.pickup()));
      lines.add("  pickup " + beats + (beats == 1 ? " beat" : " beats"));
    }
    lines.addAll(kept(cursor));
    parts.get().forEach(part -> lines.add("  " + part));
    return Optional.of(replace(cursor, "write this step out as a groove", lines));
  }

  private static Optional<Mend> asStep(Cursor cursor, Groove groove, Heading.Groove heading) {
    Groove before = before(cursor).orElse(null);
    if (before == null
        || before.bars() != groove.bars()
        || !before.meter().equals(groove.meter())
        || !groove.marks().isEmpty()) {
      return Optional.empty();
    }
    List<String> lines = new ArrayList<>();
    lines.add("step " + heading.name().text() + written(cursor, heading.title()));
    lines.addAll(kept(cursor));
    List<String> drops = new ArrayList<>();
    List<Stroke> changed = new ArrayList<>();
    for (String surface : groove.setting().kit().surfaces().keySet()) {
      List<Stroke> now = on(groove, surface);
      List<Stroke> then = on(before, surface);
      if (now.isEmpty() && !then.isEmpty()) {
        drops.add("  drop " + surface);
      } else if (!essence(now).equals(essence(then))) {
        changed.addAll(now);
      }
    }
    Optional<List<String>> parts = new LaneWriter(groove).bySurface(changed);
    if (parts.isEmpty()) {
      return Optional.empty();
    }
    lines.addAll(drops);
    parts.get().forEach(part -> lines.add("  " + part));
    return Optional.of(replace(cursor, "write this groove as a step from " + before.name(), lines));
  }

  private static List<Stroke> on(Groove groove, String surface) {
    return groove.written().stream().filter(s -> s.surface().name().equals(surface)).toList();
  }

  private static Set<List<Object>> essence(List<Stroke> strokes) {
    Set<List<Object>> found = new HashSet<>();
    for (Stroke s : strokes) {
      found.add(List.of(s.bar(), s.at(), s.length(), s.limb(), s.level(), s.ornaments(), s.slot()));
    }
    return found;
  }

  /** The groove or step written before this one. */
  private static Optional<Groove> before(Cursor cursor) {
    Groove last = null;
    for (SectionSyntax section : cursor.compiled().syntax()) {
      if (section == cursor.section()) {
        return Optional.ofNullable(last);
      }
      Groove made = Cursor.grooveOf(cursor.compiled(), section.passage()).orElse(null);
      last = made == null ? last : made;
    }
    return Optional.empty();
  }

  private static String written(Cursor cursor, @Nullable Text title) {
    Line line = cursor.section().heading();
    return title == null || line == null ? "" : " " + line.spot(title.span()).text();
  }

  /** The lines that stay as they are: settings, prose and dynamics, not what makes strokes. */
  private static List<String> kept(Cursor cursor) {
    List<String> lines = new ArrayList<>();
    for (Line line : cursor.section().lines()) {
      Statement statement = line.statement();
      boolean makesStrokes =
          statement instanceof PartStatement
              || (statement instanceof Edit
                  && !(statement instanceof Edit.Dynamic || statement instanceof Edit.Hairpin));
      if (!makesStrokes) {
        lines.add("  " + line.spot().text());
      }
    }
    return lines;
  }

  private static Mend replace(Cursor cursor, String title, List<String> lines) {
    Compiled compiled = cursor.compiled();
    Span whole = Outline.whole(compiled, cursor.section());
    String end = compiled.text().contains("\r\n") ? "\r\n" : "\n";
    return Mend.of(title, whole, String.join(end, lines));
  }
}
