package tabor.resolve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.groove.Levels;
import tabor.kit.Limits;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;

/** Reads a header. */
public final class HeaderReader implements SettingStatement.Cases<@Nullable Void> {
  private final Problems problems = new Problems(null);
  private final SettingReader settings = new SettingReader(problems);
  private @Nullable String title;
  private @Nullable String by;
  private @Nullable Meter meter = Meter.COMMON;
  private @Nullable Time tempoBeat;
  private Time perMinute = Time.of(90);
  private Feel feel = Feel.STRAIGHT;
  private Levels levels = Levels.DEFAULT;
  private boolean counts = true;
  private boolean sticking = true;
  private String kit = "five-piece";
  private final Map<String, Limits> limits = new HashMap<>();
  private final List<Header.Used> uses = new ArrayList<>();
  private Line line;

  private HeaderReader(Line first) {
    this.line = first;
  }

  /** Reads the lines of a header; of a statement said twice the last counts. */
  public static Header read(SectionSyntax header) {
    if (header.lines().isEmpty()) {
      return EMPTY;
    }
    HeaderReader reader = new HeaderReader(header.lines().get(0));
    for (Line next : header.lines()) {
      reader.line = next;
      if (next.statement() instanceof SettingStatement setting) {
        setting.match(reader);
      } else if (next.statement() instanceof Statement.Broken && next.startsWith("time")) {
        // Whatever the meter was to be, it is not the usual one: nothing is measured by it.
        reader.meter = null;
      }
    }
    return reader.header();
  }

  private static final Header EMPTY =
      new Header(
          null,
          null,
          Meter.COMMON,
          null,
          Time.of(90),
          Feel.STRAIGHT,
          Levels.DEFAULT,
          true,
          true,
          "five-piece",
          Map.of(),
          List.of(),
          List.of());

  private Header header() {
    return new Header(
        title,
        by,
        meter,
        tempoBeat,
        perMinute,
        feel,
        levels,
        counts,
        sticking,
        kit,
        limits,
        uses,
        problems.found());
  }

  @Override
  public @Nullable Void title(SettingStatement.Title setting) {
    title = setting.text().value();
    return null;
  }

  @Override
  public @Nullable Void by(SettingStatement.By setting) {
    by = setting.text().value();
    return null;
  }

  @Override
  public @Nullable Void use(SettingStatement.Use setting) {
    uses.add(new Header.Used(setting.file().value(), line.spot(setting.file().span())));
    return null;
  }

  @Override
  public @Nullable Void meter(SettingStatement.MeterSetting setting) {
    meter = settings.meter(line, setting);
    return null;
  }

  @Override
  public @Nullable Void tempo(SettingStatement.TempoSetting setting) {
    Time speed = settings.perMinute(line, setting.tempo().perMinute());
    if (speed != null) {
      perMinute = speed;
      tempoBeat = SettingReader.beat(setting.tempo().value());
    }
    return null;
  }

  @Override
  public @Nullable Void feel(SettingStatement.FeelSetting setting) {
    Feel read = settings.feel(line, setting);
    feel = read == null ? feel : read;
    return null;
  }

  @Override
  public @Nullable Void on(SettingStatement.On setting) {
    kit = setting.kit().text();
    return null;
  }

  @Override
  public @Nullable Void levels(SettingStatement.LevelsSetting setting) {
    levels = settings.levels(line, setting, levels);
    return null;
  }

  @Override
  public @Nullable Void show(SettingStatement.Show setting) {
    counts = SettingReader.shows(setting, "counts");
    sticking = SettingReader.shows(setting, "sticking");
    return null;
  }

  @Override
  public @Nullable Void limits(SettingStatement.LimitsSetting setting) {
    settings.limits(line, setting, limits);
    return null;
  }
}
