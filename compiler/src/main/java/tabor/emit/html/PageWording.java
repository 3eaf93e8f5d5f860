package tabor.emit.html;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import tabor.groove.Groove;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** What the page says about meter, tempo, feel and charts. */
final class PageWording {
  private PageWording() {}

  /** The facts of a setting, each a few words. */
  static List<String> facts(Groove.Setting setting) {
    List<String> facts = new ArrayList<>();
    facts.add(setting.meters().inWords());
    facts.add(tempo(setting.tempo()));
    if (!setting.feel().isStraight()) {
      facts.add(feel(setting.feel()));
    }
    facts.add("on " + setting.kit().name());
    return facts;
  }

  /** The kit of a section if it is not its lesson's; meter and tempo stand in the notation. */
  static List<String> facts(Groove.Setting own, Groove.Setting head) {
    boolean same = own.kit().name().equals(head.kit().name());
    return same ? List.of() : List.of("on " + own.kit().name());
  }

  /** {@code dotted quarter = 60}. */
  static String tempo(Tempo tempo) {
    return unit(tempo.beat(), false) + " = " + decimal(tempo.perMinute());
  }

  /** What a tempo counts: {@code dotted quarter}, in the plural {@code dotted quarters}. */
  static String unit(Time beat, boolean plural) {
    Time plain = Meter.isDotted(beat) ? beat.times(2).over(3) : beat;
    String name =
        plain.num() != 1
            ? beat + " of a whole note"
            : switch ((int) plain.den()) {
              case 1 -> "whole note";
              case 2 -> "half";
              case 4 -> "quarter";
              case 8 -> "eighth";
              case 16 -> "sixteenth";
              case 32 -> "thirty-second";
              default -> plain + " note";
            };
    String several = name.equals("half") ? "halves" : name + "s";
    return (Meter.isDotted(beat) ? "dotted " : "") + (plural ? several : name);
  }

  private static String feel(Feel feel) {
    String unit = feel.unit() == Feel.Unit.EIGHTHS ? "eighths" : "sixteenths";
    boolean triplets = feel.share().equals(Time.of(2, 3));
    return "swing "
        + unit
        + (triplets ? " as triplets" : " " + decimal(feel.share().times(100)) + "%");
  }

  /** At most two digits after the point. */
  static String decimal(Time number) {
    return decimal(number, 2);
  }

  /** A fraction as a decimal, rounded to so many digits after the point, without idle zeros. */
  static String decimal(Time number, int digits) {
    BigDecimal exact =
        new BigDecimal(number.num())
            .divide(new BigDecimal(number.den()), new MathContext(30, RoundingMode.HALF_UP));
    BigDecimal rounded = exact.setScale(digits, RoundingMode.HALF_UP).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }
}
