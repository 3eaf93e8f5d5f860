package tabor.perform;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Chart;
import tabor.groove.Part;
import tabor.groove.Section;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.lists.Lists;
import tabor.rhythm.Time;
import tabor.words.Words;

/** The lines of a chart in words that every output uses; they agree in number. */
public final class ChartWords implements Chart.Cases<String> {
  /** For outputs that are English whatever the page is. */
  public static final ChartWords ENGLISH = new ChartWords(Words.english());

  private final Words words;

  /** Charts in a language. */
  public ChartWords(Words words) {
    this.words = words;
  }

  /** The language. */
  public Words words() {
    return words;
  }

  /** A line in words, without a full stop. */
  public String of(Chart.Item item) {
    return item.match(this);
  }

  /** {@code 1 bar}, {@code 2 bars}. */
  public String bars(long count) {
    return words.text("some.bars", count);
  }

  /** {@code 90 seconds}, {@code 1 minute}, {@code 3 minutes}. */
  public String time(Time seconds) {
    Time minutes = seconds.over(60);
    return minutes.isWhole() && minutes.sign() > 0
        ? words.text("some.minutes", minutes.num())
        : words.text("some.seconds", seconds.equals(Time.ONE) ? 1 : 2, words.decimal(seconds));
  }

  /** How often or how long. */
  public String amount(Chart.Amount amount) {
    Time seconds = amount.seconds();
    return seconds != null
        ? words.text("chart.for", time(seconds))
        : amount.bars() > 0 ? bars(amount.bars()) : words.text("some.times", amount.times());
  }

  /** What a play line says after the names. */
  public String after(Chart.Play play) {
    boolean each = play.each() && play.turns().size() > 1;
    String amount = amount(play.amount());
    return with(each ? words.text("chart.each", amount) : amount, play.extras());
  }

  /** What a trade says after the name. */
  public String after(Chart.Trade trade) {
    return with(words.text("chart.trade", trade.bars(), amount(trade.amount())), trade.extras());
  }

  /** What a ladder says after its tempi. */
  public String after(Chart.Climb climb) {
    Time seconds = climb.seconds();
    String each =
        seconds != null
            ? words.text("chart.climb-time", time(seconds))
            : words.text(
                "chart.climb-each",
                climb.unit() == Chart.Every.BARS
                    ? bars(climb.every())
                    : words.text("some.times", climb.every()));
    return with(each, climb.extras());
  }

  /** With {@code you: hands} and {@code fill: Around the toms}, where there is such. */
  private String with(String what, Chart.Extras extras) {
    List<String> said = new ArrayList<>();
    said.add(what);
    if (!extras.without().isEmpty()) {
      said.add(words.text("chart.you", words.list(Lists.map(extras.without(), this::part))));
    }
    if (extras.fill() != null) {
      said.add(words.text("chart.fill", extras.fill().caption()));
    }
    return words.list(said);
  }

  private String part(Part part) {
    Surface surface = part.surface();
    if (surface != null) {
      return words.surface(surface);
    }
    if (part.limbs().size() == 1) {
      return words.limb(part.limbs().iterator().next());
    }
    return words.text(
        part.limbs().size() > 2
            ? "limb.everything"
            : part.limbs().contains(Limb.RIGHT_HAND) ? "limb.hands" : "limb.feet");
  }

  @Override
  public String countIn(Chart.CountIn item) {
    return words.text("chart.count-in", bars(item.bars()));
  }

  @Override
  public String click(Chart.SetClick item) {
    List<String> said = new ArrayList<>();
    if (!item.beats().isEmpty()) {
      List<String> beats = Lists.map(item.beats(), String::valueOf);
      said.add(words.text("chart.click-beats", beats.size(), words.list(beats)));
    } else {
      said.add(words.text("chart.click-" + Words.word(item.click())));
    }
    if (item.barsOn() > 0) {
      said.add(words.text("chart.click-bars", bars(item.barsOn()), item.barsOff()));
    }
    return words.text("chart.click", words.list(said));
  }

  @Override
  public String play(Chart.Play item) {
    return words.text("change.line", names(item), after(item));
  }

  /** What is played, in order. */
  public String names(Chart.Play item) {
    return words.then(Lists.map(item.named(), Section::caption));
  }

  @Override
  public String rest(Chart.Rest item) {
    return words.text("chart.rest", bars(item.bars()));
  }

  @Override
  public String trade(Chart.Trade item) {
    return words.text("chart.trade-of", item.turn().groove().caption(), after(item));
  }

  @Override
  public String pause(Chart.Pause item) {
    return words.text("chart.rest", time(item.seconds()));
  }

  @Override
  public String ramp(Chart.Ramp item) {
    return words.text(
        "chart.ramp",
        words.tempo(item.from()),
        words.decimal(item.to().perMinute()),
        bars(item.bars()));
  }

  @Override
  public String dynamic(Chart.SetDynamic item) {
    return words.text("chart.dynamic", item.loudness().word());
  }

  @Override
  public String hold(Chart.Hold item) {
    return words.text("chart.hold", words.text("some.beats", item.beats()));
  }

  @Override
  public String cue(Chart.Cue item) {
    return item.bar() == 0 ? item.text() : words.text("chart.cue-bar", item.text(), item.bar());
  }

  @Override
  public String mark(Chart.Mark item) {
    return "[" + item.text() + "]";
  }

  @Override
  public String climb(Chart.Climb item) {
    return words.text(
        "change.line", item.groove().caption(), words.list(List.of(tempi(item), after(item))));
  }

  /** From the first rung of a ladder to the last. */
  public String tempi(Chart.Climb item) {
    return words.text(
        "chart.tempi",
        words.tempo(item.tempi().get(0)),
        words.decimal(item.tempi().get(item.tempi().size() - 1).perMinute()));
  }
}
