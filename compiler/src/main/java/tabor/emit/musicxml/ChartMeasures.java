package tabor.emit.musicxml;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tabor.emit.musicxml.ScoreFile.DirectionKind;
import tabor.emit.musicxml.ScoreFile.Dynamics;
import tabor.emit.musicxml.ScoreFile.Rehearsal;
import tabor.emit.musicxml.ScoreFile.Words;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.notation.Score;
import tabor.perform.ChartWords;
import tabor.perform.GradualTempo;
import tabor.perform.RoadMap;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * A chart written out: each line's sections once, between repeat signs that say how often; a climb
 * as one repeat for each rung. A count-in is so many bars of rest; what the click does stands in
 * words where no repeat comes back to it.
 */
final class ChartMeasures implements Chart.Cases<Long> {
  private final Measures measures;
  private final Function<Groove, Score> scores;
  private final List<DirectionKind> head = new ArrayList<>();
  private List<Chart.Item> later = List.of();
  private boolean clickSaid;
  private boolean holding;

  /** Of a gradual change that the next bars begin. */
  private @Nullable Tempo beginning;

  /** How many bars the line plays, by the plan that sounds. */
  private long bars;

  private @Nullable String before;

  private ChartMeasures(Measures measures, Function<Groove, Score> scores) {
    this.measures = measures;
    this.scores = scores;
  }

  /** Every groove that a chart plays. */
  static List<Groove> grooves(Chart chart) {
    if (ChartLength.isTooLong(chart)) {
      return List.of();
    }
    List<Groove> grooves = new ArrayList<>();
    for (Chart.Item item : chart.items()) {
      item.turns().forEach(turn -> grooves.add(turn.groove()));
      Groove filled = item instanceof Chart.Play play ? FilledTime.of(play) : null;
      if (filled != null) {
        grooves.add(filled);
      }
    }
    return grooves;
  }

  static void write(Chart chart, Measures measures, Function<Groove, Score> scores) {
    ChartMeasures written = new ChartMeasures(measures, scores);
    written.head.addAll(MusicXml.title(chart));
    chart.prose().forEach(text -> written.words(XmlCharacters.of(text)));
    if (ChartLength.isTooLong(chart)) {
      written.words("This chart is too long to be written out.");
      measures.silence(List.of(Meter.COMMON), Time.ZERO, written.head, null);
      return;
    }
    List<RoadMap.Stop> stops = RoadMap.of(chart).stops();
    for (int i = 0; i < chart.items().size(); i++) {
      written.later = chart.items().subList(i + 1, chart.items().size());
      written.bars = stops.get(i).bars();
      chart.items().get(i).match(written);
    }
    if (!written.head.isEmpty()) {
      // Words at the end need a bar to stand over.
      measures.silence(List.of(Meter.COMMON), Time.ZERO, written.takeHead(), null);
    }
  }

  private void words(String text) {
    head.add(new Words(text, false, null));
  }

  private List<DirectionKind> takeHead() {
    List<DirectionKind> taken = List.copyOf(head);
    head.clear();
    return taken;
  }

  @Override
  public Long countIn(Chart.CountIn item) {
    words("Count in " + item.bars() + (item.bars() == 1 ? " bar" : " bars"));
    // A click that is set right after it belongs to no repeat either.
    for (Chart.Item next : later) {
      if (!(next instanceof Chart.SetClick click)) {
        break;
      }
      words(clickWords(click));
    }
    Meter meter = meters(item.like()).first();
    Time pickup = ChartAhead.pickup(later);
    Time left = pickup.before(meter.bar()) ? pickup : Time.ZERO;
    measures.countIn(
        Collections.nCopies(item.bars(), meter),
        left,
        takeHead(),
        ChartAhead.counted(item.tempo(), measures.heard().changing(), later));
    before = null;
    clickSaid = true;
    return 0L;
  }

  @Override
  public Long click(Chart.SetClick item) {
    if (!clickSaid) {
      words(clickWords(item));
    }
    return 0L;
  }

  private static String clickWords(Chart.SetClick click) {
    return "click" + ChartWords.ENGLISH.of(click).substring("Click".length());
  }

