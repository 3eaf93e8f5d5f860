package tabor.resolve;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tabor.body.BodyChecks;
import tabor.diagnostic.Code;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.syntax.ChartStatement;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;
import tabor.syntax.Text;
import tabor.syntax.Word;

/** Works out one chart. */
public final class ChartResolver implements ChartStatement.Cases<@Nullable Void> {
  private static final BigInteger PICOS = BigInteger.TEN.pow(12);

  /** Rounded downwards so many times, a chart of exactly a day still is one. */
  private static final BigInteger DAY = PICOS.multiply(BigInteger.valueOf(24 * 60 * 60));

  private static final int MOST_TIMES = 100_000;
  private static final int MOST_RUNGS = 10_000;
  private static final int MOST_PLAYED = 512;

  private final Scope scope;
  private final Problems problems;
  private final SettingReader settings;
  private final List<Chart.Item> items = new ArrayList<>();
  private final List<Line> lines = new ArrayList<>();
  private SettingStatement.@Nullable Tempo tempo;
  private @Nullable Feel feel;
  private boolean partial;
  private Line line;

  private ChartResolver(Scope scope, String name, Line heading) {
    this.scope = scope;
    this.problems = new Problems(name);
    this.settings = new SettingReader(problems);
    this.line = heading;
  }

  /**
   * Works out a chart.
   *
   * @param syntax its tree; its heading is a chart's, whole or faulty
   * @param name what it is called
   * @param scope what it may see: all grooves and steps of the file
   */
  public static Resolved resolve(SectionSyntax syntax, String name, Scope scope) {
    Line heading = Objects.requireNonNull(syntax.heading());
    ChartResolver resolver = new ChartResolver(scope, name, heading);
    List<String> prose = new ArrayList<>();
    for (Line next : syntax.lines()) {
      resolver.line = next;
      Statement statement = next.statement();
      if (statement instanceof ChartStatement item) {
        item.match(resolver);
      } else if (statement instanceof SettingStatement.TempoSetting setting) {
        if (resolver.settings.perMinute(next, setting.tempo().perMinute()) != null) {
          resolver.tempo = setting.tempo();
        }
      } else if (statement instanceof SettingStatement.FeelSetting setting) {
        Feel read = resolver.settings.feel(next, setting);
        resolver.feel = read == null ? resolver.feel : read;
      } else if (statement instanceof Statement.Prose text) {
        prose.add(text.text().value());
      } else if (statement instanceof Statement.Broken) {
        resolver.partial = true;
      }
    }
    Text title = heading.statement() instanceof Heading.Chart chart ? chart.title() : null;
    List<Chart.Item> finished = resolver.withNeighbours();
    resolver.measure(finished);
    Chart chart =
        new Chart(name, title == null ? null : title.value(), heading.spot(), finished, prose);
    if (!resolver.partial) {
      resolver.problems.addAll(BodyChecks.check(chart));
    }
    return new Resolved(chart, resolver.partial, resolver.problems.found());
  }

  private void put(Chart.Item item) {
    items.add(item);
    lines.add(line);
  }

  private @Nullable Groove groove(Word word) {
    Resolved found = scope.section(word.text());
    if (found == null) {
      partial = true;
      problems.unknown(line, word, "section", scope.near(Scope.Kind.SECTION, word.text()));
      return null;
    }
    partial |= found.partial();
    if (found.section() instanceof Groove groove) {
      return groove;
    }
    if (found.section() != null) {
      problems.add(
          problems
              .make(
                  Code.UNKNOWN_NAME,
                  line,
                  word.span(),
                  "“" + word.text() + "” is a chart; a chart plays grooves and steps")
              .help("name the sections that it plays"));
    }
    partial = true;
    return null;
  }

  private Tempo tempoOf(Groove groove, SettingStatement.@Nullable Tempo own) {
    SettingStatement.Tempo said = own == null ? tempo : own;
    Time asked = scope.options().tempo();
    if (said == null || asked != null) {
      return groove.setting().tempo();
    }
    Time beat = SettingReader.beat(said.value());
    return new Tempo(beat == null ? groove.meter().tempoBeat() : beat, said.perMinute().value());
  }

