package tabor.groove;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import tabor.rhythm.Feel;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** Says what a step changed about the section as a whole: bars, tempo, feel, kit, dynamics. */
final class SettingWords {
  private SettingWords() {}

  static List<String> of(Groove base, Groove step) {
    List<String> words = new ArrayList<>();
    if (base.bars() != step.bars()) {
      words.add("now " + step.bars() + (step.bars() == 1 ? " bar" : " bars"));
    }
    Groove.Setting was = base.setting();
    Groove.Setting is = step.setting();
    if (!was.tempo().equals(is.tempo())) {
      words.add(tempo(was.tempo(), is.tempo()));
    }
    if (!was.feel().equals(is.feel())) {
      words.add(feel(is.feel()));
    }
    if (!was.kit().name().equals(is.kit().name())) {
      words.add("on the " + is.kit().name() + " kit");
    }
    if (was.kit().leftHanded() != is.kit().leftHanded()) {
      words.add(is.kit().leftHanded() ? "for a left-handed player" : "for a right-handed player");
    }
    if (!was.levels().equals(is.levels())) {
      Levels levels = is.levels();
      words.add("levels " + levels.ghost() + ", " + levels.plain() + " and " + levels.accent());
    }
    loudness(base, step, words);
    return words;
  }

  private static String tempo(Tempo was, Tempo is) {
    String number = decimal(is.perMinute());
    return was.beat().equals(is.beat())
        ? "tempo now " + number
        : "tempo now " + beat(is.beat()) + " = " + number;
  }

  private static String decimal(Time value) {
    return BigDecimal.valueOf(value.num())
        .divide(BigDecimal.valueOf(value.den()), 2, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  private static String beat(Time beat) {
    boolean dotted = beat.num() == 3;
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
    return (dotted ? "dotted " : "") + name;
  }

  private static String feel(Feel feel) {
    if (feel.isStraight()) {
      return "straight again";
    }
    String unit =
        switch (feel.unit()) {
          case EIGHTHS -> "eighths";
          case SIXTEENTHS -> "sixteenths";
        };
    return "swung " + unit;
  }

  private static void loudness(Groove base, Groove step, List<String> words) {
    for (Loudness.Mark mark : step.marks()) {
      if (!base.marks().contains(mark)) {
        words.add(mark.loudness().word() + where(step, mark.bar(), mark.bar()));
      }
    }
    for (Loudness.Hairpin hairpin : step.hairpins()) {
      if (!base.hairpins().contains(hairpin)) {
        words.add(
            (hairpin.grows() ? "crescendo" : "diminuendo")
                + " to "
                + hairpin.target().word()
                + where(step, hairpin.fromBar(), hairpin.toBar()));
      }
    }
  }

  private static String where(Groove step, int from, int to) {
    if (step.bars() == 1) {
      return "";
    }
    return from == to ? " in bar " + from : " from bar " + from + " to " + to;
  }
}