  /** A play by bars or by the clock is written with as many repeats as it begins. */
  @Override
  public Long play(Chart.Play item) {
    Chart.Amount amount = item.amount();
    boolean counted = amount.times() > 0;
    if (!counted || !item.extras().isEmpty()) {
      words(XmlCharacters.line(ChartWords.ENGLISH.after(item)));
    }
    List<List<Chart.Turn>> rows =
        item.each() ? item.turns().stream().map(List::of).toList() : List.of(item.turns());
    Groove filled = FilledTime.of(item);
    for (int i = 0; i < rows.size(); i++) {
      List<Chart.Turn> row = rows.get(i);
      long own = Math.max(1, row.stream().mapToLong(turn -> turn.groove().bars()).sum());
      long all = amount.bars() > 0 ? amount.bars() : bars / rows.size();
      int times = counted ? amount.times() : (int) Math.max(1, (all + own - 1) / own);
      boolean held = i == rows.size() - 1 && holds();
      if (filled == null && !held) {
        rows(row, times);
      } else {
        lastApart(row, times, filled, held);
      }
    }
    return 0L;
  }

  /** A row whose last time is written by itself, with its fill and its hold sign. */
  private void lastApart(List<Chart.Turn> row, int times, @Nullable Groove filled, boolean held) {
    if (times > 1) {
      rows(row, times - 1);
    }
    List<Chart.Turn> last = new ArrayList<>(row);
    if (filled != null) {
      Chart.Turn turn = row.get(row.size() - 1);
      last.set(row.size() - 1, new Chart.Turn(filled, turn.tempo(), turn.feel()));
    }
    if (held) {
      words(ChartWords.ENGLISH.of(later.get(0)));
    }
    holding = held;
    rows(last, 1);
    holding = false;
  }

  /** True if the last stroke of this line is held. */
  private boolean holds() {
    return !later.isEmpty() && later.get(0) instanceof Chart.Hold;
  }

  @Override
  public Long rest(Chart.Rest item) {
    List<Meter> bars =
        IntStream.rangeClosed(1, item.bars()).mapToObj(meters(item.like())::of).toList();
    Tempo tempo = beginning == null ? item.tempo() : beginning;
    beginning = null;
    measures.silence(bars, Time.ZERO, takeHead(), tempo);
    before = null;
    clickSaid = false;
    return 0L;
  }

  private static Meters meters(@Nullable Groove like) {
    return like == null ? Meters.of(Meter.COMMON) : like.meters();
  }

  /**
   * The bars of the section, then as many to play in, between repeat signs; where a line's end
   * falls inside the section, the section once: the words say how it is traded.
   */
  @Override
  public Long trade(Chart.Trade item) {
    words(XmlCharacters.line("Trade " + ChartWords.ENGLISH.after(item)));
    Chart.Turn turn = item.turn();
    int own = turn.groove().bars();
    long rounds = bars / (2L * item.bars());
    int parts = own / item.bars();
    boolean changing = changes(turn.tempo());
    if (holds() || own % item.bars() != 0 || rounds % parts != 0 || turn.groove().firstBar() == 0) {
      hold();
      rows(List.of(turn), 1);
      return 0L;
    }
    String caption = XmlCharacters.line(turn.groove().caption());
    words(caption);
    long times = changing ? 1 : rounds / parts;
    for (int i = 0; i < (changing ? rounds : parts); i++) {
      int from = i % parts * item.bars() + 1;
      int to = from + item.bars() - 1;
      measures.section(
          scores.apply(turn.groove()),
          new Measures.Plan(
              takeHead(),
              takeTempo(turn),
              turn.feel(),
              false,
              false,
              i == 0 && times > 1,
              false,
              0,
              false,
              new Measures.Stretch(from, to),
              false));
      List<Meter> meters =
          IntStream.rangeClosed(from, to).mapToObj(turn.groove().meters()::of).toList();
      words("you");
      measures.silence(meters, Time.ZERO, takeHead(), null);
    }
    if (times > 1) {
      measures.close(times);
    }
    before = null;
    clickSaid = false;
    return 0L;
  }

