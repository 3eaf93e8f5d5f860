package tabor.parse;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.antlr.v4.runtime.Token;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.groove.CountingWords;
import tabor.groove.PracticeLog;
import tabor.rhythm.BeatUnit;
import tabor.rhythm.Feel;
import tabor.rhythm.NoteValue;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.Num;
import tabor.syntax.Ref;
import tabor.syntax.SettingStatement;
import tabor.syntax.SettingStatement.Limit;
import tabor.syntax.SettingStatement.LimitKind;
import tabor.syntax.SettingStatement.MeterRef;
import tabor.syntax.SettingStatement.PageKind;
import tabor.syntax.SettingStatement.Shown;
import tabor.syntax.SettingStatement.Tempo;
import tabor.syntax.SettingStatement.Velocity;
import tabor.words.Language;

/** Trees of settings to records. */
final class SettingBuilder extends TaborParserBaseVisitor<SettingStatement> {
  private static final int MOST_COLUMNS = 3;

  /** More bars are narrower than the widest paper can show. */
  private static final int MOST_BARS = 16;

  /** A table of more rows is no longer one for a wall or a stick bag. */
  private static final int MOST_ROWS = 100;

  private final FirstProblem problems;
  private final NumberBuilder numbers;

  SettingBuilder(FirstProblem problems, NumberBuilder numbers) {
    this.problems = problems;
    this.numbers = numbers;
  }

  @Override
  public SettingStatement visitTitle(TaborParser.TitleContext line) {
    return new SettingStatement.Title(TextBuilder.title(line.words), Spans.of(line));
  }

  @Override
  public SettingStatement visitBy(TaborParser.ByContext line) {
    return new SettingStatement.By(TextBuilder.title(line.words), Spans.of(line));
  }

  @Override
  public SettingStatement visitUse(TaborParser.UseContext line) {
    return new SettingStatement.Use(TextBuilder.title(line.words), Spans.of(line));
  }

  @Override
  public SettingStatement visitTime(TaborParser.TimeContext line) {
    List<MeterRef> meters = new ArrayList<>(line.meters.size());
    for (TaborParser.MeterContext meter : line.meters) {
      meters.add(meter(meter));
    }
    return new SettingStatement.Time(meters, Spans.of(line));
  }

  private MeterRef meter(TaborParser.MeterContext meter) {
    int start = meter.signature.getStartIndex();
    String written = meter.signature.getText();
    int slash = written.indexOf('/');
    Num count = NumberBuilder.within(written.substring(0, slash), start);
    Num unit = NumberBuilder.within(written.substring(slash + 1), start + slash + 1);
    if (count.whole() < 1 || count.whole() > 64) {
      problems.report(
          count.span(),
          "a bar cannot have " + count.whole() + " beats above the line",
          "The upper number lies between 1 and 64");
    } else if (unit.whole() < 1 || unit.whole() > 64 || Integer.bitCount(unit.whole()) != 1) {
      problems.report(
          unit.span(),
          "no note value is written " + unit.whole() + " below the line",
          "The lower number is 1, 2, 4, 8, 16, 32 or 64");
    }
    List<Num> in = List.of();
    if (meter.equal != null) {
      in = List.of(numbers.whole(meter.equal, 1, 64, "the number of beats in a bar"));
    } else if (meter.sum != null) {
      in = parts(meter.sum, "a beat cannot be 0 long", "Each beat has 1 unit or more");
    }
    List<Num> grouped =
        meter.groups == null
            ? List.of()
            : parts(meter.groups, "a group cannot have 0 beats", "Each group has 1 beat or more");
    return new MeterRef(count, unit, in, grouped, Spans.of(meter));
  }

  private List<Num> parts(Token sum, String message, String help) {
    List<Num> parts = NumberBuilder.sum(sum);
    for (Num part : parts) {
      if (part.whole() < 1) {
        problems.report(part.span(), message, help);
      }
    }
    return parts;
  }

  @Override
  public SettingStatement visitTempoSetting(TaborParser.TempoSettingContext line) {
    return new SettingStatement.TempoSetting(tempo(line.speed), Spans.of(line));
  }

  /** A tempo, here and in charts. */
  Tempo tempo(TaborParser.TempoContext tempo) {
    Ref<BeatUnit> unit =
        tempo.unit == null
            ? null
            : new Ref<>(BeatUnit.of(tempo.unit.getText()).orElseThrow(), Spans.of(tempo.unit));
    Num speed = numbers.speed(tempo.speed);
    // MIDI holds no tempo below 3.6 quarters per minute.
    if (unit != null
        && unit.value().length().before(Time.of(1, 8))
        && speed.value().before(Time.of(16))) {
      problems.report(
          speed.span(),
          "a tempo of " + speed.value() + " sixteenths per minute is too slow",
          "It is 16 or more; count it in quarters or eighths");
    }
    return new Tempo(unit, speed, Spans.of(tempo));
  }

