package tabor.format;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tabor.kit.StaffPlace;
import tabor.rhythm.Time;
import tabor.syntax.ChartStatement;
import tabor.syntax.Edit;
import tabor.syntax.Heading;
import tabor.syntax.KitStatement;
import tabor.syntax.LimbRef;
import tabor.syntax.Name;
import tabor.syntax.Num;
import tabor.syntax.PartStatement;
import tabor.syntax.PlayerStatement;
import tabor.syntax.Ref;
import tabor.syntax.SettingStatement;
import tabor.syntax.SheetLine;
import tabor.syntax.Statement;
import tabor.syntax.Subject;
import tabor.syntax.TargetRef;
import tabor.syntax.Text;

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
      return heading(heading);
    }
    if (statement instanceof SettingStatement setting) {
      return setting.match(new SettingPrinter());
    }
    if (statement instanceof KitStatement line) {
      return line.match(new KitPrinter());
    }
    if (statement instanceof PartStatement line) {
      return line.match(new PartPrinter(List.of()));
    }
    if (statement instanceof Edit edit) {
      return edit.match(new EditPrinter());
    }
    if (statement instanceof ChartStatement line) {
      return line.match(new ChartPrinter());
    }
    if (statement instanceof PlayerStatement line) {
      return line.match(new PlayerPrinter());
    }
    if (statement instanceof SheetLine line) {
      return sheetLine(line);
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
    BigDecimal upper = BigDecimal.valueOf(value.num());
    return upper.divide(BigDecimal.valueOf(value.den())).toPlainString();
  }

  /** {@code 1 bar}, {@code 2 bars}. */
  static String counted(Num num, String singular) {
    return number(num) + " " + singular + (num.whole() == 1 ? "" : "s");
  }

  /** A part that is left out where there is nothing to say. */
  static String optional(String before, @Nullable Name name) {
    return name == null ? "" : before + name.text();
  }

  static String tempo(SettingStatement.Tempo tempo) {
    return (tempo.unit() == null ? "" : tempo.unit().value().word() + " = ")
        + number(tempo.perMinute());
  }

  /** A limb where a bare side is a hand: {@code right}, {@code right foot}. */
  static String limb(LimbRef limb) {
    return limb.limb().isHand() ? limb.limb().isRight() ? "right" : "left" : limb.words();
  }

  static String target(TargetRef target) {
    return target instanceof TargetRef.OfLimb of ? limb(of.limb()) : target.words();
  }

  static String targets(List<TargetRef> targets) {
    return targets.stream().map(Printer::target).collect(Collectors.joining(", "));
  }

  static String subject(Subject subject) {
    return subject instanceof Subject.OfLimb of ? limb(of.limb()) : subject.words();
  }

  /** True for what is said in the plural: {@code hands play}. */
  static boolean isPair(TargetRef who) {
    return who instanceof TargetRef.OfGroup;
  }

  private static String heading(Heading heading) {
    if (heading instanceof Heading.Faulty) {
      throw new IllegalArgumentException("a broken heading has no other form: " + heading.span());
    }
    if (heading instanceof Heading.Pattern pattern) {
      return "pattern " + pattern.name().text() + " : " + BeatPrinter.elements(pattern.places());
    }
    if (heading instanceof Heading.Kit kit) {
      return "kit " + kit.name().text() + optional(" like ", kit.like());
    }
    Text title = heading.title();
    return heading.kind().word()
        + optional(" ", heading.name())
        + (title == null ? "" : " " + quoted(title))
        + optional(" from ", heading.from());
  }

  private static String sheetLine(SheetLine line) {
    Statement inner = line.line();
    return (line.along() ? "and" : "each")
        + (line.bars() == null ? "" : " " + counted(line.bars(), "bar"))
        + " "
        + (inner instanceof PartStatement part
            ? part.match(new PartPrinter(line.others()))
            : print(inner))
        + (line.caption() == null ? "" : " " + quoted(line.caption()));
  }

  private static final class KitPrinter implements KitStatement.Cases<String> {
    @Override
    public String surface(KitStatement.NewSurface line) {
      return "surface "
          + line.name().name()
          + (line.letter() == null ? "" : " letter " + line.letter().value())
          + (line.key() == null ? "" : " key " + number(line.key()))
          + (line.staff() == null ? "" : " staff " + staff(line.staff().value()))
          + (line.head() == null ? "" : " head " + line.head().value().word());
    }

    private static String staff(StaffPlace place) {
      return place.toString().toLowerCase(Locale.ROOT);
    }

    @Override
    public String letter(KitStatement.Letter line) {
      return "letter " + line.letter().value() + " = " + line.surface().name();
    }

    @Override
    public String without(KitStatement.Without line) {
      return "without "
          + line.surface().name()
          + (line.plays() == null ? "" : " plays " + line.plays().name());
    }

    @Override
    public String leftHanded(KitStatement.LeftHanded line) {
      return "left-handed";
    }

    @Override
    public String place(KitStatement.Place line) {
      return "place "
          + line.surface().name()
          + " "
          + number(line.distance())
          + " cm "
          + number(line.degrees())
          + " degrees"
          + side(line.side())
          + (line.height() == null ? "" : " " + number(line.height()) + " cm high");
    }
  }

  private static String side(@Nullable Ref<KitStatement.Side> side) {
    return side == null ? "" : side.value() == KitStatement.Side.LEFT ? " left" : " right";
  }

  /** Parts and how they are laid out. */
  private record PartPrinter(List<SheetLine.Pattern> others)
      implements PartStatement.Cases<String> {
    @Override
    public String lane(PartStatement.Lane line) {
      return BeatPrinter.label(line)
          + " : "
          + line.bars().stream().map(BeatPrinter::bar).collect(Collectors.joining(" | "));
    }

    @Override
    public String played(PartStatement.Played line) {
      boolean several =
          line.subject() instanceof Subject.Hands || line.subject() instanceof Subject.Feet;
      return subject(line.subject())
          + (several ? " play " : " plays ")
          + patterns(line, others)
          + " in "
          + line.value().value().word();
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

    @Override
    public String blankBars(PartStatement.BlankBars line) {
      return "blank " + counted(line.bars(), "bar");
    }

    @Override
    public String blankPart(PartStatement.BlankPart line) {
      return "blank " + (line.targets().isEmpty() ? "sticking" : targets(line.targets()));
    }

    /** The pattern of a played part, with the others of its list. */
    private static String patterns(PartStatement.Played first, List<SheetLine.Pattern> others) {
      return Stream.concat(
              Stream.of(new SheetLine.Pattern(first.pattern(), first.leftLead())), others.stream())
          .map(one -> pattern(one.source()) + (one.leftLead() ? " left-lead" : ""))
          .collect(Collectors.joining(", "));
    }

    private static String pattern(PartStatement.PatternSource pattern) {
      return pattern instanceof PartStatement.Spread spread
          ? "spread " + number(spread.strokes()) + " over " + number(spread.places())
          : ((PartStatement.Named) pattern).name().text();
    }
  }

  /** Lines of players. */
  private static final class PlayerPrinter implements PlayerStatement.Cases<String> {
    @Override
    public String openHanded(PlayerStatement.OpenHanded line) {
      return "open-handed";
    }

    @Override
    public String tempoShare(PlayerStatement.TempoShare line) {
      return "tempo " + number(line.percent()) + "%";
    }

    @Override
    public String sections(PlayerStatement.Sections line) {
      return "sections "
          + line.ranges().stream().map(PlayerPrinter::range).collect(Collectors.joining(" "));
    }

    private static String range(PlayerStatement.Range range) {
      return range.first() != null
          ? "first " + number(range.first())
          : optional("", range.from()) + optional(" to ", range.to());
    }
  }
}
