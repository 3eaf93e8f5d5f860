package tabor.ide;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.groove.Stroke;
import tabor.ide.Leaf.Role;
import tabor.source.Span;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

/**
 * Other ways to write the same music: parts by limb or by surface, a pattern poured in or written
 * out, a step or a whole groove. Each is tried first, and offered only if every stroke of the file
 * stays what it is, that of the swapped hands excepted.
 */
public final class Recasts {
  private static final String SWAPPED = "swap the hands of this part";

  private final Compiled compiled;
  private final Library library;
  private final Cursor cursor;
  private final List<Mend> found = new ArrayList<>();

  private Recasts(Compiled compiled, int offset, Library library) {
    this.compiled = compiled;
    this.library = library;
    this.cursor = Cursor.at(compiled, offset);
  }

  /** What can be recast at an offset. */
  public static List<Mend> at(Compiled compiled, int offset, Library library) {
    return candidates(compiled, offset, library).stream()
        .filter(mend -> works(compiled, mend, library))
        .toList();
  }

  /** What may be recast at an offset; whether every stroke stays is not tried. */
  public static List<Mend> candidates(Compiled compiled, int offset, Library library) {
    Recasts recasts = new Recasts(compiled, offset, library);
    Line line = recasts.cursor.line();
    if (line == null || recasts.cursor.groove().isEmpty()) {
      return List.of();
    }
    if (line == recasts.cursor.section().heading()) {
      SectionRecasts.of(recasts.cursor, library).forEach(recasts::offer);
    } else if (line.statement() instanceof PartStatement.Lane lane) {
      recasts.parts(line);
      PatternRecasts.extract(recasts.cursor, line, lane, library).forEach(recasts::offer);
      recasts.swapHands(line);
    } else if (line.statement() instanceof PartStatement.Played played) {
      recasts.writtenOut(line, played);
      recasts.swapHands(line);
    }
    return recasts.found;
  }

  private void offer(Mend mend) {
    found.add(mend);
  }

  /** True if a mend leaves every section's strokes as they are, or does what it says to hands. */
  public static boolean works(Compiled compiled, Mend mend, Library library) {
    return mend.title().equals(SWAPPED) || keepsStrokes(compiled, mend, library);
  }

  private static boolean keepsStrokes(Compiled compiled, Mend mend, Library library) {
    Compiled after = library.trial(compiled.file(), mend.apply(compiled.text()));
    if (after.hasErrors() && !compiled.hasErrors()) {
      return false;
    }
    Map<String, Groove> now = new HashMap<>();
    for (Section section : after.lesson().sections()) {
      if (section instanceof Groove groove) {
        now.put(groove.name(), groove);
      }
    }
    for (Section section : compiled.lesson().sections()) {
      if (section instanceof Groove before) {
        Groove groove = now.get(before.name());
        if (groove == null
            || groove.bars() != before.bars()
            || !groove.setting().equals(before.setting())
            || !LaneWriter.essence(groove).equals(LaneWriter.essence(before))) {
          return false;
        }
      }
    }
    return true;
  }

  /** The parts around the cursor, by limb and by surface. */
  private void parts(Line line) {
    List<Line> lines = cursor.section().lines();
    int at = lines.indexOf(line);
    int from = at;
    while (from > 0 && isPlainLane(lines.get(from - 1))) {
      from--;
    }
    int to = at;
    while (to + 1 < lines.size() && isPlainLane(lines.get(to + 1))) {
      to++;
    }
    if (!isPlainLane(line) || !isWhole(lines, from, to)) {
      return;
    }
    List<Line> run = lines.subList(from, to + 1);
    Groove made = after(run.get(run.size() - 1)).orElse(null);
    if (made == null) {
      return;
    }
    List<Stroke> strokes = new ArrayList<>();
    run.forEach(one -> strokes.addAll(madeBy(made, one)));
    LaneWriter writer = new LaneWriter(made);
    writer.byLimb(strokes).ifPresent(text -> replace("write these parts by limb", run, text));
    writer.bySurface(strokes).ifPresent(text -> replace("write these parts by surface", run, text));
  }

