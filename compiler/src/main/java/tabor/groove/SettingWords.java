package tabor.groove;

import java.util.ArrayList;
import java.util.List;
import tabor.rhythm.Tempo;
import tabor.words.Words;

/** Says what a step changed about the section as a whole: bars, tempo, feel, kit, dynamics. */
record SettingWords(Words words) {
  static List<String> of(Groove base, Groove step, Words words) {
    return new SettingWords(words).of(base, step);
  }

  private List<String> of(Groove base, Groove step) {
    List<String> said = new ArrayList<>();
    if (base.bars() != step.bars()) {
      said.add(words.text("change.now", words.text("some.bars", step.bars())));
    }
    Groove.Setting was = base.setting();
    Groove.Setting is = step.setting();
    if (!was.tempo().equals(is.tempo())) {
      said.add(tempo(was.tempo(), is.tempo()));
    }
    if (!was.feel().equals(is.feel())) {
      said.add(is.feel().isStraight() ? words.text("change.straight") : words.feel(is.feel()));
    }
    if (!was.kit().name().equals(is.kit().name())) {
      said.add(words.text("change.kit", words.kit(is.kit().name())));
    }
    if (was.kit().leftHanded() != is.kit().leftHanded()) {
      said.add(words.text(is.kit().leftHanded() ? "player.left-handed" : "player.right-handed"));
    }
    if (!was.levels().equals(is.levels())) {
      Levels levels = is.levels();
      said.add(words.text("change.levels", levels.ghost(), levels.plain(), levels.accent()));
    }
    loudness(base, step, said);
    return said;
  }

  private String tempo(Tempo was, Tempo is) {
    return words.text(
        "change.tempo",
        was.beat().equals(is.beat()) ? words.decimal(is.perMinute()) : words.tempo(is));
  }

  private void loudness(Groove base, Groove step, List<String> said) {
    for (Loudness.Mark mark : step.marks()) {
      if (!base.marks().contains(mark)) {
        said.add(where(mark.loudness().word(), step, mark.bar(), mark.bar()));
      }
    }
    for (Loudness.Hairpin hairpin : step.hairpins()) {
      if (!base.hairpins().contains(hairpin)) {
        String hairpinTo =
            words.text(
                hairpin.grows() ? "change.crescendo" : "change.diminuendo",
                hairpin.target().word());
        said.add(where(hairpinTo, step, hairpin.fromBar(), hairpin.toBar()));
      }
    }
  }

  private String where(String what, Groove step, int from, int to) {
    if (step.bars() == 1) {
      return what;
    }
    return words.text(
        "place.after",
        what,
        from == to ? words.text("place.bar", from) : words.text("place.from-bar", from, to));
  }
}
