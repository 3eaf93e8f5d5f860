package tabor.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.CountingWords;
import tabor.groove.Level;
import tabor.groove.PracticeLog;
import tabor.rhythm.BeatUnit;
import tabor.rhythm.Feel;
import tabor.rhythm.NoteValue;
import tabor.source.Span;
import tabor.words.Language;

/** What the header says, and what a section may say for itself. */
public sealed interface SettingStatement extends Statement {
  /** Calls the method of {@code cases} that fits. */
  <R> R match(Cases<R> cases);

  /** One method for each kind of line. */
  interface Cases<R> {
    R title(Title setting);

    R by(By setting);

    R use(Use setting);

    R time(Time setting);

    R tempo(TempoSetting setting);

    R feel(FeelSetting setting);

    R on(On setting);

    R levels(LevelsSetting setting);

    R show(Show setting);

    R limits(LimitsSetting setting);

    R page(Page setting);

    R goal(Goal setting);

    R teacher(Teacher setting);

    R log(Log setting);

    R say(Say setting);

    R language(LanguageSetting setting);
  }

  /** {@code title "…"}. */
  record Title(Text text, Span span) implements SettingStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.title(this);
    }
  }

  /** {@code by "…"}. */
  record By(Text text, Span span) implements SettingStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.by(this);
    }
  }

  /** {@code use "other.tabor"}. */
  record Use(Text file, Span span) implements SettingStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.use(this);
    }
  }

  /** {@code time 7/8 in 2+2+3}; several meters are taken in turn. */
  record Time(List<MeterRef> meters, Span span) implements SettingStatement {
    /** Copies the list. */
    public Time {
      meters = List.copyOf(meters);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.time(this);
    }
  }

  /** {@code tempo [dotted-quarter =] 60}. */
  record TempoSetting(Tempo tempo, Span span) implements SettingStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.tempo(this);
    }
  }

  /**
   * {@code feel swing eighths 62%}: no unit for {@code straight}, no percentage for {@code as
   * triplets} and {@code straight}.
   */
  record FeelSetting(@Nullable Ref<Feel.Unit> unit, @Nullable Num percent, Span span)
      implements SettingStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.feel(this);
    }
  }

  /** {@code on KIT}. */
  record On(Name kit, Span span) implements SettingStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.on(this);
    }
  }

  /** {@code levels ghost 35 plain 78 accent 115}; each at most once, in any order. */
  record LevelsSetting(List<Velocity> velocities, Span span) implements SettingStatement {
    /** Copies the list. */
    public LevelsSetting {
      velocities = List.copyOf(velocities);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.levels(this);
    }
  }

  /** {@code show counts sticking changes}, {@code show none}. */
  record Show(List<Ref<Shown>> shown, Span span) implements SettingStatement {
    /** Copies the list. */
    public Show {
      shown = List.copyOf(shown);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.show(this);
    }
  }

  /**
   * {@code limits [NAME] hands 6 to 9 feet 4 to 6 doubles 12 to 18 reach 200 to 300}: what a player
   * can do, comfortable to extreme. Also a line of kit sections.
   */
  record LimitsSetting(@Nullable Name name, List<Limit> limits, Span span)
      implements SettingStatement {
    /** Copies the list. */
    public LimitsSetting {
      limits = List.copyOf(limits);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.limits(this);
    }
  }

  /**
   * A meter as written.
   *
   * @param count upper number
   * @param unit lower number
   * @param in the numbers after {@code in}: none, one (equal beats) or several (units of each beat)
   * @param grouped the numbers after {@code grouped}: beats in each group; none where it is not
   *     written
   * @param span where
   */
  record MeterRef(Num count, Num unit, List<Num> in, List<Num> grouped, Span span) {
    /** Copies the lists. */
    public MeterRef {
      in = List.copyOf(in);
      grouped = List.copyOf(grouped);
    }
  }

  /**
   * A tempo as written, here and in charts.
   *
   * @param unit the counted note value; null for the meter's beat
   * @param perMinute beats per minute
   * @param span where
   */
  record Tempo(@Nullable Ref<BeatUnit> unit, Num perMinute, Span span) {}

  /** A level with its MIDI velocity. */
  record Velocity(Ref<Level> level, Num value) {}

  /** What is printed above and below the notes. */
  enum Shown {
    COUNTS,
    STICKING,
    CHANGES,
    NO_CHANGES,
    NONE
  }

  /** What a limit is about. */
  enum LimitKind {
    HANDS,
    FEET,
    DOUBLES,
    REACH
  }

  /**
   * {@code hands 6 to 9}, {@code hands sixteenths at 75 to 110}.
   *
   * @param kind what it is about
   * @param value the note value whose tempo in quarters a minute the figures are; null for figures
   *     a second
   * @param comfortable what can be kept up
   * @param extreme what can be reached
   */
  record Limit(Ref<LimitKind> kind, @Nullable Ref<NoteValue> value, Num comfortable, Num extreme) {}

  /** {@code page a4}, {@code page 4 bars a line}. */
  record Page(Ref<PageKind> kind, @Nullable Num number, Span span) implements SettingStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.page(this);
    }
  }

  /** What a {@code page} line is about; of each kind the last one said counts. */
  enum PageKind {
    A4,
    LETTER,
    LARGE,
    /** {@code N bars a line}; has a number. */
    BARS,
    /** {@code N columns}; has a number from 1 to 3. */
    COLUMNS,
    /** The section starts a page. */
    NEW
  }

  /** {@code goal "…"}. */
  record Goal(Text text, Span span) implements SettingStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.goal(this);
    }
  }

  /** {@code teacher "…"}. */
  record Teacher(Text text, Span span) implements SettingStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.teacher(this);
    }
  }

  /** {@code log 7 days}. */
  record Log(Num number, Ref<PracticeLog.Unit> unit, Span span) implements SettingStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.log(this);
    }
  }

  /**
   * {@code say threes trip let}, {@code say eighths through}, {@code say 1-la-li}.
   *
   * @param set a set of words by its name, or counting through; null for words of one division
   * @param division 2, 3 or 4, where words are written; null otherwise
   * @param syllables those after the number, one fewer than the division
   * @param span where
   */
  record Say(
      @Nullable Ref<CountingWords.Named> set,
      @Nullable Ref<Integer> division,
      List<Ref<String>> syllables,
      Span span)
      implements SettingStatement {
    /** Copies the list. */
    public Say {
      syllables = List.copyOf(syllables);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.say(this);
    }
  }

  /** {@code language de}. */
  record LanguageSetting(Ref<Language> language, Span span) implements SettingStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.language(this);
    }
  }
}