  private Feel feelOf(Groove groove) {
    Feel own = feel;
    return own == null ? groove.setting().feel() : own;
  }

  @Override
  public @Nullable Void countIn(ChartStatement.CountIn item) {
    int bars = settings.whole(line, item.bars(), 1, 64, "a count-in");
    if (bars > 0) {
      put(new Chart.CountIn(bars, null, fallback()));
    }
    return null;
  }

  /** The header's tempo, where a chart has nothing to play. */
  private Tempo fallback() {
    Meter meter = scope.header().meter();
    return scope.header().tempo(meter == null ? Meter.COMMON : meter);
  }

  @Override
  public @Nullable Void click(ChartStatement.Click item) {
    put(
        new Chart.SetClick(
            switch (item.how().text()) {
              case "off" -> Chart.Click.OFF;
              case "quarters" -> Chart.Click.QUARTERS;
              case "eighths" -> Chart.Click.EIGHTHS;
              default -> Chart.Click.ON;
            }));
    return null;
  }

  @Override
  public @Nullable Void play(ChartStatement.Play item) {
    SettingStatement.Tempo own = item.tempo();
    boolean fine = own == null || settings.perMinute(line, own.perMinute()) != null;
    int times =
        item.times() == null
            ? 1
            : settings.whole(line, item.times(), 1, MOST_TIMES, "the number of times");
    List<Chart.Turn> turns = new ArrayList<>();
    for (Word word : item.sections()) {
      Groove groove = groove(word);
      if (groove != null && fine) {
        turns.add(new Chart.Turn(groove, tempoOf(groove, own), feelOf(groove)));
      }
    }
    if (!turns.isEmpty() && times > 0 && turns.size() <= MOST_PLAYED) {
      put(new Chart.Play(turns, times));
    }
    return null;
  }

  @Override
  public @Nullable Void rest(ChartStatement.Rest item) {
    int bars = settings.whole(line, item.bars(), 1, Work.MOST_BARS, "a rest");
    if (bars > 0) {
      put(new Chart.Rest(bars, null, fallback()));
    }
    return null;
  }

  @Override
  public @Nullable Void climb(ChartStatement.Climb item) {
    Groove groove = groove(item.section());
    Time from = settings.perMinute(line, item.from());
    Time to = settings.perMinute(line, item.to());
    Time by = settings.perMinute(line, item.by());
    boolean inBars = item.unit().text().startsWith("bar");
    int every = settings.whole(line, item.every(), 1, MOST_TIMES, "the number");
    if (groove == null || from == null || to == null || by == null || every == 0) {
      return null;
    }
    if (inBars && every % groove.bars() != 0) {
      problems.add(
          problems
              .make(
                  Code.BAR_COUNT,
                  line,
                  item.every().span().to(item.unit().span()),
                  "“"
                      + groove.name()
                      + "” has "
                      + Plan.bars(groove.bars())
                      + ", which do not go into "
                      + Plan.bars(every))
              .help("climb every " + groove.bars() + " bars, or a multiple"));
      return null;
    }
    Time distance = to.minus(from);
    Time size = distance.sign() < 0 ? distance.negate() : distance;
    if (size.over(by).compareTo(Time.of(MOST_RUNGS)) > 0) {
      problems.add(
          problems
              .make(
                  Code.TOO_LONG,
                  line,
                  item.span(),
                  "this ladder has more than " + MOST_RUNGS + " rungs")
              .help("climb by more at a time"));
      return null;
    }
    Time beat = groove.meter().tempoBeat();
    List<Tempo> tempi = new ArrayList<>();
    Time step = distance.sign() < 0 ? by.negate() : by;
    for (Time at = from; distance.sign() < 0 ? to.before(at) : at.before(to); at = at.plus(step)) {
      tempi.add(new Tempo(beat, at));
    }
    tempi.add(new Tempo(beat, to));
    put(
        new Chart.Climb(
            groove,
            tempi,
            feelOf(groove),
            by,
            every,
            inBars ? Chart.Every.BARS : Chart.Every.TIMES));
    return null;
  }

