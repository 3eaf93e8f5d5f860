package tabor.groove;

import java.util.ArrayList;
import java.util.List;
import tabor.rhythm.Tempo;

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
      words.add(is.feel().isStraight() ? "straight again" : is.feel().words());
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
    return "tempo now " + (was.beat().equals(is.beat()) ? is.perMinute().decimal() : is.words());
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
