package tabor.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.rhythm.CountNames;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * A lesson written in the plainest way: every groove and step a groove of its own, every stroke a
 * line {@code add … with … at …}.
 */
final class WrittenOut {
  private WrittenOut() {}

  /** The same music without the sections that cannot be written so: those with rolls or pickups. */
  static String of(Lesson lesson, String kits) {
    StringBuilder text = new StringBuilder(kits);
    for (Groove groove : writable(lesson)) {
      text.append(heading(groove));
      lines(groove).forEach(line -> text.append("  ").append(line).append('\n'));
      ornaments(groove).forEach(line -> text.append("  ").append(line).append('\n'));
    }
    return text.toString();
  }

  static List<Groove> writable(Lesson lesson) {
    return lesson.sections().stream()
        .filter(Groove.class::isInstance)
        .map(Groove.class::cast)
        .filter(
            groove ->
                groove.pickup().sign() == 0
                    && groove.marks().isEmpty()
                    && groove.hairpins().isEmpty()
                    && groove.written().stream()
                        .noneMatch(s -> s.ornaments().isRolled() || !s.hasLimb()))
        .toList();
  }

  private static String heading(Groove groove) {
    Groove.Setting setting = groove.setting();
    Tempo tempo = setting.tempo();
    String title = groove.title() == null ? "" : " \"" + groove.title() + '"';
    String unit = tempo.beatWords().replace(' ', '-');
    String silence =
        java.util.stream.IntStream.rangeClosed(1, groove.bars())
            .mapToObj(bar -> " .".repeat(groove.meter(bar).beatCount()))
            .collect(Collectors.joining(" |"));
    return "groove "
        + groove.name()
        + title
        + "\n  time "
        + setting.meters().words()
        + "\n  tempo "
        + unit
        + " = "
        + tempo.perMinute().decimal()
        + "\n  feel "
        + setting.feel().words()
        + "\n  on "
        + setting.kit().name()
        + "\n  levels ghost "
        + setting.levels().ghost()
        + " plain "
        + setting.levels().plain()
        + " accent "
        + setting.levels().accent()
        + "\n  show "
        + (setting.showCounts() ? "counts " : "")
        + (setting.showSticking() ? "sticking " : "")
        + (setting.showChanges() ? "changes" : "no-changes")
        + groove.prose().stream()
            .map(prose -> "\n  text \"\"\"\n" + prose + "\n  \"\"\"")
            .collect(Collectors.joining())
        + "\n  kick :"
        + silence
        + "\n";
  }

  /** One line for each stroke, in order. */
  static List<String> lines(Groove groove) {
    return groove.written().stream().map(stroke -> line(groove, stroke)).toList();
  }

  static String line(Groove groove, Stroke stroke) {
    String limb = stroke.limb().words();
    String level =
        switch (stroke.level()) {
          case GHOST -> " ghosted";
          case PLAIN -> "";
          case ACCENT -> " accented";
        };
    return "add "
        + stroke.surface().name()
        + " with "
        + limb
        + level
        + " at "
        + count(groove.meter(stroke.bar()), stroke.at())
        + " in bar "
        + stroke.bar();
  }

  /** A place by the division of its beat, so that nothing depends on what else is there. */
  static String count(Meter meter, Time at) {
    int beat = meter.beatAt(at);
    Time part = at.minus(meter.beatStart(beat)).over(meter.beat(beat));
    return part.sign() == 0
        ? CountNames.of(at, meter).toString()
        : (beat + 1) + "." + (part.num() + 1) + "/" + part.den();
  }

  private static List<String> ornaments(Groove groove) {
    List<String> lines = new ArrayList<>();
    for (Stroke stroke : groove.written()) {
      for (Ornament ornament : stroke.ornaments().list()) {
        lines.add(
            ornament.name().toLowerCase(Locale.ROOT)
                + " "
                + stroke.limb().words()
                + " at "
                + count(groove.meter(stroke.bar()), stroke.at())
                + " in bar "
                + stroke.bar());
      }
    }
    return lines;
  }
}
