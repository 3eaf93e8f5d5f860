package tabor.emit.grid;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** Meter, tempo, feel and kit in one line. */
final class SettingLine {
  private SettingLine() {}

  /** What differs from {@code known}; everything where that is null. Empty if nothing does. */
  static String of(Groove.Setting setting, Groove.@Nullable Setting known) {
    List<String> parts = new ArrayList<>();
    if (known == null || !known.meter().equals(setting.meter())) {
      parts.add(meter(setting.meter()));
    }
    if (known == null || !known.tempo().equals(setting.tempo())) {
      parts.add(tempo(setting.tempo()));
    }
    if (known == null ? !setting.feel().isStraight() : !known.feel().equals(setting.feel())) {
      parts.add(feel(setting.feel()));
    }
    if (known == null || !known.kit().name().equals(setting.kit().name())) {
      parts.add(setting.kit().name() + " kit");
    }
    if (known == null
        ? setting.kit().leftHanded()
        : known.kit().leftHanded() != setting.kit().leftHanded()) {
      parts.add(setting.kit().leftHanded() ? "left-handed" : "right-handed");
    }
    return String.join(", ", parts);
  }

  private static String meter(Meter meter) {
    if (meter.equals(Meter.of(meter.count(), meter.unit()))) {
      return meter.signature();
    }
    return meter.signature()
        + " in "
        + (meter.isEven()
            ? meter.beatCount()
            : meter.beats().stream()
                .map(beat -> beat.times(meter.unit()).toString())
                .collect(Collectors.joining("+")));
  }

  /** {@code dotted quarter = 60}. */
  static String tempo(Tempo tempo) {
    return beat(tempo.beat()) + " = " + decimal(tempo.perMinute());
  }

  /** At most two places after the point. */
  static String decimal(Time value) {
    return BigDecimal.valueOf(value.num())
        .divide(BigDecimal.valueOf(value.den()), 2, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  private static String beat(Time beat) {
    boolean dotted = Meter.isDotted(beat);
    Time plain = dotted ? beat.times(Time.of(2, 3)) : beat;
    String name =
        switch ((int) plain.den()) {
          case 1 -> "whole";
          case 2 -> "half";
          case 4 -> "quarter";
          case 8 -> "eighth";
          case 16 -> "sixteenth";
          default -> plain.toString();
        };
    return dotted ? "dotted " + name : name;
  }

  private static String feel(Feel feel) {
    if (feel.isStraight()) {
      return "straight";
    }
    String unit =
        switch (feel.unit()) {
          case EIGHTHS -> "eighths";
          case SIXTEENTHS -> "sixteenths";
        };
    return feel.share().equals(Time.of(2, 3))
        ? "swing " + unit + " as triplets"
        : "swing " + unit + " " + decimal(feel.share().times(100)) + "%";
  }
}
