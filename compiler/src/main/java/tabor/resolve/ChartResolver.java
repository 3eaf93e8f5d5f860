package tabor.resolve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tabor.body.BodyChecks;
import tabor.diagnostic.Code;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.PageNotes;
import tabor.groove.PageWishes;
import tabor.groove.Section;
import tabor.lists.Lists;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.source.Spot;
import tabor.syntax.ChartStatement;
import tabor.syntax.Edit;
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
  private static final int MOST_PLAYED = 512;
  private static final int MOST_COUNT_IN = 64;

  private final Scope scope;
  private final Problems problems;
  private final List<Chart.Item> items = new ArrayList<>();
  private final List<Line> lines = new ArrayList<>();

  /** Tempos of gradual changes as written, by the index of their item. */
  private final Map<Integer, TempoMark> bare = new HashMap<>();

  private final ChartNames names;
  private final ChartAmounts amounts;
  private Chart.SetClick click = new Chart.SetClick(Chart.Click.OFF);
  private @Nullable TempoMark tempo;
  private @Nullable Feel feel;
  private Line line;

  private ChartResolver(Scope scope, String name, Line heading) {
    this.scope = scope;
    this.problems = new Problems(name);
    this.names = new ChartNames(scope, problems);
    this.amounts = new ChartAmounts(problems, scope.options().view());
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
      } else if (statement instanceof Edit.Dynamic dynamic) {
        resolver.put(new Chart.SetDynamic(dynamic.loudness().value()));
      } else if (statement instanceof SettingStatement.TempoSetting setting) {
        resolver.tempo = TempoMark.of(setting.tempo());
      } else if (statement instanceof SettingStatement.FeelSetting setting) {
        resolver.feel = SettingReader.feel(setting);
      } else if (statement instanceof Statement.Prose text) {
        prose.add(resolver.hands().in(text.text().value()));
      } else if (statement instanceof Statement.Broken) {
        resolver.problems.incomplete();
      }
    }
    Text title = ((Heading) heading.statement()).title();
    if (resolver.names.partial()) {
      resolver.problems.incomplete();
    }
    List<Chart.Item> finished =
        new ChartNeighbours(resolver.problems, resolver.items, resolver.lines, resolver.bare)
            .finished();
    resolver.amounts.measure(finished, resolver.lines);
    PageNotes page =
        PageReader.of(
            syntax, PageWishes.NONE, null, resolver.hands(), List.of(), resolver.problems);
    Chart chart =
        new Chart(
            name, title == null ? null : title.value(), heading.spot(), finished, prose, page);
    if (!resolver.problems.isIncomplete()) {
      resolver.problems.addAll(BodyChecks.check(chart));
    }
    return new Resolved(
        chart, resolver.problems.gaps(), resolver.problems.found(), 0, List.of(), resolver.spots());
  }

  private List<Spot> spots() {
    List<Spot> spots = new ArrayList<>(lines.size());
    for (Line of : lines) {
      spots.add(of.spot(of.statement().span()));
    }
    return spots;
  }

  /** What the sections of the file start from; a chart has no kit of its own. */
  private boolean leftHanded() {
    Options options = scope.options();
    return options.leftHanded() || (options.on() == null && scope.defaults().kit().leftHanded());
  }

  private HandWords hands() {
    return HandWords.of(leftHanded(), scope);
  }

  private void put(Chart.Item item) {
    items.add(item);
    lines.add(line);
  }

  private @Nullable Groove groove(Name word) {
    return names.groove(line, word);
  }

  private Tempo tempoOf(Groove groove, @Nullable TempoMark own) {
    TempoMark said = own == null ? tempo : own;
    boolean one = scope.options().tempo() != null || scope.options().view().setsTempo();
    return said == null || one
        ? groove.setting().tempo()
        : scope.options().view().tempo(said.in(groove.meter()));
  }

  private Feel feelOf(Groove groove) {
    Feel own = feel;
    return own == null ? groove.setting().feel() : own;
  }

  @Override
  public @Nullable Void countIn(ChartStatement.CountIn item) {
    int bars = amounts.within(line, item.bars(), MOST_COUNT_IN, "this count-in");
    if (bars > 0) {
      put(new Chart.CountIn(bars, null, fallback()));
    }
    return null;
  }

  /** The header's tempo, where a chart has nothing to play. */
  private Tempo fallback() {
    return scope.options().view().tempo(scope.defaults().setting().tempo());
  }

  @Override
  public @Nullable Void click(ChartStatement.SetClick item) {
    Chart.Click wanted = item.click().value();
    boolean resets = wanted == Chart.Click.ON || wanted == Chart.Click.OFF;
    return click(
        resets
            ? new Chart.SetClick(wanted)
            : new Chart.SetClick(wanted, List.of(), click.barsOn(), click.barsOff()));
  }

  @Override
  public @Nullable Void clickAt(ChartStatement.ClickAt item) {
    List<Integer> beats = List.copyOf(new TreeSet<>(Lists.map(item.beats(), beat -> beat.whole())));
    return click(new Chart.SetClick(Chart.Click.ON, beats, click.barsOn(), click.barsOff()));
  }

  @Override
  public @Nullable Void clickBars(ChartStatement.ClickBars item) {
    int on = amounts.within(line, item.on(), SectionDraft.MOST_BARS, "this stretch of click");
    int off =
        amounts.within(line, item.off(), SectionDraft.MOST_BARS, "this stretch without click");
    Chart.Click wanted = click.click() == Chart.Click.OFF ? Chart.Click.ON : click.click();
    return on == 0 || off == 0 ? null : click(new Chart.SetClick(wanted, click.beats(), on, off));
  }

  private @Nullable Void click(Chart.SetClick next) {
    click = next;
    put(next);
    return null;
  }

  @Override
  public @Nullable Void play(ChartStatement.Play item) {
    ChartStatement.Clauses said = item.clauses();
    TempoMark own = said.tempo() == null ? null : TempoMark.of(said.tempo());
    Chart.Amount amount = amounts.amount(line, said);
    List<Section> named = new ArrayList<>();
    List<Chart.Turn> turns = new ArrayList<>();
    for (Name name : item.sections()) {
      Section section = names.section(line, name);
      if (section != null) {
        named.add(section);
        ChartNames.grooves(section)
            .forEach(one -> turns.add(new Chart.Turn(one, tempoOf(one, own), feelOf(one))));
      }
    }
    Chart.Extras extras = names.extras(line, said, turns);
    if (turns.size() > MOST_PLAYED) {
      problems.lost(
          Code.TOO_LONG,
          line,
          item.span(),
          "one line plays at most " + MOST_PLAYED + " sections",
          "write several lines");
    } else if (!turns.isEmpty() && amount != null) {
      put(new Chart.Play(turns, amount, said.each() != null, extras, named));
    }
    return null;
  }

  @Override
  public @Nullable Void trade(ChartStatement.Trade item) {
    ChartStatement.Clauses said = item.clauses();
    TempoMark own = said.tempo() == null ? null : TempoMark.of(said.tempo());
    Chart.Amount amount = amounts.amount(line, said);
    Groove groove = groove(item.section());
    if (groove == null || amount == null) {
      return null;
    }
    Chart.Turn turn = new Chart.Turn(groove, tempoOf(groove, own), feelOf(groove));
    Chart.Extras extras = names.extras(line, said, List.of(turn));
    if (item.bars().whole() > groove.bars()) {
      problems.lost(
          Code.TOO_LONG,
          line,
          item.bars().span(),
          "“"
              + groove.name()
              + "” has "
              + SectionLength.bars(groove.bars())
              + ", so "
              + item.bars().whole()
              + " bars of it cannot be traded",
          "trade "
              + SectionLength.bars(groove.bars())
              + (groove.bars() == 1 ? "" : " or fewer")
              + ", or make a step of it with “bars "
              + item.bars().whole()
              + "”");
      return null;
    }
    put(new Chart.Trade(turn, item.bars().whole(), amount, extras));
    return null;
  }

  @Override
  public @Nullable Void rest(ChartStatement.Rest item) {
    int bars = amounts.within(line, item.bars(), SectionDraft.MOST_BARS, "this rest");
    if (bars > 0) {
      put(new Chart.Rest(bars, null, fallback()));
    }
    return null;
  }

  @Override
  public @Nullable Void restTime(ChartStatement.RestTime item) {
    Time seconds = amounts.seconds(line, item.length());
    if (seconds != null) {
      put(new Chart.Pause(seconds));
    }
    return null;
  }

  @Override
  public @Nullable Void ramp(ChartStatement.Ramp item) {
    int bars = amounts.within(line, item.bars(), ChartAmounts.MOST_TIMES, "this change of tempo");
    TempoMark written = TempoMark.of(item.from());
    View view = scope.options().view();
    TempoMark from = new TempoMark(written.beat(), view.share(written.perMinute()));
    TempoMark to = new TempoMark(from.beat(), view.share(item.to().value()));
    if (bars > 0) {
      // What follows says in which meter a bare tempo counts; until then it is the usual one.
      put(new Chart.Ramp(from.in(Meter.COMMON), to.in(Meter.COMMON), bars));
      bare.put(items.size() - 1, from);
    }
    tempo = new TempoMark(from.beat(), item.to().value());
    return null;
  }

  @Override
  public @Nullable Void hold(ChartStatement.Hold item) {
    boolean played =
        Lists.any(
            items,
            one ->
                one instanceof Chart.Play
                    || one instanceof Chart.Climb
                    || one instanceof Chart.Trade);
    if (!played) {
      problems.lost(
          Code.NOTHING_THERE,
          line,
          item.span(),
          "nothing is played above that could ring on",
          "write hold below the play line whose last stroke is to ring");
      return null;
    }
    put(new Chart.Hold(item.beats().whole()));
    return null;
  }

  @Override
  public @Nullable Void cue(ChartStatement.Cue item) {
    Num bar = item.bar();
    put(new Chart.Cue(hands().in(item.text().value()), bar == null ? 0 : bar.whole()));
    return null;
  }

  @Override
  public @Nullable Void mark(ChartStatement.Mark item) {
    put(new Chart.Mark(item.text().value()));
    return null;
  }

  @Override
  public @Nullable Void climb(ChartStatement.Climb item) {
    Groove groove = groove(item.section());
    Num often = item.every();
    boolean inBars = item.inBars();
    int every =
        often == null
            ? 1
            : amounts.within(line, often, ChartAmounts.MOST_TIMES, "one step of this ladder");
    ChartStatement.Duration time = item.clauses().time();
    Time seconds = time == null ? null : amounts.seconds(line, time);
    if (groove == null || every == 0 || (time != null && seconds == null)) {
      return null;
    }
    if (inBars && often != null && every % groove.bars() != 0) {
      problems.tell(
          Code.BAR_COUNT,
          line,
          often.span(),
          "“"
              + groove.name()
              + "” has "
              + SectionLength.bars(groove.bars())
              + ", which do not divide "
              + SectionLength.bars(every),
          "climb every " + groove.bars() + " bars, or a multiple");
      return null;
    }
    List<Tempo> tempi = amounts.rungs(line, item, groove);
    if (tempi.isEmpty()) {
      return null;
    }
    Chart.Turn first = new Chart.Turn(groove, tempi.get(0), feelOf(groove));
    put(
        new Chart.Climb(
            groove,
            tempi,
            first.feel(),
            scope.options().view().share(item.by().value()),
            every,
            inBars ? Chart.Every.BARS : Chart.Every.TIMES,
            seconds,
            names.extras(line, item.clauses(), List.of(first))));
    return null;
  }
}