  /** A hold after this line is said at its beginning where its last time is not written apart. */
  private void hold() {
    if (holds()) {
      words(ChartWords.ENGLISH.of(later.get(0)));
    }
  }

  @Override
  public Long pause(Chart.Pause item) {
    words(ChartWords.ENGLISH.of(item));
    before = null;
    return 0L;
  }

  @Override
  public Long ramp(Chart.Ramp item) {
    words(ChartWords.ENGLISH.of(item));
    beginning = item.from();
    measures.heard().change(GradualTempo.of(item, later));
    return 0L;
  }

  @Override
  public Long dynamic(Chart.SetDynamic item) {
    head.add(new Dynamics(item.loudness().word()));
    return 0L;
  }

  @Override
  public Long hold(Chart.Hold item) {
    before = null;
    return 0L;
  }

  @Override
  public Long cue(Chart.Cue item) {
    words(XmlCharacters.of(ChartWords.ENGLISH.of(item)));
    return 0L;
  }

  @Override
  public Long mark(Chart.Mark item) {
    head.add(new Rehearsal(XmlCharacters.line(item.text())));
    return 0L;
  }

  @Override
  public Long climb(Chart.Climb item) {
    boolean plain = item.seconds() == null && item.extras().isEmpty();
    if (!plain) {
      words(XmlCharacters.line(ChartWords.ENGLISH.after(item)));
    }
    List<Tempo> tempi = item.tempi();
    for (int i = 0; i < tempi.size(); i++) {
      List<Chart.Turn> row = List.of(new Chart.Turn(item.groove(), tempi.get(i), item.feel()));
      if (i == tempi.size() - 1 && holds()) {
        lastApart(row, item.times(), null, true);
      } else {
        rows(row, item.times());
      }
    }
    return 0L;
  }

  /** A click that is set here is said once: the first time stands before the repeat then. */
  private void rows(List<Chart.Turn> turns, int times) {
    int left = times;
    // A repeat would come back to the tempi of its first time.
    while (left > 0 && changes(turns.get(0).tempo())) {
      row(turns, 1);
      left--;
    }
    boolean apart = left > 1 && head.stream().anyMatch(ChartMeasures::isClick);
    if (apart) {
      row(turns, 1);
    }
    if (left > 0) {
      row(turns, apart ? left - 1 : left);
    }
    clickSaid = false;
  }

  /** True if a gradual change goes on over a line; a line with a tempo of its own ends it. */
  private boolean changes(Tempo tempo) {
    GradualTempo now = measures.heard().changing();
    if (now != null && !now.takes(tempo)) {
      measures.heard().change(null);
      beginning = null;
    }
    return measures.heard().changing() != null;
  }

  private static boolean isClick(DirectionKind kind) {
    return kind instanceof Words words && words.text().startsWith("click o");
  }

  private void row(List<Chart.Turn> turns, int times) {
    boolean repeats = times > 1;
    boolean mixed = turns.stream().map(ChartMeasures::frame).distinct().count() > 1;
    for (int i = 0; i < turns.size(); i++) {
      Chart.Turn turn = turns.get(i);
      Groove groove = turn.groove();
      changes(turn.tempo());
      boolean again = groove.name().equals(before);
      if (!again) {
        words(XmlCharacters.line(groove.caption()));
      }
      // A pickup leads in from another section, not from the same one's own end.
      boolean around = !groove.name().equals(turns.get(turns.size() - 1).groove().name());
      measures.section(
          scores.apply(groove),
          new Measures.Plan(
              takeHead(),
              takeTempo(turn),
              turn.feel(),
              repeats && mixed,
              !again,
              repeats && i == 0,
              around,
              repeats && i == turns.size() - 1 ? times : 0,
              holding && i == turns.size() - 1,
              Measures.Stretch.ALL,
              false));
      before = groove.name();
    }
  }

  /** The tempo of a turn; where a gradual change begins, the one that it begins with. */
  private Tempo takeTempo(Chart.Turn turn) {
    Tempo tempo = beginning == null ? turn.tempo() : beginning;
    beginning = null;
    return tempo;
  }

  private static List<Object> frame(Chart.Turn turn) {
    return List.of(turn.groove().meters().toString(), turn.tempo());
  }
}
