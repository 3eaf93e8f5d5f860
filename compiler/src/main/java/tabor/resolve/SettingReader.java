package tabor.resolve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Levels;
import tabor.kit.Limits;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.Line;
import tabor.syntax.Num;
import tabor.syntax.SettingStatement;
import tabor.syntax.SettingStatement.Named;
import tabor.syntax.Word;

/** Reads what header and sections say about meter, tempo, feel, levels and the like. */
final class SettingReader {
  private static final Time FASTEST = Time.of(1000);

  private final Problems problems;

  SettingReader(Problems problems) {
    this.problems = problems;
  }

  /** The meter that a line names; null, and said so, if it does not add up. */
  @Nullable Meter meter(Line line, SettingStatement.MeterSetting setting) {
    int count = setting.count().whole();
    int unit = setting.unit().whole();
    if (count < 1 || count > 64) {
      outOfRange(line, setting.count(), "a bar has 1 to 64 units");
      return null;
    }
    if (unit < 1 || unit > 64 || Integer.bitCount(unit) != 1) {
      outOfRange(line, setting.unit(), "the lower number is 1, 2, 4, 8, 16, 32 or 64");
      return null;
    }
    List<Num> in = setting.in();
    if (in.isEmpty()) {
      return Meter.of(count, unit);
    }
    List<Time> beats = new ArrayList<>();
    if (in.size() == 1) {
      int parts = in.get(0).whole();
      if (parts < 1 || parts > 64) {
        outOfRange(line, in.get(0), "a bar is divided into 1 to 64 beats");
        return null;
      }
      for (int i = 0; i < parts; i++) {
        beats.add(Time.of(count, unit).over(parts));
      }
    } else {
      for (Num part : in) {
        if (part.whole() < 1 || part.whole() > 64) {
          outOfRange(line, part, "a beat has 1 to 64 units");
          return null;
        }
        beats.add(Time.of(part.whole(), unit));
      }
    }
    Span span = in.get(0).span().to(in.get(in.size() - 1).span());
    Time sum = beats.stream().reduce(Time.ZERO, Time::plus);
    if (!sum.equals(Time.of(count, unit))) {
      problems.add(
          problems
              .make(
                  Code.BAR_LENGTH,
                  line,
                  span,
                  "these beats are "
                      + sum.times(unit)
                      + " units long, but a bar of "
                      + count
                      + "/"
                      + unit
                      + " has "
                      + count)
              .help("make the numbers add up to " + count));
      return null;
    }
    for (Time beat : beats) {
      if (!Meter.isPlain(beat) && !Meter.isDotted(beat)) {
        problems.add(
            problems
                .make(
                    Code.BAR_LENGTH,
                    line,
                    span,
                    "a beat of " + beat + " of a whole note is no note value")
                .help("a beat is a plain or a dotted note: 1, 2, 3, 4, 6 … units"));
        return null;
      }
    }
    return new Meter(count, unit, beats);
  }

  /** The tempo that a line names, in a meter; null, and said so, if it is out of range. */
  @Nullable Tempo tempo(Line line, SettingStatement.Tempo written, Meter meter) {
    Time perMinute = perMinute(line, written.perMinute());
    if (perMinute == null) {
      return null;
    }
    Time beat = beat(written.value());
    return new Tempo(beat == null ? meter.tempoBeat() : beat, perMinute);
  }

  /** A speed in beats a minute; null, and said so, if it is out of range. */
  @Nullable Time perMinute(Line line, Num number) {
    if (number.value().sign() <= 0 || number.value().compareTo(FASTEST) > 0) {
      outOfRange(line, number, "a tempo lies above 0 and is at most 1000 beats a minute");
      return null;
    }
    return number.value();
  }

  /** The note value that a word names; null for no word. */
  static @Nullable Time beat(@Nullable Word word) {
    if (word == null) {
      return null;
    }
    boolean dotted = word.text().startsWith("dotted-");
    String plain = dotted ? word.text().substring("dotted-".length()) : word.text();
    Time value =
        switch (plain) {
          case "half" -> Time.of(1, 2);
          case "quarter" -> Time.of(1, 4);
          case "eighth" -> Time.of(1, 8);
          default -> Time.of(1, 16);
        };
    return dotted ? value.times(Time.of(3, 2)) : value;
  }

  /** The feel that a line names; null, and said so, if it is out of range. */
  @Nullable Feel feel(Line line, SettingStatement.FeelSetting setting) {
    Word unit = setting.unit();
    if (unit == null) {
      return Feel.STRAIGHT;
    }
    Feel.Unit swung =
        unit.text().startsWith("sixteenth") ? Feel.Unit.SIXTEENTHS : Feel.Unit.EIGHTHS;
    Num percent = setting.percent();
    if (percent == null) {
      return new Feel(swung, Time.of(2, 3));
    }
    Time share = percent.value().over(100);
    if (share.sign() <= 0 || share.compareTo(Time.ONE) >= 0) {
      outOfRange(line, percent, "the first of the pair takes 1 to 99 percent");
      return null;
    }
    return new Feel(swung, share);
  }

  /** The velocities that a line names, over those before; said so where one is out of range. */
  Levels levels(Line line, SettingStatement.LevelsSetting setting, Levels before) {
    int ghost = before.ghost();
    int plain = before.plain();
    int accent = before.accent();
    for (Named named : setting.levels()) {
      int value = named.value().whole();
      if (value < 1 || value > 127) {
        outOfRange(line, named.value(), "a velocity is a whole number from 1 to 127");
        continue;
      }
      switch (named.name().text()) {
        case "ghost" -> ghost = value;
        case "plain" -> plain = value;
        default -> accent = value;
      }
    }
    return new Levels(ghost, plain, accent);
  }

  /** True if a {@code show} line names this. */
  static boolean shows(SettingStatement.Show setting, String what) {
    return setting.what().stream().anyMatch(w -> w.text().equals(what));
  }

  /** The limits that a line names, put into {@code limits} under its name. */
  void limits(Line line, SettingStatement.LimitsSetting setting, Map<String, Limits> limits) {
    Word name = setting.name();
    String key = name == null ? "" : name.text();
    Limits before = limits.getOrDefault(key, limits.getOrDefault("", Limits.DEFAULT));
    Map<String, Limits.Range> ranges = new HashMap<>();
    for (SettingStatement.Limit limit : setting.limits()) {
      int comfortable = limit.comfortable().whole();
      int extreme = limit.extreme().whole();
      if (comfortable < 1 || comfortable > 10000) {
        outOfRange(line, limit.comfortable(), "a limit is a whole number above 0");
      } else if (extreme < comfortable || extreme > 10000) {
        outOfRange(line, limit.extreme(), "the extreme limit is not below the comfortable one");
      } else {
        ranges.put(limit.what().text(), new Limits.Range(comfortable, extreme));
      }
    }
    limits.put(
        key,
        new Limits(
            ranges.getOrDefault("hands", before.hands()),
            ranges.getOrDefault("feet", before.feet()),
            ranges.getOrDefault("doubles", before.doubles()),
            ranges.getOrDefault("reach", before.reach())));
  }

  /** A whole number in a range; 0, and said so, if it is outside. */
  int whole(Line line, Num number, int least, int most, String what) {
    int value = number.whole();
    if (value < least || value > most) {
      outOfRange(line, number, what + " is a whole number from " + least + " to " + most);
      return 0;
    }
    return value;
  }

  private void outOfRange(Line line, Num number, String help) {
    problems.add(
        problems.make(Code.SYNTAX, line, number.span(), "this number is out of range").help(help));
  }
}