  @Override
  public SettingStatement visitFeel(TaborParser.FeelContext line) {
    if (line.unit == null) {
      return new SettingStatement.FeelSetting(null, null, Spans.of(line));
    }
    boolean eighths = line.unit.what.getType() == TaborLexer.EIGHTHS;
    Feel.Unit unit = eighths ? Feel.Unit.EIGHTHS : Feel.Unit.SIXTEENTHS;
    Num percent = null;
    if (line.share != null) {
      String written = line.share.getText();
      Time share = NumberBuilder.exact(written.substring(0, written.length() - 1));
      percent = new Num(share, Spans.of(line.share));
      if (share.before(Time.ONE) || Time.of(99).before(share)) {
        problems.report(
            percent.span(), "a swing cannot be " + written, "It lies between 1% and 99%");
      }
    }
    return new SettingStatement.FeelSetting(
        new Ref<>(unit, Spans.of(line.unit)), percent, Spans.of(line));
  }

  @Override
  public SettingStatement visitOn(TaborParser.OnContext line) {
    return new SettingStatement.On(NameBuilder.name(line.kit), Spans.of(line));
  }

  @Override
  public SettingStatement visitLevels(TaborParser.LevelsContext line) {
    List<Velocity> items = new ArrayList<>(line.items.size());
    Set<Integer> seen = new HashSet<>();
    for (TaborParser.VelocityContext item : line.items) {
      problems.once(!seen.add(item.what.getType()), Spans.of(item.what), item.what.getText());
      items.add(
          new Velocity(
              NameBuilder.level(item.what), numbers.whole(item.value, 1, 127, "a velocity")));
    }
    return new SettingStatement.LevelsSetting(items, Spans.of(line));
  }

  @Override
  public SettingStatement visitShow(TaborParser.ShowContext line) {
    if (line.none != null) {
      Ref<Shown> none = new Ref<>(Shown.NONE, Spans.of(line.none));
      return new SettingStatement.Show(List.of(none), Spans.of(line));
    }
    List<Ref<Shown>> items = new ArrayList<>(line.items.size());
    Set<Integer> seen = new HashSet<>();
    for (TaborParser.ShownContext item : line.items) {
      problems.once(!seen.add(item.what.getType()), Spans.of(item.what), item.what.getText());
      items.add(new Ref<>(shown(item.what.getType()), Spans.of(item)));
    }
    if (seen.contains(TaborLexer.CHANGES) && seen.contains(TaborLexer.NO_CHANGES)) {
      problems.report(
          Spans.of(line),
          "changes are shown and not shown on this line",
          "Keep changes or no-changes");
    }
    return new SettingStatement.Show(items, Spans.of(line));
  }

  private static Shown shown(int type) {
    return switch (type) {
      case TaborLexer.COUNTS -> Shown.COUNTS;
      case TaborLexer.STICKING -> Shown.STICKING;
      case TaborLexer.CHANGES -> Shown.CHANGES;
      default -> Shown.NO_CHANGES;
    };
  }

  @Override
  public SettingStatement visitLimits(TaborParser.LimitsContext line) {
    List<Limit> limits = new ArrayList<>(line.items.size());
    Set<Integer> seen = new HashSet<>();
    for (TaborParser.LimitContext item : line.items) {
      problems.once(
          !seen.add(item.what.word.getType()), Spans.of(item.what.word), item.what.word.getText());
      Num low = numbers.whole(item.low, 1, 9999, "a limit");
      Num high = numbers.whole(item.high, 1, 9999, "a limit");
      if (high.whole() < low.whole()) {
        Span span = Spans.between(item.low, item.high);
        problems.report(
            SyntaxProblem.of(
                    span,
                    "the extreme figure is below the comfortable one",
                    "Write the smaller number first")
                .fix("Turn them round", span, item.high.getText() + " to " + item.low.getText()));
      }
      LimitKind kind = kind(item.what.word.getType());
      Ref<NoteValue> value = null;
      if (item.value != null) {
        value = new Ref<>(NoteValue.of(item.value.getText()).orElseThrow(), Spans.of(item.value));
        if (kind == LimitKind.REACH) {
          problems.report(
              Spans.of(item), "a reach has no note value", "It is written reach 200 to 300");
        }
      }
      limits.add(new Limit(new Ref<>(kind, Spans.of(item.what)), value, low, high));
    }
    return new SettingStatement.LimitsSetting(
        NameBuilder.nameOrNull(line.who), limits, Spans.of(line));
  }

