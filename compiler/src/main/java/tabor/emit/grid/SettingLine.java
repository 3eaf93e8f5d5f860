package tabor.emit.grid;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;

/** Meter, tempo, feel and kit in one line. */
final class SettingLine {
  private SettingLine() {}

  /** What differs from {@code known}; everything where that is null. Empty if nothing does. */
  static String of(Groove.Setting setting, Groove.@Nullable Setting known) {
    List<String> parts = new ArrayList<>();
    if (known == null || !known.meters().equals(setting.meters())) {
      parts.add(setting.meters().inWords());
    }
    if (known == null || !known.tempo().equals(setting.tempo())) {
      parts.add(setting.tempo().words());
    }
    if (known == null ? !setting.feel().isStraight() : !known.feel().equals(setting.feel())) {
      parts.add(setting.feel().words());
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
}
