package tabor.format;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tabor.syntax.PartStatement;
import tabor.syntax.SheetLine;
import tabor.syntax.Statement;

/** Lines of sheets to text. */
final class SheetPrinter {
  private SheetPrinter() {}

  static String line(SheetLine line) {
    return keyword(line)
        + " "
        + inner(line)
        + (line.caption() == null ? "" : " " + Printer.quoted(line.caption()));
  }

  /** {@code each}, {@code each 2 bars}, {@code and}. */
  static String keyword(SheetLine line) {
    return (line.along() ? "and" : "each")
        + (line.bars() == null ? "" : " " + Plurals.counted(line.bars(), "bar"));
  }

  private static String inner(SheetLine line) {
    Statement inner = line.line();
    return inner instanceof PartStatement part
        ? part.match(new Printer.PartPrinter(line.others()))
        : Printer.print(inner);
  }

  /** The pattern of a played part, with the others of its list. */
  static String patterns(PartStatement.Played first, List<SheetLine.Pattern> others) {
    return Stream.concat(
            Stream.of(new SheetLine.Pattern(first.pattern(), first.leftLead())), others.stream())
        .map(one -> pattern(one.source()) + (one.leftLead() ? " left-lead" : ""))
        .collect(Collectors.joining(", "));
  }

  private static String pattern(PartStatement.PatternSource pattern) {
    if (pattern instanceof PartStatement.Spread spread) {
      return "spread "
          + Printer.number(spread.strokes())
          + " over "
          + Printer.number(spread.places());
    }
    return ((PartStatement.Named) pattern).name().text();
  }
}
