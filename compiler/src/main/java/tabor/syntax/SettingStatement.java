package tabor.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.source.Span;

/** What the header says, and what a section may say for itself. */
public sealed interface SettingStatement extends Statement {
  /** Calls the method of {@code cases} that fits. */
  <R> R match(Cases<R> cases);

  /** One method for each kind of setting. */
  interface Cases<R> {
    R title(Title setting);

    R by(By setting);

    R use(Use setting);

    R meter(MeterSetting setting);

    R tempo(TempoSetting setting);

    R feel(FeelSetting setting);

    R on(On setting);

    R levels(LevelsSetting setting);

    R show(Show setting);

    R limits(LimitsSetting setting);
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

  /**
   * {@code time 7/8 in 2+2+3}.
   *
   * @param count upper number
   * @param unit lower number
   * @param in the numbers after {@code in}: none, one (equal beats) or several (units of each beat)
   */
  record MeterSetting(Num count, Num unit, List<Num> in, Span span) implements SettingStatement {
    /** Copies the list. */
    public MeterSetting {
      in = List.copyOf(in);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.meter(this);
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
   * A tempo as written, here and in charts.
   *
   * @param value the counted note value, such as {@code dotted-quarter}; null for the meter's beat
   * @param perMinute beats a minute
   */
  record Tempo(@Nullable Word value, Num perMinute, Span span) {}

  /**
   * {@code feel swing eighths 62%}.
   *
   * @param unit {@code eighths} or {@code sixteenths}; null for {@code straight}
   * @param percent the share in percent; null for {@code as triplets} and {@code straight}
   */
  record FeelSetting(@Nullable Word unit, @Nullable Num percent, Span span)
      implements SettingStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.feel(this);
    }
  }

  /** {@code on KIT}. */
  record On(Word kit, Span span) implements SettingStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.on(this);
    }
  }

  /** {@code levels ghost 35 plain 78 accent 115}; each at most once, in any order. */
  record LevelsSetting(List<Named> levels, Span span) implements SettingStatement {
    /** Copies the list. */
    public LevelsSetting {
      levels = List.copyOf(levels);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.levels(this);
    }
  }

  /** A word with its number. */
  record Named(Word name, Num value) {}

  /** {@code show counts sticking} or {@code show none}. */
  record Show(List<Word> what, Span span) implements SettingStatement {
    /** Copies the list. */
    public Show {
      what = List.copyOf(what);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.show(this);
    }
  }

  /**
   * {@code limits [NAME] hands 6 to 9 feet 4 to 6 doubles 12 to 18 reach 200 to 300}: what a player
   * can do, comfortable to extreme. Also a statement of kit sections.
   */
  record LimitsSetting(@Nullable Word name, List<Limit> limits, Span span)
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
   * {@code hands 6 to 9}; the word is {@code hands}, {@code feet}, {@code doubles} or {@code
   * reach}.
   */
  record Limit(Word what, Num comfortable, Num extreme) {}
}
