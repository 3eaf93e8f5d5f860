package tabor.emit.grid;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.words.Words;

/** Meter, tempo, feel and kit in one line. */
final class SettingLine {
  private SettingLine() {}

  /** What differs from {@code known}; everything where that is null. Empty if nothing does. */
  static String of(Groove.Setting setting, Groove.@Nullable Setting known, Words words) {
    List<String> parts = new ArrayList<>();
    if (known == null || !known.meters().equals(setting.meters())) {
      parts.add(words.meters(setting.meters()));
    }
    if (known == null || !known.tempo().equals(setting.tempo())) {
      parts.add(words.tempo(setting.tempo()));
    }
    if (known == null ? !setting.feel().isStraight() : !known.feel().equals(setting.feel())) {
      parts.add(words.feel(setting.feel()));
    }
    if (known == null || !known.kit().name().equals(setting.kit().name())) {
      parts.add(words.text("grid.kit", words.kit(setting.kit().name())));
    }
    if (known == null
        ? setting.kit().leftHanded()
        : known.kit().leftHanded() != setting.kit().leftHanded()) {
      parts.add(words.text(setting.kit().leftHanded() ? "grid.left-handed" : "grid.right-handed"));
    }
    return words.list(parts);
  }
}
