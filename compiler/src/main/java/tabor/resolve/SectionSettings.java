package tabor.resolve;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Levels;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Limits;
import tabor.rhythm.Feel;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;

/** What a groove or step says of its kit, tempo, feel, levels and print. */
record SectionSettings(SectionSyntax syntax, Scope scope, Problems problems) {
  /** A setting with what the section says for itself. */
  Groove.Setting after(Groove.Setting from) {
    Kit kit = from.kit();
    Tempo tempo = from.tempo();
    Feel feel = from.feel();
    Levels levels = from.levels();
    Shows shows = new Shows(from.showCounts(), from.showSticking(), from.showChanges());
    for (Line line : syntax.lines()) {
      Statement statement = line.statement();
      if (statement instanceof SettingStatement.On on) {
        kit = kit(line, on);
      } else if (statement instanceof SettingStatement.TempoSetting written) {
        tempo = scope.options().view().tempo(TempoMark.of(written.tempo()).in(from.meter()));
      } else if (statement instanceof SettingStatement.FeelSetting written) {
        feel = SettingReader.feel(written);
      } else if (statement instanceof SettingStatement.LevelsSetting written) {
        levels = SettingReader.levels(written, levels);
      } else if (statement instanceof SettingStatement.Show written) {
        shows = shows.after(written);
      }
    }
    Time asked = scope.options().tempo();
    shows = scope.options().view().shows(shows);
    return new Groove.Setting(
        from.meters(),
        kit,
        asked == null ? tempo : tempo.at(asked),
        feel,
        levels,
        shows.counts(),
        shows.sticking(),
        shows.changes(),
        scope.options().view().wording(scope.defaults().wording()));
  }

  private Kit kit(Line line, SettingStatement.On on) {
    String name = on.kit().text();
    Kit kit = asked(scope.kit(name));
    if (kit == null) {
      problems.unknown(line, name, on.kit().span(), "kit", scope.near(Scope.Kind.KIT, name));
    }
    return played(kit == null ? Kits.FIVE_PIECE : kit);
  }

  /** The kit that the file's sections start from, or the one asked for. */
  Kit ofFile() {
    Kit kit = asked(scope.defaults().kit());
    return played(kit == null ? Kits.FIVE_PIECE : kit);
  }

  private @Nullable Kit asked(@Nullable Kit written) {
    String asked = scope.options().on();
    return asked == null ? written : scope.kit(asked);
  }

  /**
   * The kit with the header's limits behind its own, those of the player asked for in front, and
   * mirrored if that is asked for.
   */
  private Kit played(Kit kit) {
    Map<String, Limits> header = scope.defaults().limits();
    String player = scope.options().player();
    Limits own = scope.options().view().limits();
    Kit limited = kit;
    if (!header.isEmpty() || player != null || own != null) {
      Map<String, Limits> all = new HashMap<>(header);
      all.putAll(kit.limits());
      Limits named = own != null ? own : player == null ? null : all.get(player);
      if (named != null) {
        all.put("", named);
      }
      limited =
          new Kit(
              kit.name(),
              kit.surfaces(),
              kit.letters(),
              kit.standIns(),
              kit.positions(),
              all,
              kit.leftHanded());
    }
    return scope.options().leftHanded() && !kit.leftHanded() ? limited.mirrored() : limited;
  }
}
