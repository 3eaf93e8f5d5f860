package tabor.emit.html;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import tabor.groove.Groove;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.words.Words;

/** What the page says about meter, tempo, feel and charts. */
final class PageWording {
  private PageWording() {}

  /** The facts of a setting, each a few words. */
  static List<String> facts(Groove.Setting setting, Words words) {
    List<String> facts = new ArrayList<>();
    facts.add(words.meters(setting.meters()));
    facts.add(tempo(setting.tempo(), words));
    if (!setting.feel().isStraight()) {
      facts.add(words.feel(setting.feel()));
    }
    facts.add(words.text("web.kit", words.kit(setting.kit().name())));
    return facts;
  }

  /** The kit of a section if it is not its lesson's; meter and tempo stand in the notation. */
  static List<String> facts(Groove.Setting own, Groove.Setting head, Words words) {
    boolean same = own.kit().name().equals(head.kit().name());
    return same ? List.of() : List.of(words.text("web.kit", words.kit(own.kit().name())));
  }

  /** {@code dotted quarter = 60}. */
  static String tempo(Tempo tempo, Words words) {
    return words.text(
        "tempo.is", words.beat(tempo.beat()), words.decimal(decimal(tempo.perMinute())));
  }

  /** What a tempo counts, in the plural: {@code dotted quarters}. */
  static String units(Time beat, Words words) {
    return words.beats(beat);
  }

  /** At most two digits after the point. */
  static String decimal(Time number) {
    return decimal(number, 2);
  }

  /** A fraction as a decimal, rounded to so many digits after the point, without idle zeros. */
  static String decimal(Time number, int digits) {
    long scale = 1;
    for (int i = 0; i < digits; i++) {
      scale *= 10;
    }
    if (Math.abs(number.num()) < Long.MAX_VALUE / scale && number.den() < Long.MAX_VALUE / 2) {
      long most = Math.abs(number.num()) * scale;
      long rest = most % number.den();
      long scaled = most / number.den() + (2 * rest >= number.den() ? 1 : 0);
      return number.num() < 0 && scaled > 0 ? "-" + point(scaled, scale) : point(scaled, scale);
    }
    BigDecimal exact =
        new BigDecimal(number.num())
            .divide(new BigDecimal(number.den()), new MathContext(30, RoundingMode.HALF_UP));
    BigDecimal rounded = exact.setScale(digits, RoundingMode.HALF_UP).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }

  /** A whole number over a power of ten, without idle zeros. */
  private static String point(long scaled, long scale) {
    String whole = Long.toString(scaled / scale);
    long rest = scaled % scale;
    if (rest == 0) {
      return whole;
    }
    String digits = Long.toString(scale + rest);
    int end = digits.length();
    while (digits.charAt(end - 1) == '0') {
      end--;
    }
    return whole + "." + digits.substring(1, end);
  }
}