  private static LimitKind kind(int type) {
    return switch (type) {
      case TaborLexer.HANDS -> LimitKind.HANDS;
      case TaborLexer.FEET -> LimitKind.FEET;
      case TaborLexer.DOUBLES -> LimitKind.DOUBLES;
      default -> LimitKind.REACH;
    };
  }

  @Override
  public SettingStatement visitPage(TaborParser.PageContext line) {
    Token kindAt = line.value == null ? line.getStop() : line.value;
    PageKind kind;
    Num number = null;
    if (line.paper != null) {
      kind = line.paper.getType() == TaborLexer.A4 ? PageKind.A4 : PageKind.LETTER;
    } else if (line.large != null) {
      kind = PageKind.LARGE;
    } else if (line.new_ != null) {
      kind = PageKind.NEW;
    } else if (line.bars_ != null) {
      kind = PageKind.BARS;
      number = numbers.whole(line.value, 1, MOST_BARS, "the number of bars a line");
    } else {
      kind = PageKind.COLUMNS;
      number = numbers.whole(line.value, 1, MOST_COLUMNS, "the number of columns");
    }
    return new SettingStatement.Page(
        new Ref<>(kind, Spans.between(kindAt, line.getStop())), number, Spans.of(line));
  }

  @Override
  public SettingStatement visitGoal(TaborParser.GoalContext line) {
    return new SettingStatement.Goal(TextBuilder.title(line.words), Spans.of(line));
  }

  @Override
  public SettingStatement visitTeacher(TaborParser.TeacherContext line) {
    return new SettingStatement.Teacher(TextBuilder.prose(line.words), Spans.of(line));
  }

  @Override
  public SettingStatement visitLog(TaborParser.LogContext line) {
    boolean days = line.unit.getType() == TaborLexer.DAYS || line.unit.getType() == TaborLexer.DAY;
    return new SettingStatement.Log(
        numbers.whole(
            line.value, 1, MOST_ROWS, days ? "the number of days" : "the number of weeks"),
        new Ref<>(days ? PracticeLog.Unit.DAYS : PracticeLog.Unit.WEEKS, Spans.of(line.unit)),
        Spans.of(line));
  }

  @Override
  public SettingStatement visitSaySyllables(TaborParser.SaySyllablesContext line) {
    int division =
        switch (line.division.getType()) {
          case TaborLexer.TWOS -> 2;
          case TaborLexer.THREES -> 3;
          default -> 4;
        };
    List<Ref<String>> syllables = new ArrayList<>(line.syllables.size());
    for (TaborParser.SyllableContext syllable : line.syllables) {
      String word = syllable.getText().replace('+', '&');
      if (!word.equals("&") && !word.codePoints().allMatch(SettingBuilder::isSaid)) {
        problems.report(
            Spans.of(syllable),
            "`" + syllable.getText() + "` is no word that can be counted with",
            "A syllable is made of letters");
      }
      syllables.add(new Ref<>(CountingWords.plain(word), Spans.of(syllable)));
    }
    if (syllables.size() != division - 1) {
      problems.report(
          Spans.of(line),
          "a beat in "
              + line.division.getText().replaceFirst("s$", "")
              + " needs "
              + (division == 2 ? "1 syllable" : division - 1 + " syllables")
              + " after its number",
          switch (division) {
            case 2 -> "It is written `say twos &`";
            case 3 -> "It is written `say threes trip let`";
            default -> "It is written `say fours e & a`";
          });
    }
    return new SettingStatement.Say(
        null, new Ref<>(division, Spans.of(line.division)), syllables, Spans.of(line));
  }

  private static boolean isSaid(int letter) {
    int type = Character.getType(letter);
    // Signs over and under letters belong to them.
    boolean mark = type == Character.NON_SPACING_MARK || type == Character.COMBINING_SPACING_MARK;
    return Character.isLetter(letter)
        || mark
        || letter == '-'
        || letter == '\''
        || letter == '\u2019';
  }

  @Override
  public SettingStatement visitSayThrough(TaborParser.SayThroughContext line) {
    return new SettingStatement.Say(
        new Ref<>(CountingWords.Named.EIGHTHS_THROUGH, Spans.of(line)),
        null,
        List.of(),
        Spans.of(line));
  }

  @Override
  public SettingStatement visitSaySet(TaborParser.SaySetContext line) {
    return new SettingStatement.Say(
        new Ref<>(CountingWords.Named.of(line.set.getText()).orElseThrow(), Spans.of(line.set)),
        null,
        List.of(),
        Spans.of(line));
  }

  @Override
  public SettingStatement visitLanguage(TaborParser.LanguageContext line) {
    return new SettingStatement.LanguageSetting(
        new Ref<>(Language.of(line.word.getText()).orElseThrow(), Spans.of(line.word)),
        Spans.of(line));
  }
}
