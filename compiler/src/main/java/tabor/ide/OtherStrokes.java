package tabor.ide;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Ornaments;
import tabor.groove.Section;
import tabor.groove.Stroke;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.Edit;
import tabor.syntax.Line;

/** Whether a fix leaves alone the strokes that other lines than its own wrote. */
final class OtherStrokes {
  private OtherStrokes() {}

  /** A stroke without its limb, which may be dealt anew, and without where it is written. */
  private record Heard(int bar, Time at, String surface, Level level, Ornaments ornaments) {
    static Heard of(Stroke s) {
      return new Heard(s.bar(), s.at(), s.surface().name(), s.level(), s.ornaments());
    }
  }

  /**
   * True if every stroke that a line wrote which the fix does not touch is there after it, by the
   * limb that the line says. A line that could not be read, or named what was not there, says after
   * the fix what it says, as does a line whose business is the strokes of others; and a section
   * that was made shorter has what fits into it.
   */
  static boolean areKept(Compiled before, Compiled after, Diagnostic diagnostic, QuickFix fix) {
    if (diagnostic.code() == Code.SYNTAX
        || diagnostic.code() == Code.UNKNOWN_NAME
        || isOnEdit(before, diagnostic)) {
      return true;
    }
    Map<String, Groove> made = grooves(after);
    return grooves(before).values().stream()
        .filter(old -> !old.isStep())
        .allMatch(
            old -> {
              Groove now = made.get(old.name());
              // Most sections of a long text are the very same, since nothing of them was changed.
              return now == null || now == old || isKept(before, old, now, fix);
            });
  }

  private static boolean isOnEdit(Compiled compiled, Diagnostic diagnostic) {
    Line line = Cursor.at(compiled, compiled.span(diagnostic.spot()).start()).line();
    return line != null && line.statement() instanceof Edit;
  }

  private static Map<String, Groove> grooves(Compiled compiled) {
    return compiled.lesson().sections().stream()
        .filter(Groove.class::isInstance)
        .map(Groove.class::cast)
        .collect(Collectors.toMap(Section::name, groove -> groove, (first, second) -> first));
  }

  private static boolean isKept(Compiled before, Groove old, Groove now, QuickFix fix) {
    Map<Heard, List<Stroke>> there =
        now.written().stream().collect(Collectors.groupingBy(Heard::of));
    return old.written().stream()
        .filter(stroke -> stroke.bar() <= now.bars())
        .filter(stroke -> !touches(fix, before.text(), before.span(stroke.spot())))
        .allMatch(
            stroke ->
                there.getOrDefault(Heard.of(stroke), List.of()).stream()
                    .anyMatch(kept -> isSameLimb(stroke, kept)));
  }

  /** What one line says of the limb may come from another, which the fix took away. */
  private static boolean isSameLimb(Stroke before, Stroke after) {
    return before.dealt() || after.dealt() || before.limb() == after.limb();
  }

  private static boolean touches(QuickFix fix, String text, Span span) {
    Span line = LineEnds.whole(text, span);
    return fix.edits().stream()
        .anyMatch(edit -> edit.span().start() < line.end() && line.start() <= edit.span().end());
  }
}
