package tabor.resolve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.groove.CountingWords;
import tabor.groove.Lesson;
import tabor.groove.Levels;
import tabor.groove.PageWishes;
import tabor.groove.PracticeLog;
import tabor.kit.Limits;
import tabor.rhythm.Feel;
import tabor.rhythm.Meters;
import tabor.source.Spot;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;
import tabor.words.Language;

/** Reads a header. */
public final class HeaderReader implements SettingStatement.Cases<@Nullable Void> {
  private final Problems problems = new Problems(null);
  private final SettingReader settings = new SettingReader(problems);
  private @Nullable String title;
  private @Nullable String by;
  private @Nullable Meters meters;
  private @Nullable Spot meterIn;
  private boolean saysTime;
  private @Nullable TempoMark tempo;
  private @Nullable Feel feel;
  private @Nullable Levels levels;
  private @Nullable Shows shows;
  private Header.@Nullable Named kit;
  private final Map<String, Limits> limits = new HashMap<>();
  private final List<Header.Named> uses = new ArrayList<>();
  private PageWishes wishes = PageWishes.NONE;
  private final List<String> goals = new ArrayList<>();
  private final List<String> teacher = new ArrayList<>();
  private @Nullable PracticeLog log;
  private CountingWords words = CountingWords.OURS;
  private @Nullable Language language;
  private @Nullable Line line;

  private HeaderReader() {}

  /** Reads the lines of a header; of a statement said twice the last counts. */
  public static Header read(SectionSyntax header) {
    HeaderReader reader = new HeaderReader();
    for (Line next : header.lines()) {
      reader.line = next;
      if (next.statement() instanceof SettingStatement setting) {
        setting.match(reader);
      } else if (next.statement() instanceof Statement.Broken broken
          && broken.keyword().equals("time")) {
        // Whatever the meter was to be, it is not the usual one: nothing is measured by it.
        reader.saysTime = true;
        reader.meters = null;
      }
    }
    return new Header(
        reader.title,
        reader.by,
        reader.meters,
        reader.meterIn,
        reader.saysTime,
        reader.tempo,
        reader.feel,
        reader.levels,
        reader.shows,
        reader.kit,
        reader.limits,
        reader.uses,
        new Lesson.Extras(
            reader.wishes,
            reader.goals,
            reader.teacher,
            reader.log,
            reader.words,
            reader.language,
            List.of(),
            List.of(),
            null),
        reader.problems.found());
  }

  private Line line() {
    return java.util.Objects.requireNonNull(line);
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
    uses.add(new Header.Named(setting.file().value(), line().spot(setting.file().span())));
    return null;
  }

  @Override
  public @Nullable Void time(SettingStatement.Time setting) {
    saysTime = true;
    meters = settings.meters(line(), setting);
    meterIn = SettingReader.meterIn(line(), setting);
    return null;
  }

  @Override
  public @Nullable Void tempo(SettingStatement.TempoSetting setting) {
    tempo = TempoMark.of(setting.tempo());
    return null;
  }

  @Override
  public @Nullable Void feel(SettingStatement.FeelSetting setting) {
    feel = SettingReader.feel(setting);
    return null;
  }

  @Override
  public @Nullable Void on(SettingStatement.On setting) {
    kit = new Header.Named(setting.kit().text(), line().spot(setting.kit().span()));
    return null;
  }

  @Override
  public @Nullable Void levels(SettingStatement.LevelsSetting setting) {
    levels = SettingReader.levels(setting, levels == null ? Levels.DEFAULT : levels);
    return null;
  }

  @Override
  public @Nullable Void show(SettingStatement.Show setting) {
    shows = (shows == null ? Shows.ALL : shows).after(setting);
    return null;
  }

  @Override
  public @Nullable Void limits(SettingStatement.LimitsSetting setting) {
    SettingReader.limits(setting, limits);
    return null;
  }

  @Override
  public @Nullable Void page(SettingStatement.Page setting) {
    wishes = PageReader.wished(wishes, setting);
    return null;
  }

  @Override
  public @Nullable Void goal(SettingStatement.Goal setting) {
    goals.add(setting.text().value());
    return null;
  }

  @Override
  public @Nullable Void teacher(SettingStatement.Teacher setting) {
    teacher.add(setting.text().value());
    return null;
  }

  @Override
  public @Nullable Void log(SettingStatement.Log setting) {
    log = new PracticeLog(setting.number().whole(), setting.unit().value());
    return null;
  }

  @Override
  public @Nullable Void say(SettingStatement.Say setting) {
    words = PageReader.said(words, setting);
    return null;
  }

  @Override
  public @Nullable Void language(SettingStatement.LanguageSetting setting) {
    language = setting.language().value();
    return null;
  }
}
