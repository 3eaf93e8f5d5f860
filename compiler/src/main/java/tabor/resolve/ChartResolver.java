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
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.syntax.ChartStatement;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.Name;
import tabor.syntax.Num;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;
import tabor.syntax.Text;

/** Works out one chart. */
public final class ChartResolver implements ChartStatement.Cases<@Nullable Void> {
  private static final int MOST_TIMES = 100_000;
  private static final int MOST_RUNGS = 10_000;
  private static final int MOST_PLAYED = 512;
  private static final int MOST_COUNT_IN = 64;

  private final Scope scope;
  private final Problems problems;
  private final List<Chart.Item> items = new ArrayList<>();
  private final List<Line> lines = new ArrayList<>();
  private @Nullable TempoMark tempo;
  private @Nullable Feel feel;
  private boolean partial;
  private Line line;

  private ChartResolver(Scope scope, String name, Line heading) {
    this.scope = scope;
    this.problems = new Problems(name);
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
        resolver.tempo = TempoMark.of(setting.tempo());
      } else if (statement instanceof SettingStatement.FeelSetting setting) {
        resolver.feel = SettingReader.feel(setting);
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
    return new Resolved(chart, resolver.partial, resolver.problems.found(), 0);
  }

  private void put(Chart.Item item) {
    items.add(item);
    lines.add(line);
  }

  private @Nullable Groove groove(Name word) {
    Resolved found = scope.section(word.text());
    if (found == null) {
      partial = true;
      problems.unknown(
          line, word.text(), word.span(), "section", scope.near(Scope.Kind.SECTION, word.text()));
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

  private Tempo tempoOf(Groove groove, @Nullable TempoMark own) {
    TempoMark said = own == null ? tempo : own;
    return said == null || scope.options().tempo() != null
        ? groove.setting().tempo()
        : said.in(groove.meter());
  }

  private Feel feelOf(Groove groove) {
    Feel own = feel;
    return own == null ? groove.setting().feel() : own;
  }

  /** The number that a line says; 0, and said so, if it is out of range. */
  private int within(Num number, int most, String what) {
    int value = number.whole();
    if (value >= 1 && value <= most) {
      return value;
    }
    partial = true;
    problems.add(
        problems
            .make(Code.TOO_LONG, line, number.span(), what + " is longer than Tabor plays")
            .help("write " + most + " or fewer"));
    return 0;
  }

  @Override
  public @Nullable Void countIn(ChartStatement.CountIn item) {
    int bars = within(item.bars(), MOST_COUNT_IN, "this count-in");
    if (bars > 0) {
      put(new Chart.CountIn(bars, null, fallback()));
    }
    return null;
  }

  /** The header's tempo, where a chart has nothing to play. */
  private Tempo fallback() {
    return scope.defaults().setting().tempo();
  }

  @Override
  public @Nullable Void click(ChartStatement.SetClick item) {
    put(new Chart.SetClick(item.click().value()));
    return null;
  }

  @Override
  public @Nullable Void play(ChartStatement.Play item) {
    TempoMark own = item.tempo() == null ? null : TempoMark.of(item.tempo());
    int times = item.times() == null ? 1 : within(item.times(), MOST_TIMES, "this line");
    List<Chart.Turn> turns = new ArrayList<>();
    for (Name name : item.sections()) {
      Groove groove = groove(name);
      if (groove != null) {
        turns.add(new Chart.Turn(groove, tempoOf(groove, own), feelOf(groove)));
      }
    }
    if (turns.size() > MOST_PLAYED) {
      partial = true;
      problems.add(
          problems
              .make(
                  Code.TOO_LONG,
                  line,
                  item.span(),
                  "one line plays at most " + MOST_PLAYED + " sections")
              .help("write several lines"));
    } else if (!turns.isEmpty() && times > 0) {
      put(new Chart.Play(turns, times));
    }
    return null;
  }

  @Override
  public @Nullable Void rest(ChartStatement.Rest item) {
    int bars = within(item.bars(), SectionDraft.MOST_BARS, "this rest");
    if (bars > 0) {
      put(new Chart.Rest(bars, null, fallback()));
    }
    return null;
  }

  @Override
  public @Nullable Void climb(ChartStatement.Climb item) {
    Groove groove = groove(item.section());
    Time from = item.from().value();
    Time to = item.to().value();
    Time by = item.by().value();
    boolean inBars = item.inBars();
    int every = within(item.every(), MOST_TIMES, "one step of this ladder");
    if (groove == null || every == 0) {
      return null;
    }
    if (inBars && every % groove.bars() != 0) {
      problems.add(
          problems
              .make(
                  Code.BAR_COUNT,
                  line,
                  item.every().span(),
                  "“"
                      + groove.name()
                      + "” has "
                      + SectionLength.bars(groove.bars())
                      + ", which do not divide "
                      + SectionLength.bars(every))
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
                  "this ladder has more than " + MOST_RUNGS + " steps")
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

  /** Says so where the chart grows longer than a day, or beyond what can be written out. */
  private void measure(List<Chart.Item> finished) {
    BigInteger all = BigInteger.ZERO;
    long sounds = 0;
    for (int i = 0; i < finished.size(); i++) {
      all = all.add(finished.get(i).match(ChartSize.LENGTH));
      sounds += finished.get(i).match(ChartSize.SOUNDS);
      boolean day = all.compareTo(ChartSize.DAY) > 0;
      if (day || sounds > ChartSize.MOST_SOUNDS) {
        partial = true;
        problems.add(
            problems
                .make(
                    Code.TOO_LONG,
                    lines.get(i),
                    lines.get(i).statement().span(),
                    day
                        ? "here the chart grows longer than 24 hours"
                        : "here the chart grows beyond " + ChartSize.MOST_SOUNDS + " strokes")
                .help("play fewer times"));
        return;
      }
    }
  }
}
