package tabor.parse;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.Num;
import tabor.syntax.SettingStatement;
import tabor.syntax.SettingStatement.Limit;
import tabor.syntax.SettingStatement.Named;
import tabor.syntax.SettingStatement.Tempo;
import tabor.syntax.Word;

/** Trees of settings to records. */
final class SettingBuilder extends TaborParserBaseVisitor<SettingStatement> {
  private final Leaves leaves;

  SettingBuilder(Leaves leaves) {
    this.leaves = leaves;
  }

  @Override
  public SettingStatement visitTitle(TaborParser.TitleContext line) {
    return new SettingStatement.Title(Leaves.title(line.words), Spans.of(line));
  }

  @Override
  public SettingStatement visitBy(TaborParser.ByContext line) {
    return new SettingStatement.By(Leaves.title(line.words), Spans.of(line));
  }

  @Override
  public SettingStatement visitUse(TaborParser.UseContext line) {
    return new SettingStatement.Use(Leaves.title(line.words), Spans.of(line));
  }

  @Override
  public SettingStatement visitTime(TaborParser.TimeContext line) {
    Span span = Spans.of(line.meter);
    String written = line.meter.getText();
    int slash = written.indexOf('/');
    Num count = part(written.substring(0, slash), span.start());
    Num unit = part(written.substring(slash + 1), span.start() + slash + 1);
    if (count.whole() < 1 || count.whole() > 64) {
      leaves.report(
          count.span(),
          "a bar cannot have " + count.whole() + " beats above the line",
          "The upper number lies between 1 and 64");
    } else if (unit.whole() < 1 || unit.whole() > 64 || Integer.bitCount(unit.whole()) != 1) {
      leaves.report(
          unit.span(),
          "no note value is written " + unit.whole() + " below the line",
          "The lower number is 1, 2, 4, 8, 16, 32 or 64");
    }
    List<Num> in = new ArrayList<>();
    if (line.equal != null) {
      in.add(leaves.whole(line.equal, 1, 64, "the number of beats in a bar"));
    } else if (line.sum != null) {
      int at = Spans.of(line.sum).start();
      for (String item : line.sum.getText().split("\\+", -1)) {
        Num beat = part(item, at);
        if (beat.whole() < 1) {
          leaves.report(beat.span(), "a beat cannot be 0 long", "Each beat has 1 unit or more");
        }
        in.add(beat);
        at += item.length() + 1;
      }
    }
    return new SettingStatement.MeterSetting(count, unit, in, Spans.of(line));
  }

  private static Num part(String digits, int start) {
    return new Num(Time.of(Leaves.digits(digits)), new Span(start, start + digits.length()));
  }

  @Override
  public SettingStatement visitTempoSetting(TaborParser.TempoSettingContext line) {
    return new SettingStatement.TempoSetting(tempo(line.speed), Spans.of(line));
  }

  /** A tempo, here and in charts. */
  Tempo tempo(TaborParser.TempoContext tempo) {
    Word value =
        tempo.value == null
            ? null
            : leaves.listed(tempo.value, Lists.TEMPO_VALUES, "a note value that a tempo counts");
    Num speed = leaves.speed(tempo.speed);
    if (value != null && value.text().endsWith("sixteenth") && speed.whole() > 0) {
      // MIDI holds no tempo below 3.6 quarters a minute.
      if (speed.value().before(Time.of(16))) {
        leaves.report(
            speed.span(),
            "a tempo of " + speed.value() + " sixteenths a minute is too slow",
            "It is 16 or more; count it in quarters or eighths");
      }
    }
    return new Tempo(value, speed, Spans.of(tempo));
  }

  @Nullable Tempo tempoOrNull(TaborParser.@Nullable TempoContext tempo) {
    return tempo == null ? null : tempo(tempo);
  }

  @Override
  public SettingStatement visitFeel(TaborParser.FeelContext line) {
    Word style = leaves.listed(line.style, Lists.FEELS, "a feel");
    boolean swing = style.text().equals("swing");
    if (swing && line.unit == null) {
      leaves.report(
          style.span(),
          "a swing needs what is swung and how far",
          "Write for example feel swing eighths 62% or feel swing eighths as triplets");
    } else if (!swing && line.unit != null) {
      leaves.report(
          Spans.of(line.unit), "nothing follows `feel straight`", "Leave out the rest of the line");
    }
    Word unit =
        line.unit == null ? null : leaves.listed(line.unit, Lists.SWUNG, "a value that is swung");
    if (line.as != null) {
      leaves.listed(line.as, List.of("triplets"), "a way to swing");
    }
    Num percent = null;
    if (line.share != null) {
      String written = line.share.getText();
      percent =
          new Num(Leaves.exact(written.substring(0, written.length() - 1)), Spans.of(line.share));
      if (percent.value().before(Time.ONE) || Time.of(99).before(percent.value())) {
        leaves.report(percent.span(), "a swing cannot be " + written, "It lies between 1% and 99%");
      }
    }
    return new SettingStatement.FeelSetting(unit, percent, Spans.of(line));
  }

  @Override
  public SettingStatement visitOn(TaborParser.OnContext line) {
    return new SettingStatement.On(Leaves.name(line.kit), Spans.of(line));
  }

  @Override
  public SettingStatement visitLevels(TaborParser.LevelsContext line) {
    List<Named> items = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (TaborParser.LevelItemContext item : line.items) {
      Word name = leaves.listed(item.what, Lists.LEVEL_NAMES, "a level");
      once(seen, name);
      items.add(new Named(name, leaves.whole(item.value, 1, 127, "a velocity")));
    }
    return new SettingStatement.LevelsSetting(items, Spans.of(line));
  }

  private void once(Set<String> seen, Word word) {
    if (!seen.add(word.text())) {
      leaves.report(
          word.span(), "`" + word.text() + "` is said twice on this line", "Leave one of them out");
    }
  }

  @Override
  public SettingStatement visitShow(TaborParser.ShowContext line) {
    List<Word> words = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (Token item : line.items) {
      Word word = leaves.listed(item, Lists.SHOWN, "something that is shown");
      once(seen, word);
      words.add(word);
    }
    for (Word word : words) {
      if (word.text().equals("none") && words.size() > 1) {
        leaves.report(word.span(), "`none` stands alone", "Write show none, or what is shown");
      }
    }
    return new SettingStatement.Show(words, Spans.of(line));
  }

  @Override
  public SettingStatement visitLimits(TaborParser.LimitsContext line) {
    List<Limit> limits = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (TaborParser.LimitItemContext item : line.items) {
      Word what =
          item.what.getType() == TaborLexer.NAME
              ? leaves.listed(item.what, Lists.LIMITS, "a limit")
              : Leaves.word(item.what);
      once(seen, what);
      Num low = leaves.whole(item.low, 1, 9999, "a limit");
      Num high = leaves.whole(item.high, 1, 9999, "a limit");
      if (high.whole() < low.whole()) {
        leaves.report(
            Spans.between(item.low, item.high),
            "the extreme figure is below the comfortable one",
            "Write the smaller number first");
      }
      limits.add(new Limit(what, low, high));
    }
    return new SettingStatement.LimitsSetting(Leaves.nameOrNull(line.who), limits, Spans.of(line));
  }
}
