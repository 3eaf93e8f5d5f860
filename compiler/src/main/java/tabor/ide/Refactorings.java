package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiFunction;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.source.Span;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.Subject;

/**
 * Other ways to write the same music: parts by limb or by surface, a pattern played or written out,
 * a step or a whole groove. Strokes, dynamics, texts and comments stay what they are; only swapping
 * the hands of a part changes who strikes.
 */
public final class Refactorings {
  private final Compiled compiled;
  private final Cursor cursor;
  private final List<Refactoring> found = new ArrayList<>();

  private Refactorings(Compiled compiled, Cursor cursor) {
    this.compiled = compiled;
    this.cursor = cursor;
  }

  /** What can be written otherwise at an offset. Nothing is compiled for the list. */
  public static List<Refactoring> at(Compiled compiled, int offset, Library library) {
    Refactorings refactorings = new Refactorings(compiled, Cursor.at(compiled, offset));
    Line line = refactorings.cursor.line();
    Groove groove = refactorings.cursor.groove().orElse(null);
    if (line == null || groove == null) {
      return List.of();
    }
    if (line == refactorings.cursor.section().heading()) {
      SectionRefactorings.of(refactorings.cursor, groove).forEach(refactorings::offer);
    } else if (line.statement() instanceof PartStatement.Lane lane) {
      refactorings.parts(line);
      PatternRefactorings.of(refactorings.cursor, line, lane, groove, library)
          .forEach(refactorings::offer);
      refactorings.swapHands(groove, line, lane.subject());
    } else if (line.statement() instanceof PartStatement.Played played) {
      refactorings.writeOut(line, played);
      refactorings.swapHands(groove, line, played.subject());
    }
    return List.copyOf(refactorings.found);
  }

  /**
   * What a refactoring would write, before it is tried.
   *
   * @param title what it does
   * @param edits what it writes
   */
  record Draft(String title, List<TextEdit> edits) {}

  private void offer(Draft draft) {
    found.add(
        new Refactoring(
            draft.title(),
            library ->
                SameMusic.after(compiled, draft.edits(), library)
                    ? Optional.of(TextEdit.inOrder(draft.edits()))
                    : Optional.empty()));
  }

  /** The parts around the cursor, by limb and by surface. */
  private void parts(Line line) {
    List<Line> lines = cursor.section().lines();
    int from = lines.indexOf(line);
    int to = from;
    if (!isPlainLane(line)) {
      return;
    }
    while (from > 0 && isPlainLane(lines.get(from - 1))) {
      from--;
    }
    while (to + 1 < lines.size() && isPlainLane(lines.get(to + 1))) {
      to++;
    }
    if (isNext(lines, from - 1) || isNext(lines, to + 1)) {
      // Bars would have to be cut up again.
      return;
    }
    List<Line> run = List.copyOf(lines.subList(from, to + 1));
    if (run.stream().anyMatch(one -> subject(one) instanceof Subject.OfLimb)) {
      rewrite("Write these parts by surface", run, LaneWriter::bySurface);
    }
    if (run.stream().anyMatch(one -> !(subject(one) instanceof Subject.OfLimb))) {
      rewrite("Write these parts by limb", run, LaneWriter::byLimb);
    }
    if (run.stream().noneMatch(one -> subject(one) instanceof Subject.OfLimb)
        && run.stream().anyMatch(one -> !(subject(one) instanceof Subject.OfSurface))) {
      rewrite("Write these parts by surface", run, LaneWriter::bySurface);
    }
  }

  private static Subject subject(Line line) {
    return ((PartStatement.Lane) line.statement()).subject();
  }

  private static boolean isPlainLane(Line line) {
    return line.statement() instanceof PartStatement.Lane lane && !lane.ostinato();
  }

  private static boolean isNext(List<Line> lines, int index) {
    return index >= 0
        && index < lines.size()
        && lines.get(index).statement() instanceof PartStatement.Next;
  }

  private void writeOut(Line line, PartStatement.Played played) {
    rewrite(
        "Write this part out",
        List.of(line),
        (writer, strokes) -> writer.under(played.subject(), strokes));
  }

  private void rewrite(
      String title,
      List<Line> run,
      BiFunction<LaneWriter, List<Stroke>, Optional<List<String>>> writing) {
    found.add(
        new Refactoring(
            title,
            library ->
                rewritten(run, writing, library)
                    .filter(edits -> SameMusic.after(compiled, edits, library))));
  }

  private Optional<List<TextEdit>> rewritten(
      List<Line> run,
      BiFunction<LaneWriter, List<Stroke>, Optional<List<String>>> writing,
      Library library) {
    int last = compiled.span(run.get(run.size() - 1).spot()).end();
    Groove made = SectionAbove.through(cursor, last, library).orElse(null);
    if (made == null) {
      return Optional.empty();
    }
    List<Stroke> strokes = new ArrayList<>();
    run.forEach(line -> strokes.addAll(madeBy(made, line)));
    List<String> parts = writing.apply(new LaneWriter(made), strokes).orElse(List.of());
    if (parts.isEmpty()) {
      return Optional.empty();
    }
    TextEdit edit = new LineRewriter(cursor).lines(run, parts);
    return edit.text().equals(edit.span().in(compiled.text()))
        ? Optional.empty()
        : Optional.of(List.of(edit));
  }

  /** Right becomes left in this part alone. This one is meant to change who strikes. */
  private void swapHands(Groove groove, Line line, Subject subject) {
    boolean noHands = subject instanceof Subject.Feet || subject instanceof Subject.Line;
    if (noHands || !othersAreFree(groove, line)) {
      return;
    }
    List<TextEdit> edits = new ArrayList<>();
    if (subject instanceof Subject.OfLimb limb) {
      Span whole = compiled.span(line.spot(limb.span()));
      boolean right = limb.limb().limb().isRight();
      int length = (right ? "right" : "left").length();
      edits.add(
          new TextEdit(new Span(whole.start(), whole.start() + length), right ? "left" : "right"));
    } else if (line.statement() instanceof PartStatement.Lane) {
      for (SyntaxToken token : SyntaxTokens.of(line)) {
        if (token.hit() != null && (token.hit().letter() == 'r' || token.hit().letter() == 'l')) {
          String other = token.hit().letter() == 'r' ? "l" : "r";
          String text = token.hit().accent() ? other.toUpperCase(Locale.ROOT) : other;
          edits.add(new TextEdit(compiled.span(line.spot(token.letterSpan(line))), text));
        }
      }
    }
    if (!edits.isEmpty()) {
      found.add(
          new Refactoring(
              "Swap the hands of this part",
              library ->
                  SameMusic.withoutNewErrors(compiled, edits, library)
                      ? Optional.of(TextEdit.inOrder(edits))
                      : Optional.empty()));
    }
  }

  /** True if no other line has the hand busy that would take a stroke of this one over. */
  private static boolean othersAreFree(Groove groove, Line line) {
    List<Stroke> own = madeBy(groove, line);
    return own.stream()
        .allMatch(
            stroke ->
                groove.written().stream()
                    .noneMatch(
                        one ->
                            one.limb() == stroke.limb().other()
                                && one.bar() == stroke.bar()
                                && one.at().equals(stroke.at())
                                && !own.contains(one)));
  }

  /** The strokes that a line made; the groove may be of a shorter text that has the line too. */
  private static List<Stroke> madeBy(Groove groove, Line line) {
    Span whole = line.spot().span();
    return groove.written().stream()
        .filter(stroke -> stroke.spot().passage() == groove.heading().passage())
        .filter(stroke -> whole.holds(stroke.spot().span()))
        .toList();
  }
}
