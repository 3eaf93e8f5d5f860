package tabor.format;

import java.util.stream.Collectors;
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
  public String meter(SettingStatement.MeterSetting setting) {
    String beats = setting.in().stream().map(Printer::number).collect(Collectors.joining("+"));
    return "time "
        + Printer.number(setting.count())
        + "/"
        + Printer.number(setting.unit())
        + (beats.isEmpty() ? "" : " in " + beats);
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
        + setting.unit().text()
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
        + setting.levels().stream()
            .map(level -> level.name().text() + " " + Printer.number(level.value()))
            .collect(Collectors.joining(" "));
  }

  @Override
  public String show(SettingStatement.Show setting) {
    return "show " + Printer.words(setting.what(), " ");
  }

  @Override
  public String limits(SettingStatement.LimitsSetting setting) {
    return "limits "
        + (setting.name() == null ? "" : setting.name().text() + " ")
        + setting.limits().stream()
            .map(
                limit ->
                    limit.what().text()
                        + " "
                        + Printer.number(limit.comfortable())
                        + " to "
                        + Printer.number(limit.extreme()))
            .collect(Collectors.joining(" "));
  }
}
