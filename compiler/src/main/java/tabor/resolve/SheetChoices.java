package tabor.resolve;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.lists.Lists;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.Beat;
import tabor.syntax.LaneBar;
import tabor.syntax.Line;
import tabor.syntax.Num;
import tabor.syntax.PartStatement;
import tabor.syntax.SheetLine;
import tabor.syntax.Statement;

/** The choices of a line that varies, with those of the lines that change along with it. */
final class SheetChoices {
  private final Problems problems;
  private final Scope scope;
  private final Line each;
  private final List<Line> along;

  /** The section as the lines above leave it; null if what the sheet varies is not there. */
  private final Supplier<SectionResolver.@Nullable Draft> above;

  private final int most;
  private long count;

  /**
   * @param along the lines below it that start with {@code and}
   * @param most how many choices the sheet still has room for
   */
  SheetChoices(
      Problems problems,
      Scope scope,
      Line each,
      List<Line> along,
      Supplier<SectionResolver.@Nullable Draft> above,
      int most) {
    this.problems = problems;
    this.scope = scope;
    this.each = each;
    this.along = List.copyOf(along);
    this.above = above;
    this.most = most;
  }

  /** True if there are more than there is room for; {@link #find} has found none then. */
  boolean isTooMany() {
    return count > most;
  }

  /** How many there are. */
  long count() {
    return count;
  }

  /**
   * What is left of one line for one choice.
   *
   * @param statements the lines in its place, in order
   * @param pattern the name of the pattern played; null for other lines
   * @param span where the choice is written
   */
  record Made(List<Statement> statements, @Nullable String pattern, Span span) {
    static Made of(Statement statement, Span span) {
      return new Made(List.of(statement), null, span);
    }
  }

  /** The choices in order; none, and said so, where the lines do not fit each other. */
  List<SheetChoice> find() {
    SheetLine first = (SheetLine) each.statement();
    List<Made> own = made(each, first, null);
    if (own == null) {
      return List.of();
    }
    count = Math.max(count, own.size());
    if (isTooMany()) {
      return List.of();
    }
    List<List<Made>> others = new ArrayList<>();
    for (Line line : along) {
      List<Made> made = made(line, (SheetLine) line.statement(), first);
      if (made == null) {
        return List.of();
      }
      if (made.size() != own.size()) {
        unequal(line, made.size(), own.size());
        return List.of();
      }
      others.add(made);
    }
    List<SheetChoice> choices = new ArrayList<>(own.size());
    for (int i = 0; i < own.size(); i++) {
      choices.add(choice(first, own.get(i), others, i));
    }
    return choices;
  }

  private void unequal(Line line, int has, int wanted) {
    problems.incomplete();
    problems.add(
        problems
            .make(
                Code.SYNTAX,
                line,
                line.statement().span(),
                "this line has "
                    + choices(has)
                    + ", but the line that it changes along with has "
                    + choices(wanted))
            .label(each.spot(), choices(wanted) + " here")
            .help("give both lines the same number of choices"));
  }

  private static String choices(int count) {
    return count == 1 ? "1 choice" : count + " choices";
  }

  private SheetChoice choice(SheetLine first, Made own, List<List<Made>> others, int index) {
    Map<Line, List<Line>> lines = new IdentityHashMap<>();
    lines.put(each, lines(each, own));
    String pattern = own.pattern();
    String caption = first.caption() == null ? null : first.caption().value();
    for (int i = 0; i < others.size(); i++) {
      Line line = along.get(i);
      Made made = others.get(i).get(index);
      lines.put(line, lines(line, made));
      pattern = pattern == null ? made.pattern() : pattern;
      SheetLine written = (SheetLine) line.statement();
      caption = caption == null && written.caption() != null ? written.caption().value() : caption;
    }
    return new SheetChoice(lines, caption == null ? pattern : caption, each.spot(own.span()));
  }

  private static List<Line> lines(Line line, Made made) {
    return Lists.map(
        made.statements(), statement -> new Line(line.passage(), line.start(), statement));
  }

