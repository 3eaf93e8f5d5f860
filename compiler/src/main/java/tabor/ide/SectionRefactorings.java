package tabor.ide;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.groove.Stroke;
import tabor.ide.Refactorings.Draft;
import tabor.rhythm.CountNames;
import tabor.rhythm.Time;
import tabor.syntax.Edit;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;
import tabor.syntax.Text;

/** A step as a groove with all its parts, and a groove as a step from the section before it. */
final class SectionRefactorings {
  private SectionRefactorings() {}

  static List<Draft> of(Cursor cursor, Groove groove) {
    Line line = cursor.section().heading();
    if (line == null || !(line.statement() instanceof Heading heading) || heading.name() == null) {
      return List.of();
    }
    Optional<Draft> found =
        heading instanceof Heading.Step
            ? asGroove(cursor, groove, line, heading)
            : heading instanceof Heading.Groove
                ? asStep(cursor, groove, line, heading)
                : Optional.empty();
    return found.stream().toList();
  }

  private static Optional<Draft> asGroove(
      Cursor cursor, Groove groove, Line line, Heading heading) {
    List<String> lines = new ArrayList<>(settings(cursor, groove));
    if (groove.pickup().sign() > 0) {
      int beats =
          groove.meter().beatCount()
              - groove.meter().beatAt(groove.meter().bar().minus(groove.pickup()));
      lines.add("pickup " + beats + (beats == 1 ? " beat" : " beats"));
    }
    Optional<List<String>> parts = new LaneWriter(groove).bySurface(groove.written());
    if (parts.isEmpty()) {
      return Optional.empty();
    }
    lines.addAll(parts.get());
    dynamics(groove).forEach(lines::add);
    TextEdit edit =
        new LineRewriter(cursor)
            .section(
                "groove " + name(line, heading),
                one -> makesStrokes(one) || one.statement() instanceof Edit,
                lines);
    return Optional.of(new Draft("Write this step out as a groove", List.of(edit)));
  }

  private static Optional<Draft> asStep(Cursor cursor, Groove groove, Line line, Heading heading) {
    Groove before = before(cursor).orElse(null);
    if (before == null
        || before.bars() != groove.bars()
        || !before.setting().equals(groove.setting())
        || !before.pickup().equals(groove.pickup())) {
      return Optional.empty();
    }
    List<String> lines = new ArrayList<>();
    List<Stroke> changed = new ArrayList<>();
    for (String surface : groove.setting().kit().surfaces().keySet()) {
      List<Stroke> now = on(groove, surface);
      List<Stroke> then = on(before, surface);
      if (now.isEmpty() && !then.isEmpty()) {
        lines.add("drop " + surface);
      } else if (!SameMusic.heard(now).equals(SameMusic.heard(then))) {
        changed.addAll(now);
      }
    }
    Optional<List<String>> parts = new LaneWriter(groove).bySurface(changed);
    if (parts.isEmpty()) {
      return Optional.empty();
    }
    lines.addAll(parts.get());
    TextEdit edit =
        new LineRewriter(cursor)
            .section("step " + name(line, heading), SectionRefactorings::makesStrokes, lines);
    String title = "Write this groove as a step from " + before.name();
    return Optional.of(new Draft(title, List.of(edit)));
  }

  private static List<Stroke> on(Groove groove, String surface) {
    return groove.written().stream().filter(s -> s.surface().name().equals(surface)).toList();
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

  /** The name and the title, as written. */
  private static String name(Line line, Heading heading) {
    Text title = heading.title();
    String name = heading.name() == null ? "" : heading.name().text();
    return title == null ? name : name + " " + line.spot(title.span()).text();
  }

  /** The settings that the step has from the sections it came from, as written there. */
  private static List<String> settings(Cursor cursor, Groove groove) {
    Map<Class<?>, String> lines = new LinkedHashMap<>();
    List<Groove> bases = new ArrayList<>();
    for (Groove base = groove.base(); base != null; base = base.base()) {
      bases.add(0, base);
    }
    for (Groove base : bases) {
      for (SectionSyntax section : cursor.compiled().syntax()) {
        if (section.passage() == base.heading().passage()) {
          for (Line line : section.lines()) {
            if (line.statement() instanceof SettingStatement setting) {
              lines.put(setting.getClass(), line.spot().text());
            }
          }
        }
      }
    }
    return List.copyOf(lines.values());
  }

  /** What changes loudness, written out. */
  private static List<String> dynamics(Groove groove) {
    List<String> lines = new ArrayList<>();
    for (Loudness.Mark mark : groove.marks()) {
      lines.add(
          "dynamic " + mark.loudness().word() + " at " + count(groove, mark.bar(), mark.at()));
    }
    for (Loudness.Hairpin hairpin : groove.hairpins()) {
      lines.add(
          (hairpin.grows() ? "crescendo to " : "diminuendo to ")
              + hairpin.target().word()
              + " from "
              + count(groove, hairpin.fromBar(), hairpin.from())
              + " to "
              + count(groove, hairpin.toBar(), hairpin.to()));
    }
    return lines;
  }

  private static String count(Groove groove, int bar, Time at) {
    return CountNames.of(at, groove.meter(bar)) + " in bar " + bar;
  }

  private static boolean makesStrokes(Line line) {
    Statement statement = line.statement();
    boolean dynamic = statement instanceof Edit.Dynamic || statement instanceof Edit.Hairpin;
    return statement instanceof PartStatement || (statement instanceof Edit && !dynamic);
  }
}