  private static boolean isPlainLane(Line line) {
    return line.statement() instanceof PartStatement.Lane lane && !lane.ostinato();
  }

  /** Only systems of one piece: with {@code next}, bars would have to be cut up again. */
  private static boolean isWhole(List<Line> lines, int from, int to) {
    boolean before = from > 0 && lines.get(from - 1).statement() instanceof PartStatement.Next;
    boolean after =
        to + 1 < lines.size() && lines.get(to + 1).statement() instanceof PartStatement.Next;
    return !before && !after;
  }

  private Optional<Groove> after(Line line) {
    String text = compiled.text();
    int end = compiled.span(line.spot()).end();
    while (end < text.length() && !Situation.isLineEnd(text.charAt(end))) {
      end++;
    }
    int sectionEnd = cursor.start() + cursor.section().passage().text().length();
    String shorter = text.substring(0, end) + "\n" + text.substring(Math.max(end, sectionEnd));
    Compiled trial = library.trial(compiled.file(), shorter);
    return Cursor.at(trial, Math.min(cursor.start(), shorter.length())).groove();
  }

  private void replace(String title, List<Line> run, List<String> parts) {
    Span first = compiled.span(run.get(0).spot());
    Span last = compiled.span(run.get(run.size() - 1).spot());
    String between = lineEnd() + indent(first.start());
    Span whole = first.to(last);
    String text = String.join(between, parts);
    if (!parts.isEmpty() && !text.equals(whole.in(compiled.text()))) {
      offer(Mend.of(title, whole, text));
    }
  }

  private String lineEnd() {
    return compiled.text().contains("\r\n") ? "\r\n" : "\n";
  }

  private String indent(int lineTextStart) {
    int start = lineTextStart;
    while (start > 0 && !Situation.isLineEnd(compiled.text().charAt(start - 1))) {
      start--;
    }
    return compiled.text().substring(start, lineTextStart);
  }

  private void writtenOut(Line line, PartStatement.Played played) {
    after(line)
        .flatMap(made -> new LaneWriter(made).under(played.subject().text(), madeBy(made, line)))
        .ifPresent(text -> replace("write this part out", List.of(line), text));
  }

  /** Right becomes left in this part alone. This one is meant to change who strikes. */
  private void swapHands(Line line) {
    List<Mend.Change> changes = new ArrayList<>();
    if (line.statement() instanceof PartStatement.Lane && !KitNames.isLettered(line)) {
      for (Leaf leaf : Leaves.of(line)) {
        if (leaf.hit() != null && (leaf.hit().letter() == 'r' || leaf.hit().letter() == 'l')) {
          String other = leaf.hit().letter() == 'r' ? "l" : "r";
          String text = leaf.hit().accent() ? other.toUpperCase(Locale.ROOT) : other;
          changes.add(
              new Mend.Change(compiled.span(line.spot(KitNames.letterSpan(line, leaf))), text));
        }
      }
    } else {
      Leaf subject = Leaves.of(line).get(0);
      if (subject.role() == Role.LIMB && subject.text().startsWith("right")) {
        changes.add(swapped(line, subject, "left", 5));
      } else if (subject.role() == Role.LIMB && subject.text().startsWith("left")) {
        changes.add(swapped(line, subject, "right", 4));
      }
    }
    if (!changes.isEmpty()) {
      found.add(new Mend(SWAPPED, changes));
    }
  }

  private Mend.Change swapped(Line line, Leaf subject, String to, int length) {
    Span word = compiled.span(line.spot(subject.span()));
    return new Mend.Change(new Span(word.start(), word.start() + length), to);
  }

  /** The strokes that a line made; the groove may be of a shorter text that has the line too. */
  private static List<Stroke> madeBy(Groove groove, Line line) {
    Span whole = line.spot().span();
    return groove.written().stream()
        .filter(stroke -> stroke.spot().passage() == groove.heading().passage())
        .filter(
            stroke ->
                whole.start() <= stroke.spot().span().start()
                    && stroke.spot().span().end() <= whole.end())
        .toList();
  }
}