  /** The choices of one line; null, and said so, if it has none. */
  private @Nullable List<Made> made(Line line, SheetLine varied, @Nullable SheetLine leader) {
    Statement inner = varied.line();
    if (inner instanceof PartStatement.Lane lane) {
      Num said = varied.bars();
      boolean follows =
          said == null && leader != null && leader.line() instanceof PartStatement.Lane;
      Num bars = follows ? leader.bars() : said;
      return bars(line, lane, bars == null ? 1 : bars.whole(), said);
    }
    if (inner instanceof PartStatement.Played played) {
      return patterns(line, varied, played);
    }
    EditChoices edits = new EditChoices(problems, line, above);
    List<Made> made = edits.of((tabor.syntax.Edit) inner, most);
    count = Math.max(count, edits.count());
    return made;
  }

  // ---- bars

  private @Nullable List<Made> bars(
      Line line, PartStatement.Lane lane, int size, @Nullable Num said) {
    int written = lane.bars().size();
    if (written % size != 0) {
      problems.lost(
          Code.BAR_COUNT,
          line,
          said == null ? lane.span() : said.span(),
          SectionLength.bars(written)
              + " do not fall into variations of "
              + SectionLength.bars(size),
          "write a multiple of " + SectionLength.bars(size));
      return null;
    }
    SectionResolver.Draft draft = above.get();
    if (draft != null && draft.draft().bars() % size != 0) {
      problems.lost(
          Code.BAR_COUNT,
          line,
          said == null ? lane.span() : said.span(),
          "the section has "
              + SectionLength.bars(draft.draft().bars())
              + ", which "
              + SectionLength.bars(size)
              + " do not divide",
          "let variations have a number of bars that divides the section's");
      return null;
    }
    List<Made> made = new ArrayList<>(written / size);
    for (int from = 0; from < written; from += size) {
      List<LaneBar> bars = lane.bars().subList(from, from + size);
      Span span = bars.get(0).span().to(bars.get(size - 1).span());
      if (!mayBegin(problems, line, bars.get(0))) {
        return null;
      }
      // It repeats itself over the section, as an ostinato does.
      made.add(Made.of(new PartStatement.Lane(lane.subject(), true, bars, span), span));
    }
    return made;
  }

  // ---- patterns

  private @Nullable List<Made> patterns(Line line, SheetLine varied, PartStatement.Played first) {
    List<PartStatement.Played> all = new ArrayList<>();
    all.add(first);
    for (SheetLine.Pattern other : varied.others()) {
      all.add(
          new PartStatement.Played(
              first.subject(), other.source(), other.leftLead(), first.value(), first.span()));
    }
    SectionResolver.Draft draft = above.get();
    List<Made> made = new ArrayList<>(all.size());
    for (PartStatement.Played played : all) {
      List<Statement> statements = new ArrayList<>(2);
      long bars = draft == null ? 0 : new Patterns(scope).bars(played, draft.frame().meters());
      if (bars > Patterns.MOST_BARS) {
        problems.lost(
            Code.TOO_LONG,
            line,
            played.pattern().span(),
            "this pattern ends on a bar line only after " + bars + " bars",
            "a variation has at most "
                + Patterns.MOST_BARS
                + " bars: play it in another"
                + " note value");
        return null;
      }
      if (draft != null && bars > 0 && bars != draft.draft().bars()) {
        Span span = played.pattern().span();
        statements.add(new PartStatement.Bars(new Num(Time.of(bars), span), span));
      }
      statements.add(played);
      String words = Patterns.words(played.pattern()) + (played.leftLead() ? " left-lead" : "");
      made.add(new Made(statements, words, played.pattern().span()));
    }
    return made;
  }

  /**
   * True if the first bar of a variation begins with strokes or a rest of its own, since nothing
   * stands before it; says so if it does not.
   */
  private static boolean mayBegin(Problems problems, Line line, LaneBar bar) {
    Span held = bar.repeat() ? bar.span() : hold(bar);
    if (held == null) {
      return true;
    }
    problems.lost(
        Code.NOTHING_THERE,
        line,
        held,
        bar.repeat()
            ? "each bar is a variation of its own, so none stands before this one"
            : "each bar is a variation of its own, so no stroke goes on into it",
        bar.repeat() ? "write the bar out" : "write a stroke, or a dot for a rest");
    return false;
  }

  private static @Nullable Span hold(LaneBar bar) {
    if (bar.beats().isEmpty()) {
      return null;
    }
    List<Beat.Element> elements = bar.beats().get(0).elements();
    while (!elements.isEmpty()) {
      Beat.Element first = elements.get(0);
      if (first instanceof Beat.Hold) {
        return first.span();
      }
      elements = first instanceof Beat.Group group ? group.elements() : List.of();
    }
    return null;
  }
}
