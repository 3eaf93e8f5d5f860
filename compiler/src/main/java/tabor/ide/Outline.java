package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import tabor.compile.Compiled;
import tabor.source.Span;
import tabor.syntax.Heading;
import tabor.syntax.LaneBar;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.SectionKind;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SheetLine;
import tabor.syntax.Subject;
import tabor.syntax.Text;

/** The sections of a file, and how a selection grows in it. */
public final class Outline {
  private Outline() {}

  /** What a symbol is. */
  public enum Sort {
    GROOVE,
    STEP,
    SHEET,
    CHART,
    PATTERN,
    KIT,
    PLAYER,
    PART
  }

  /**
   * A section, or a part in it.
   *
   * @param name its name, or its keyword if it has none
   * @param detail its title, or nothing
   * @param sort what it is
   * @param whole the whole of it in the file, blank lines behind it left out
   * @param nameSpan where its name stands
   * @param parts the parts of a section
   */
  public record Symbol(
      String name, String detail, Sort sort, Span whole, Span nameSpan, List<Symbol> parts) {
    /** Copies the list. */
    public Symbol {
      parts = List.copyOf(parts);
    }
  }

  /** The symbols of a file in order. */
  public static List<Symbol> symbols(Compiled compiled) {
    List<Symbol> found = new ArrayList<>();
    for (SectionSyntax section : compiled.syntax()) {
      Line line = section.heading();
      if (line != null && line.statement() instanceof Heading heading) {
        found.add(symbol(compiled, section, line, heading));
      }
    }
    return found;
  }

  private static Symbol symbol(
      Compiled compiled, SectionSyntax section, Line line, Heading heading) {
    Span whole = whole(compiled, section);
    Text text = heading.title();
    String title = text == null ? null : text.value();
    String name =
        heading.name() != null
            ? heading.name().text()
            : title != null && !title.isBlank() ? title : "(no name)";
    Span nameSpan =
        compiled.span(heading.name() == null ? line.spot() : line.spot(heading.name().span()));
    List<Symbol> parts = new ArrayList<>();
    for (Line inside : section.lines()) {
      if (inside.statement() instanceof SheetLine varied
          && varied.line() instanceof PartStatement.Lane lane) {
        parts.add(part(compiled, inside, lane.subject()));
      } else if (inside.statement() instanceof PartStatement.Lane lane) {
        parts.add(part(compiled, inside, lane.subject()));
      } else if (inside.statement() instanceof PartStatement.Played played) {
        parts.add(part(compiled, inside, played.subject()));
      }
    }
    String detail = heading.name() == null || title == null ? "" : title;
    return new Symbol(name, detail, sort(heading.kind()), whole, nameSpan, parts);
  }

  private static Symbol part(Compiled compiled, Line line, Subject subject) {
    return new Symbol(
        subject.words(),
        "",
        Sort.PART,
        compiled.span(line.spot()),
        compiled.span(line.spot(subject.span())),
        List.of());
  }

  private static Sort sort(SectionKind kind) {
    return switch (kind) {
      case STEP -> Sort.STEP;
      case CHART -> Sort.CHART;
      case KIT -> Sort.KIT;
      case PATTERN -> Sort.PATTERN;
      case PLAYER -> Sort.PLAYER;
      case SHEET -> Sort.SHEET;
      case HEADER, GROOVE -> Sort.GROOVE;
    };
  }

  /** A section from its heading to its last line that says something. */
  static Span whole(Compiled compiled, SectionSyntax section) {
    int start = Cursor.startOf(compiled, section);
    int end = start;
    Line heading = section.heading();
    int from = start;
    if (heading != null) {
      from = start + heading.start();
      end = from + heading.statement().span().end();
    }
    for (Line line : section.lines()) {
      end = Math.max(end, start + line.start() + line.statement().span().end());
    }
    return new Span(Math.min(from, end), end);
  }

  /** What can be folded: sections, and texts over several lines. */
  public static List<Span> folds(Compiled compiled) {
    List<Span> found = new ArrayList<>();
    for (SectionSyntax section : compiled.syntax()) {
      Span whole = whole(compiled, section);
      if (section.heading() != null && isLong(compiled, whole)) {
        found.add(whole);
      }
      for (Line line : section.lines()) {
        Span span = compiled.span(line.spot());
        if (isLong(compiled, span)) {
          found.add(span);
        }
      }
    }
    return found;
  }

  private static boolean isLong(Compiled compiled, Span span) {
    String text = span.in(compiled.text());
    return text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0;
  }

  /** The ranges that a growing selection takes, from the smallest to the whole file. */
  public static List<Span> selection(Compiled compiled, int offset) {
    Cursor cursor = Cursor.at(compiled, offset);
    List<Span> found = new ArrayList<>();
    if (cursor.token() != null) {
      add(found, cursor.inFile(cursor.token().span()));
    }
    if (cursor.line() != null) {
      if (cursor.line().statement() instanceof PartStatement.Lane lane) {
        int local = offset - cursor.start() - cursor.line().start();
        for (LaneBar bar : lane.bars()) {
          if (bar.span().touches(local)) {
            bar.beats().stream()
                .filter(beat -> beat.span().touches(local))
                .findFirst()
                .ifPresent(beat -> add(found, cursor.inFile(beat.span())));
            add(found, cursor.inFile(bar.span()));
            break;
          }
        }
      }
      add(found, compiled.span(cursor.line().spot()));
    }
    if (cursor.section().heading() != null) {
      add(found, whole(compiled, cursor.section()));
    }
    add(found, new Span(0, compiled.text().length()));
    return found;
  }

  /** Each range must hold the one before it, and be larger. */
  private static void add(List<Span> found, Span next) {
    if (found.isEmpty()) {
      found.add(next);
      return;
    }
    Span last = found.get(found.size() - 1);
    if (next.holds(last) && !next.equals(last)) {
      found.add(next);
    }
  }
}
