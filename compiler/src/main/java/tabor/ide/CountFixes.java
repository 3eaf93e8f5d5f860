package tabor.ide;

import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.resolve.PlaceQuery;
import tabor.resolve.SectionView;
import tabor.rhythm.Count;
import tabor.rhythm.Time;
import tabor.syntax.At;
import tabor.syntax.Edit;
import tabor.syntax.Line;
import tabor.syntax.Num;

/** Fixes of counts and bars that are not there: the nearest that are, by the section as it is. */
record CountFixes(Cursor cursor, Diagnostic diagnostic) {
  List<QuickFix> find() {
    Line line = cursor.line();
    Groove groove = cursor.groove().orElse(null);
    SyntaxToken token = cursor.token();
    if (line == null || groove == null || token == null || !(line.statement() instanceof Edit)) {
      return List.of();
    }
    Edit edit = (Edit) line.statement();
    Predicate<Stroke> target = EditTargets.of(edit, groove.setting().kit());
    PlaceQuery query = new PlaceQuery(SectionView.of(groove), target);
    String instead =
        token.count() != null
            ? token.count().word() == null
                ? count(edit, token.count().count(), query, groove)
                : null
            : isBar(edit, token) ? bar(edit, query, groove) : null;
    return instead == null
        ? List.of()
        : List.of(QuickFix.of("Write " + instead, cursor.inFile(token.span()), instead));
  }

  /** The nearest count with a stroke of the target; where none is needed the bar's last beat. */
  private @Nullable String count(Edit edit, Count count, PlaceQuery query, Groove groove) {
    Diagnostic.Place place = diagnostic.place();
    int bar = place == null || place.bar() == null ? groove.firstBar() : place.bar();
    Time plain = query.plainPlace(count, bar);
    List<Count> near = query.near(bar, plain == null ? groove.meter(bar).bar() : plain);
    if (!near.isEmpty()) {
      return near.get(0).toString();
    }
    boolean needs = !(edit instanceof Edit.Add || edit instanceof Edit.Dynamic);
    int beats = groove.meter(bar).beatCount();
    return needs ? null : Integer.toString(Math.min(Math.max(1, count.beat()), beats));
  }

  private static boolean isBar(Edit edit, SyntaxToken token) {
    return SyntaxNodes.all(edit, At.Bars.class).stream()
        .flatMap(bars -> SyntaxNodes.all(bars, Num.class).stream())
        .anyMatch(number -> number.span().equals(token.span()));
  }

  /** The last bar, or the last in which the target is struck. */
  private static @Nullable String bar(Edit edit, PlaceQuery query, Groove groove) {
    List<Integer> played = query.barsPlayed();
    if (!played.isEmpty()) {
      return played.get(played.size() - 1).toString();
    }
    boolean needs = !(edit instanceof Edit.Add || edit instanceof Edit.Fill);
    return needs ? null : Integer.toString(groove.bars());
  }
}