  /** Count-ins take meter and tempo of what follows, rests of what was before, else follows. */
  private List<Chart.Item> withNeighbours() {
    List<Chart.Item> done = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      Chart.Item item = items.get(i);
      if (item instanceof Chart.CountIn countIn) {
        Chart.Turn next = firstFrom(i);
        done.add(
            next == null
                ? countIn
                : new Chart.CountIn(countIn.bars(), next.groove(), next.tempo()));
      } else if (item instanceof Chart.Rest rest) {
        Chart.Turn near = lastBefore(i);
        near = near == null ? firstFrom(i) : near;
        done.add(near == null ? rest : new Chart.Rest(rest.bars(), near.groove(), near.tempo()));
      } else {
        done.add(item);
      }
    }
    return done;
  }

  private Chart.@Nullable Turn firstFrom(int index) {
    for (int i = index; i < items.size(); i++) {
      if (items.get(i) instanceof Chart.Play play) {
        return play.turns().get(0);
      }
      if (items.get(i) instanceof Chart.Climb climb) {
        return new Chart.Turn(climb.groove(), climb.tempi().get(0), climb.feel());
      }
    }
    return null;
  }

  private Chart.@Nullable Turn lastBefore(int index) {
    for (int i = index - 1; i >= 0; i--) {
      if (items.get(i) instanceof Chart.Play play) {
        return play.turns().get(play.turns().size() - 1);
      }
      if (items.get(i) instanceof Chart.Climb climb) {
        return new Chart.Turn(
            climb.groove(), climb.tempi().get(climb.tempi().size() - 1), climb.feel());
      }
    }
    return null;
  }

  /** Says so where the chart grows longer than a day. */
  private void measure(List<Chart.Item> finished) {
    BigInteger all = BigInteger.ZERO;
    for (int i = 0; i < finished.size(); i++) {
      all = all.add(finished.get(i).match(LENGTH));
      if (all.compareTo(DAY) > 0) {
        partial = true;
        problems.add(
            problems
                .make(
                    Code.TOO_LONG,
                    lines.get(i),
                    lines.get(i).statement().span(),
                    "here the chart grows longer than 24 hours")
                .help("play fewer times"));
        return;
      }
    }
  }

  /** How long an item lasts, in picoseconds. */
  private static final Chart.Cases<BigInteger> LENGTH =
      new Chart.Cases<>() {
        @Override
        public BigInteger countIn(Chart.CountIn one) {
          return bars(one.bars(), one.like(), one.tempo());
        }

        @Override
        public BigInteger click(Chart.SetClick one) {
          return BigInteger.ZERO;
        }

        @Override
        public BigInteger play(Chart.Play one) {
          BigInteger row = BigInteger.ZERO;
          for (Chart.Turn turn : one.turns()) {
            row = row.add(picos(turn.groove().length(), turn.tempo()));
          }
          return row.multiply(BigInteger.valueOf(one.times()));
        }

        @Override
        public BigInteger rest(Chart.Rest one) {
          return bars(one.bars(), one.like(), one.tempo());
        }

        @Override
        public BigInteger climb(Chart.Climb one) {
          BigInteger all = BigInteger.ZERO;
          for (Tempo rung : one.tempi()) {
            all = all.add(picos(one.groove().length(), rung));
          }
          return all.multiply(BigInteger.valueOf(one.times()));
        }

        private BigInteger bars(int bars, @Nullable Groove like, Tempo tempo) {
          Meter meter = like == null ? Meter.COMMON : like.meter();
          return picos(meter.bar().times(bars), tempo);
        }

        private BigInteger picos(Time length, Tempo tempo) {
          Time seconds = length.times(tempo.secondsPerWhole());
          return BigInteger.valueOf(seconds.num())
              .multiply(PICOS)
              .divide(BigInteger.valueOf(seconds.den()));
        }
      };
}
