package tabor.format;

import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tabor.rhythm.Time;
import tabor.syntax.ChartStatement;
import tabor.syntax.CountWord;
import tabor.syntax.Edit;
import tabor.syntax.Heading;
import tabor.syntax.KitStatement;
import tabor.syntax.Num;
import tabor.syntax.PartStatement;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;
import tabor.syntax.Text;
import tabor.syntax.Word;

/**
 * One statement to its canonical line: one space between words, each thing in its one spelling.
 * Reading the line again gives the same tree, places apart.
 */
public final class Printer {
  private Printer() {}

  /**
   * The line of a statement, without indentation. A text in triple quotes takes several lines,
   * which are indented as in a section.
   *
   * @throws IllegalArgumentException for a broken line or heading: it is not known what it says
   */
  public static String print(Statement statement) {
    if (statement instanceof Heading heading) {
      return heading.match(new HeadingPrinter());
    }
    if (statement instanceof SettingStatement setting) {
      return setting.match(new SettingPrinter());
    }
    if (statement instanceof KitStatement line) {
      return line.match(new KitPrinter());
    }
    if (statement instanceof PartStatement line) {
      return line.match(new PartPrinter());
    }
    if (statement instanceof Edit edit) {
      return edit.match(new EditPrinter());
    }
    if (statement instanceof ChartStatement line) {
      return line.match(new ChartPrinter());
    }
    if (statement instanceof Statement.Prose prose) {
      return "text " + quoted(prose.text());
    }
    throw new IllegalArgumentException("a broken line has no other form: " + statement.span());
  }

  /** A text in its quotes. */
  static String quoted(Text text) {
    String value = text.value();
    if (!text.triple()) {
      return '"' + value + '"';
    }
    boolean oneLine =
        value.indexOf('\n') < 0
            && !value.isEmpty()
            && !isQuote(value.charAt(0))
            && !isQuote(value.charAt(value.length() - 1));
    if (oneLine) {
      return "\"\"\"" + value + "\"\"\"";
    }
    StringBuilder lines = new StringBuilder("\"\"\"\n");
    for (String line : value.split("\n", -1)) {
      lines.append(line.isEmpty() ? "" : "    " + line).append('\n');
    }
    return lines.append("  \"\"\"").toString();
  }

  private static boolean isQuote(char c) {
    return c == '"' || c == '\u201C' || c == '\u201D' || c == '\u201E';
  }

  /** An exact number: all that can be written have a finite decimal form. */
  static String number(Num num) {
    Time value = num.value();
    if (value.isWhole()) {
      return Long.toString(value.num());
    }
    long scale = 1;
    int digits = 0;
    while (scale % value.den() != 0) {
      scale *= 10;
      digits++;
    }
    String all = Long.toString(value.num() * (scale / value.den()));
    String padded = "0".repeat(Math.max(0, digits + 1 - all.length())) + all;
    int point = padded.length() - digits;
    return padded.substring(0, point) + "." + padded.substring(point);
  }

  /** {@code 1 bar}, {@code 2 bars}. */
  static String counted(Num num, String singular) {
    return number(num) + " " + singular + (num.whole() == 1 ? "" : "s");
  }

  static String words(List<Word> words, String between) {
    return words.stream().map(Word::text).collect(Collectors.joining(between));
  }

  static String count(CountWord count) {
    return count.count().toString();
  }

  /** A part that is left out where there is nothing to say. */
  static String optional(String before, @Nullable Word word) {
    return word == null ? "" : before + word.text();
  }

  static String tempo(SettingStatement.Tempo tempo) {
    return (tempo.value() == null ? "" : tempo.value().text() + " = ") + number(tempo.perMinute());
  }

  private static final class HeadingPrinter implements Heading.Cases<String> {
    private static String title(@Nullable Text title) {
      return title == null ? "" : " " + quoted(title);
    }

    @Override
    public String pattern(Heading.Pattern heading) {
      return "pattern " + heading.name().text() + " : " + BeatPrinter.elements(heading.places());
    }

