package tabor.perform;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tabor.groove.Chart;
import tabor.groove.Part;
import tabor.groove.Section;
import tabor.rhythm.Time;

/** The lines of a chart in words that every output uses; they agree in number. */
public final class ChartWords implements Chart.Cases<String> {
  private static final ChartWords WORDS = new ChartWords();

  private ChartWords() {}

  /** A line in words, without a full stop. */
  public static String of(Chart.Item item) {
    return item.match(WORDS);
  }

  /** {@code 1 bar}, {@code 2 bars}. */
  public static String some(long count, String one) {
    return count == 1 ? "1 " + one : count + " " + one + "s";
  }

  /** {@code 90 seconds}, {@code 1 minute}, {@code 3 minutes}. */
  public static String time(Time seconds) {
    Time minutes = seconds.over(60);
    return minutes.isWhole() && minutes.sign() > 0
        ? some(minutes.num(), "minute")
        : seconds.equals(Time.ONE) ? "1 second" : seconds.decimal() + " seconds";
  }

  /** How often or how long. */
  public static String amount(Chart.Amount amount) {
    Time seconds = amount.seconds();
    return seconds != null
        ? "for " + time(seconds)
        : amount.bars() > 0 ? some(amount.bars(), "bar") : some(amount.times(), "time");
  }

  /** What a play line says after the names. */
  public static String after(Chart.Play play) {
    boolean each = play.each() && play.turns().size() > 1;
    return (each ? "each " : "") + amount(play.amount()) + extras(play.extras());
  }

  /** What a trade says after the name. */
  public static String after(Chart.Trade trade) {
    return some(trade.bars(), "bar")
        + ", then "
        + (trade.bars() == 1 ? "1 for you" : trade.bars() + " for you")
        + ", "
        + amount(trade.amount())
        + extras(trade.extras());
  }

  /** What a ladder says after its tempi. */
  public static String after(Chart.Climb climb) {
    Time seconds = climb.seconds();
    String unit = climb.unit() == Chart.Every.BARS ? "bar" : "time";
    String each =
        seconds == null
            ? some(climb.every(), unit) + " at each tempo"
            : "for " + time(seconds) + " in all, the same at each tempo";
    return each + extras(climb.extras());
  }

  /** {@code , you: hands, fill: Around the toms}; empty for nothing. */
  public static String extras(Chart.Extras extras) {
    StringBuilder words = new StringBuilder();
    if (!extras.without().isEmpty()) {
      words.append(", you: ");
      words.append(extras.without().stream().map(Part::words).collect(Collectors.joining(", ")));
    }
    if (extras.fill() != null) {
      words.append(", fill: ").append(extras.fill().caption());
    }
    return words.toString();
  }

  @Override
  public String countIn(Chart.CountIn item) {
    return "Count in " + some(item.bars(), "bar");
  }

  @Override
  public String click(Chart.SetClick item) {
    List<String> words = new ArrayList<>();
    if (!item.beats().isEmpty()) {
      String beats = item.beats().stream().map(String::valueOf).collect(Collectors.joining(", "));
      words.add((item.beats().size() == 1 ? "on beat " : "on beats ") + beats);
    } else {
      words.add(
          switch (item.click()) {
            case OFF -> "off";
            case ON -> "on";
            case QUARTERS -> "on quarters";
            case EIGHTHS -> "on eighths";
          });
    }
    if (item.barsOn() > 0) {
      words.add(some(item.barsOn(), "bar") + " on, " + item.barsOff() + " off");
    }
    return "Click " + String.join(", ", words);
  }

  @Override
  public String play(Chart.Play item) {
    String names =
        item.named().stream().map(Section::caption).collect(Collectors.joining(", then "));
    return names + ": " + after(item);
  }

  @Override
  public String rest(Chart.Rest item) {
    return "Rest " + some(item.bars(), "bar");
  }

  @Override
  public String trade(Chart.Trade item) {
    return "Trade " + item.turn().groove().caption() + ": " + after(item);
  }

  @Override
  public String pause(Chart.Pause item) {
    return "Rest " + time(item.seconds());
  }

  @Override
  public String ramp(Chart.Ramp item) {
    return "Tempo "
        + item.from().words()
        + " to "
        + item.to().perMinute().decimal()
        + " over "
        + some(item.bars(), "bar");
  }

  @Override
  public String dynamic(Chart.SetDynamic item) {
    return "Dynamic " + item.loudness().word();
  }

  @Override
  public String hold(Chart.Hold item) {
    return "Hold the last stroke " + some(item.beats(), "beat");
  }

  @Override
  public String cue(Chart.Cue item) {
    return item.text() + (item.bar() == 0 ? "" : " (bar " + item.bar() + ")");
  }

  @Override
  public String mark(Chart.Mark item) {
    return "[" + item.text() + "]";
  }

  @Override
  public String climb(Chart.Climb item) {
    return item.groove().caption()
        + ": "
        + item.tempi().get(0).words()
        + " to "
        + item.tempi().get(item.tempi().size() - 1).perMinute().decimal()
        + ", "
        + after(item);
  }
}
