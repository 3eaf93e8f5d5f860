package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Part;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.kit.Kit;
import tabor.lists.Lists;
import tabor.rhythm.Meter;
import tabor.source.Span;
import tabor.syntax.ChartStatement;
import tabor.syntax.Line;
import tabor.syntax.Name;
import tabor.syntax.Numerals;
import tabor.syntax.TargetRef;

/** What the lines of a chart name: sections, parts, fills. */
final class ChartNames {
  private final Scope scope;
  private final Problems problems;
  private boolean partial;
  private @Nullable Line unsure;

  ChartNames(Scope scope, Problems problems) {
    this.scope = scope;
    this.problems = problems;
  }

  /** True if something named is not there, or was not read to its end. */
  boolean partial() {
    return partial;
  }

  /** The groove, step or sheet of a name; null, and said so, if there is none. */
  @Nullable Section section(Line line, Name word) {
    Resolved found = scope.section(word.text());
    if (found == null) {
      notAll(line);
      if (problems.isFull()) {
        return null;
      }
      if (scope.isChart(word.text())) {
        noChart(line, word);
        return null;
      }
      Diagnostic unknown = SheetNames.unknown(scope, problems, line, word, false);
      problems.add(unknown.help() == null ? howOften(unknown, line, word) : unknown);
      return null;
    }
    Section section = found.section();
    if (found.partial() || section == null || section instanceof Chart) {
      notAll(line);
    }
    if (section instanceof Chart) {
      noChart(line, word);
      return null;
    }
    return section;
  }

  /** Notes that not all that a line plays is known; what it lacks is then not missed. */
  private void notAll(Line line) {
    partial = true;
    unsure = line;
  }

  /** Words that say how often, or that sections follow one another, read as names of sections. */
  private static Diagnostic howOften(Diagnostic unknown, Line line, Name word) {
    String text = word.text();
    Integer times =
        text.matches("x[1-9][0-9]{0,3}")
            ? Integer.valueOf(text.substring(1))
            : Numerals.times(text);
    if (times != null) {
      String written = times + (times == 1 ? " time" : " times");
      return unknown
          .help("how often is said with a number: " + written)
          .fix("write “" + written + "”", line.spot(word.span()), written);
    }
    if (text.equals("then") || text.equals("and")) {
      Span gap = new Span(word.span().start(), word.span().end() + 1);
      return unknown
          .help("sections follow one another without a word between them")
          .fix("take “" + text + "” out", line.spot(gap), "");
    }
    Integer number = Numerals.number(text);
    if (number != null) {
      return unknown.help(
          "how often is said with a number: " + number + " times or " + number + " bars");
    }
    return unknown.help(
        text.matches("(?:time|bar)s?")
            ? "a number stands before it: 4 " + text
            : "a section is named as in its heading; how often comes last: 4 times");
  }

  private void noChart(Line line, Name word) {
    problems.tell(
        Code.UNKNOWN_NAME,
        line,
        word.span(),
        "“" + word.text() + "” is a chart; a chart plays grooves, steps and sheets",
        "name the sections that it plays");
  }

  /** The groove or step of a name, or one variation; null, and said so, if it is something else. */
  @Nullable Groove groove(Line line, Name word) {
    Section section = section(line, word);
    if (section instanceof Sheet sheet) {
      notAll(line);
      problems.tell(
          Code.UNKNOWN_NAME,
          line,
          word.span(),
          "“" + word.text() + "” is a sheet; here stands one section",
          "name one of its variations: " + sheet.name() + "-1");
    }
    return section instanceof Groove groove ? groove : null;
  }

  /** What is played of a section: of a sheet its variations. */
  static List<Groove> grooves(Section section) {
    return section instanceof Sheet sheet
        ? sheet.grooves()
        : section instanceof Groove groove ? List.of(groove) : List.of();
  }

  /** What a line says besides what it plays, and how often. */
  Chart.Extras extras(Line line, ChartStatement.Clauses said, List<Chart.Turn> turns) {
    List<Part> parts = new ArrayList<>();
    for (TargetRef target : said.without()) {
      Part part = part(line, target, turns);
      if (part != null) {
        parts.add(part);
      }
    }
    Name fill = said.fill();
    return new Chart.Extras(parts, fill == null ? null : fill(line, fill, turns));
  }

  private @Nullable Part part(Line line, TargetRef target, List<Chart.Turn> turns) {
    Part known = null;
    for (Chart.Turn turn : turns) {
      Part part = Parts.of(target, turn.groove().setting().kit());
      if (part != null && Lists.any(turn.groove().written(), part)) {
        return part;
      }
      known = known == null ? part : known;
    }
    if (turns.isEmpty() || line.equals(unsure)) {
      return known;
    }
    partial = true;
    if (known == null) {
      Kit kit = turns.get(0).groove().setting().kit();
      SurfaceMessages.unknownTarget(problems, line, target, kit);
      return null;
    }
    problems.tell(
        Code.NOTHING_THERE,
        line,
        target.span(),
        "nothing of " + target.words() + " is played here that could be left out",
        "name a part that the section has");
    return null;
  }

  private @Nullable Groove fill(Line line, Name word, List<Chart.Turn> turns) {
    Groove fill = groove(line, word);
    if (fill == null || turns.isEmpty()) {
      return fill;
    }
    Groove last = turns.get(turns.size() - 1).groove();
    Meter wanted = last.meter(last.bars());
    Meter own = fill.meter(1);
    if (wanted.equals(own)) {
      return fill;
    }
    partial = true;
    Span span = word.span();
    problems.add(
        problems
            .make(
                Code.BAR_LENGTH,
                line,
                span,
                "“" + word.text() + "” is in " + own + ", but the bar that it fills in " + wanted)
            .label(fill.heading(), "the fill")
            .help("choose a fill in " + wanted));
    return null;
  }
}
