package tabor.resolve;

import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.source.Span;
import tabor.syntax.Line;
import tabor.syntax.Name;

/** Names of variations: {@code kicks-3} is the third of the sheet {@code kicks}. */
public final class SheetNames {
  private SheetNames() {}

  /**
   * A name taken apart.
   *
   * @param sheet what stands before the last hyphen
   * @param number the number behind it, 1 or more
   */
  public record Numbered(String sheet, int number) {}

  /** A name that could be a variation's; null for any other. */
  public static @Nullable Numbered of(String name) {
    int hyphen = name.lastIndexOf('-');
    String digits = name.substring(hyphen + 1);
    boolean number = hyphen > 0 && digits.matches("[1-9][0-9]{0,8}");
    return number ? new Numbered(name.substring(0, hyphen), Integer.parseInt(digits)) : null;
  }

  /**
   * Says that a name is no section's: past the last of a sheet, what coincided there.
   *
   * @param above true where only sections above the line can be named
   */
  static Diagnostic unknown(Scope scope, Problems problems, Line line, Name name, boolean above) {
    Span span = name.span();
    Numbered numbered = of(name.text());
    Resolved found = numbered == null ? null : scope.section(numbered.sheet());
    if (numbered != null && found != null && found.section() instanceof Sheet sheet) {
      int last = sheet.variations().size();
      String many = last == 1 ? "1 variation" : last + " variations";
      String help =
          last == 1
              ? "name “" + sheet.name() + "-1”"
              : "the last is “" + sheet.name() + "-" + last + "”";
      String coincided = coincided(sheet);
      return problems
          .make(
              Code.UNKNOWN_NAME,
              line,
              span,
              "“" + sheet.name() + "” has " + many + ", so there is no “" + name.text() + "”")
          .help(coincided.isEmpty() ? help : help + "; " + coincided)
          .label(sheet.heading(), "the sheet");
    }
    Diagnostic plain =
        problems.make(
            Code.UNKNOWN_NAME,
            line,
            span,
            "there is no section “" + name.text() + (above ? "” above" : "”"));
    return Problems.unknown(
        above ? plain.help("only a section that stands above can be named here") : plain,
        line.spot(span),
        scope.near(Scope.Kind.SECTION, name.text()));
  }

  /** Says that a section is neither a groove nor a step; {@code plain} says where. */
  static Diagnostic notOne(Diagnostic plain, Section section) {
    boolean sheet = section instanceof Sheet;
    return Diagnostic.of(
            plain.code(),
            plain.spot(),
            "“"
                + section.name()
                + (sheet ? "” is a sheet" : "” is a chart")
                + ", not a groove or a step")
        .in(plain.place())
        .help(
            sheet
                ? "name one of its variations: " + section.name() + "-1"
                : "name a groove or a step");
  }

  /** {@code kicks-1 was written more than once}; nothing where no two coincided. */
  private static String coincided(Sheet sheet) {
    StringBuilder words = new StringBuilder();
    for (Sheet.Variation variation : sheet.variations()) {
      int again = variation.coincided().size();
      if (again > 0) {
        words
            .append(words.length() == 0 ? "" : ", ")
            .append("“")
            .append(variation.groove().name())
            .append("” was written ")
            .append(again == 1 ? "twice" : again + 1 + " times");
      }
    }
    return words.length() == 0 ? "" : words.append(" and counts once").toString();
  }
}
