package tabor.format;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import tabor.groove.PracticeLog;
import tabor.syntax.Num;
import tabor.syntax.Ref;
import tabor.syntax.SettingStatement;

/** Settings to text. */
final class SettingPrinter implements SettingStatement.Cases<String> {
  @Override
  public String title(SettingStatement.Title setting) {
    return "title " + Printer.quoted(setting.text());
  }

  @Override
  public String by(SettingStatement.By setting) {
    return "by " + Printer.quoted(setting.text());
  }

  @Override
  public String use(SettingStatement.Use setting) {
    return "use " + Printer.quoted(setting.file());
  }

  @Override
  public String time(SettingStatement.Time setting) {
    return "time "
        + setting.meters().stream().map(SettingPrinter::meter).collect(Collectors.joining(" "));
  }

  private static String meter(SettingStatement.MeterRef meter) {
    return Printer.number(meter.count())
        + "/"
        + Printer.number(meter.unit())
        + sum(" in ", meter.in())
        + sum(" grouped ", meter.grouped());
  }

  private static String sum(String word, List<Num> parts) {
    return parts.isEmpty()
        ? ""
        : word + parts.stream().map(Printer::number).collect(Collectors.joining("+"));
  }

  @Override
  public String tempo(SettingStatement.TempoSetting setting) {
    return "tempo " + Printer.tempo(setting.tempo());
  }

  @Override
  public String feel(SettingStatement.FeelSetting setting) {
    if (setting.unit() == null) {
      return "feel straight";
    }
    return "feel swing "
        + word(setting.unit().value())
        + (setting.percent() == null
            ? " as triplets"
            : " " + Printer.number(setting.percent()) + "%");
  }

  @Override
  public String on(SettingStatement.On setting) {
    return "on " + setting.kit().text();
  }

  @Override
  public String levels(SettingStatement.LevelsSetting setting) {
    return "levels "
        + setting.velocities().stream()
            .map(level -> level.level().value().word() + " " + Printer.number(level.value()))
            .collect(Collectors.joining(" "));
  }

  @Override
  public String show(SettingStatement.Show setting) {
    return "show "
        + setting.shown().stream()
            .map(shown -> word(shown.value()))
            .collect(Collectors.joining(" "));
  }

  @Override
  public String limits(SettingStatement.LimitsSetting setting) {
    return "limits "
        + (setting.name() == null ? "" : setting.name().text() + " ")
        + setting.limits().stream()
            .map(
                limit ->
                    word(limit.kind().value())
                        + " "
                        + (limit.value() == null ? "" : limit.value().value().word() + " at ")
                        + Printer.number(limit.comfortable())
                        + " to "
                        + Printer.number(limit.extreme()))
            .collect(Collectors.joining(" "));
  }

  @Override
  public String page(SettingStatement.Page setting) {
    return "page "
        + switch (setting.kind().value()) {
          case A4, LETTER, LARGE, NEW -> word(setting.kind().value());
          case BARS -> Printer.counted(Objects.requireNonNull(setting.number()), "bar") + " a line";
          case COLUMNS -> Printer.counted(Objects.requireNonNull(setting.number()), "column");
        };
  }

  @Override
  public String goal(SettingStatement.Goal setting) {
    return "goal " + Printer.quoted(setting.text());
  }

  @Override
  public String teacher(SettingStatement.Teacher setting) {
    return "teacher " + Printer.quoted(setting.text());
  }

  @Override
  public String log(SettingStatement.Log setting) {
    return "log "
        + Printer.counted(
            setting.number(), setting.unit().value() == PracticeLog.Unit.DAYS ? "day" : "week");
  }

  @Override
  public String say(SettingStatement.Say setting) {
    Ref<Integer> division = setting.division();
    if (division == null) {
      return "say " + Objects.requireNonNull(setting.set()).value().word();
    }
    String word =
        switch (division.value()) {
          case 2 -> "twos";
          case 3 -> "threes";
          default -> "fours";
        };
    return "say "
        + word
        + setting.syllables().stream().map(s -> " " + s.value()).collect(Collectors.joining());
  }

  @Override
  public String language(SettingStatement.LanguageSetting setting) {
    return "language " + setting.language().value().word();
  }

  /** The word of a closed list: its constants are called as they are written. */
  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
