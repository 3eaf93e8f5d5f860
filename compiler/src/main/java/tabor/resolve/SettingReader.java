package tabor.resolve;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Levels;
import tabor.kit.Limits;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.NoteValue;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.Line;
import tabor.syntax.Name;
import tabor.syntax.Num;
import tabor.syntax.Ref;
import tabor.syntax.SettingStatement;
import tabor.syntax.SettingStatement.LimitKind;

/** Reads what header and sections say about meter, feel, levels and the like. */
record SettingReader(Problems problems) {
  /** The meters that a line names; null, and said so, if one does not add up. */
  @Nullable Meters meters(Line line, SettingStatement.Time setting) {
    List<Meter> meters = new ArrayList<>();
    for (SettingStatement.MeterRef written : setting.meters()) {
      Meter meter = meter(line, written);
      if (meter == null) {
        return null;
      }
      meters.add(meter);
    }
    return new Meters(meters);
  }

  /** What stands before the numbers of a single meter with {@code in}; null without one. */
  static @Nullable Spot meterIn(Line line, SettingStatement.Time setting) {
    SettingStatement.MeterRef written = setting.meters().get(0);
    if (setting.meters().size() > 1 || written.in().isEmpty()) {
      return null;
    }
    int start = written.unit().span().end();
    int end = written.in().get(0).span().start();
    return line.spot(new Span(start, end));
  }

  private @Nullable Meter meter(Line line, SettingStatement.MeterRef written) {
    int count = written.count().whole();
    int unit = written.unit().whole();
    List<Num> in = written.in();
    if (in.isEmpty()) {
      return grouped(line, Meter.of(count, unit), written.grouped());
    }
    List<Time> beats = new ArrayList<>();
    if (in.size() == 1) {
      int parts = in.get(0).whole();
      for (int i = 0; i < parts; i++) {
        beats.add(Time.of(count, unit).over(parts));
      }
    } else {
      in.forEach(part -> beats.add(Time.of(part.whole(), unit)));
    }
    Span span = span(in);
    Time sum = Time.ZERO;
    for (Time beat : beats) {
      sum = sum.plus(beat);
    }
    if (!sum.equals(Time.of(count, unit))) {
      problems.tell(
          Code.BAR_LENGTH,
          line,
          span,
          "these beats add up to "
              + sum.times(unit)
              + ", but a bar of "
              + count
              + "/"
              + unit
              + " has "
              + count,
          "make the numbers add up to " + count);
      return null;
    }
    for (Time beat : beats) {
      if (!Meter.isPlain(beat) && !Meter.isDotted(beat)) {
        problems.tell(
            Code.BAR_LENGTH,
            line,
            span,
            "a beat of " + beat + " of a whole note is no note value",
            "a beat is a plain or a dotted note: 1, 2, 3, 4, 6 … units");
        return null;
      }
    }
    return new Meter(count, unit, beats);
  }

  private @Nullable Meter grouped(Line line, Meter meter, List<Num> grouped) {
    List<Integer> groups = new ArrayList<>();
    int sum = 0;
    for (Num number : grouped) {
      groups.add(number.whole());
      sum += number.whole();
    }
    if (groups.isEmpty() || sum == meter.beatCount()) {
      return new Meter(meter.count(), meter.unit(), meter.beats(), groups);
    }
    problems.tell(
        Code.BAR_LENGTH,
        line,
        span(grouped),
        "these groups have "
            + BarLengths.inWords(sum)
            + ", but a bar of "
            + meter
            + " has "
            + meter.beatCount(),
        "make the numbers add up to " + meter.beatCount());
    return null;
  }

  private static Span span(List<Num> nums) {
    return nums.get(0).span().to(nums.get(nums.size() - 1).span());
  }

  /** The feel that a line names. */
  static Feel feel(SettingStatement.FeelSetting setting) {
    if (setting.unit() == null) {
      return Feel.STRAIGHT;
    }
    Num percent = setting.percent();
    return new Feel(
        setting.unit().value(), percent == null ? Time.of(2, 3) : percent.value().over(100));
  }

  /** The velocities that a line names, over those before. */
  static Levels levels(SettingStatement.LevelsSetting setting, Levels before) {
    int ghost = before.ghost();
    int plain = before.plain();
    int accent = before.accent();
    for (SettingStatement.Velocity velocity : setting.velocities()) {
      int value = velocity.value().whole();
      switch (velocity.level().value()) {
        case GHOST -> ghost = value;
        case PLAIN -> plain = value;
        case ACCENT -> accent = value;
      }
    }
    return new Levels(ghost, plain, accent);
  }

  /** A figure a second; of a note value it is written as a tempo in quarters a minute. */
  private static Time rate(Num figure, @Nullable Ref<NoteValue> value) {
    return value == null
        ? figure.value()
        : figure.value().over(60).over(value.value().length().times(4));
  }

  /** The limits that a line names, put into {@code limits} under its name. */
  static void limits(SettingStatement.LimitsSetting setting, Map<String, Limits> limits) {
    Name name = setting.name();
    String key = name == null ? "" : name.text();
    Limits before = limits.getOrDefault(key, limits.getOrDefault("", Limits.DEFAULT));
    Map<LimitKind, Limits.Range> ranges = new EnumMap<>(LimitKind.class);
    for (SettingStatement.Limit limit : setting.limits()) {
      ranges.put(
          limit.kind().value(),
          new Limits.Range(
              rate(limit.comfortable(), limit.value()), rate(limit.extreme(), limit.value())));
    }
    limits.put(
        key,
        new Limits(
            ranges.getOrDefault(LimitKind.HANDS, before.hands()),
            ranges.getOrDefault(LimitKind.FEET, before.feet()),
            ranges.getOrDefault(LimitKind.DOUBLES, before.doubles()),
            ranges.getOrDefault(LimitKind.REACH, before.reach())));
  }
}