    @Override
    public String kit(Heading.Kit heading) {
      return "kit " + heading.name().text() + optional(" like ", heading.like());
    }

    @Override
    public String groove(Heading.Groove heading) {
      return "groove " + heading.name().text() + title(heading.title());
    }

    @Override
    public String step(Heading.Step heading) {
      return "step"
          + optional(" ", heading.name())
          + title(heading.title())
          + optional(" from ", heading.from());
    }

    @Override
    public String chart(Heading.Chart heading) {
      return "chart " + heading.name().text() + title(heading.title());
    }

    @Override
    public String broken(Heading.Faulty heading) {
      throw new IllegalArgumentException("a broken heading has no other form: " + heading.span());
    }
  }

  private static final class KitPrinter implements KitStatement.Cases<String> {
    @Override
    public String surface(KitStatement.NewSurface line) {
      return "surface "
          + line.name().text()
          + optional(" letter ", line.letter())
          + (line.key() == null ? "" : " key " + number(line.key()))
          + optional(" staff ", line.staff())
          + optional(" head ", line.head());
    }

    @Override
    public String letter(KitStatement.Letter line) {
      return "letter " + line.letter().text() + " = " + line.surface().text();
    }

    @Override
    public String without(KitStatement.Without line) {
      return "without " + line.surface().text() + optional(" plays ", line.plays());
    }

    @Override
    public String leftHanded(KitStatement.LeftHanded line) {
      return "left-handed";
    }

    @Override
    public String place(KitStatement.Place line) {
      return "place "
          + line.surface().text()
          + " "
          + number(line.distance())
          + " cm "
          + number(line.degrees())
          + " degrees"
          + optional(" ", line.side())
          + (line.height() == null ? "" : " " + number(line.height()) + " cm high");
    }
  }

  private static final class ChartPrinter implements ChartStatement.Cases<String> {
    @Override
    public String countIn(ChartStatement.CountIn line) {
      return "count-in " + counted(line.bars(), "bar");
    }

    @Override
    public String click(ChartStatement.Click line) {
      return "click " + line.how().text();
    }

    @Override
    public String play(ChartStatement.Play line) {
      return "play "
          + words(line.sections(), " ")
          + (line.times() == null ? "" : " " + number(line.times()) + " times")
          + (line.tempo() == null ? "" : " at tempo " + tempo(line.tempo()));
    }

    @Override
    public String rest(ChartStatement.Rest line) {
      return "rest " + counted(line.bars(), "bar");
    }

    @Override
    public String climb(ChartStatement.Climb line) {
      return "climb "
          + line.section().text()
          + " from "
          + number(line.from())
          + " to "
          + number(line.to())
          + " by "
          + number(line.by())
          + " every "
          + number(line.every())
          + (line.unit().text().startsWith("bar") ? " bars" : " times");
    }
  }

  private static final class PartPrinter implements PartStatement.Cases<String> {
    @Override
    public String lane(PartStatement.Lane line) {
      return BeatPrinter.label(line)
          + " : "
          + line.bars().stream().map(BeatPrinter::bar).collect(Collectors.joining(" | "));
    }

    @Override
    public String played(PartStatement.Played line) {
      String subject = line.subject().text();
      boolean several = subject.equals("hands") || subject.equals("feet");
      return subject
          + (several ? " play " : " plays ")
          + line.pattern().text()
          + (line.strokes() == null ? "" : " " + number(line.strokes()))
          + (line.places() == null ? "" : " " + number(line.places()))
          + (line.leftLead() ? " left-lead" : "")
          + " in "
          + Values.plural(line.value().text());
    }

    @Override
    public String next(PartStatement.Next line) {
      return "next";
    }

    @Override
    public String pickup(PartStatement.Pickup line) {
      return "pickup " + counted(line.beats(), "beat");
    }

    @Override
    public String bars(PartStatement.Bars line) {
      return "bars " + number(line.bars());
    }
  }
}
