package tabor.resolve;

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
final class OwnSetting {
  private final SectionSyntax syntax;
  private final Scope scope;
  private final Problems problems;
  private final SettingReader settings;

  OwnSetting(SectionSyntax syntax, Scope scope, Problems problems) {
    this.syntax = syntax;
    this.scope = scope;
    this.problems = problems;
    this.settings = new SettingReader(problems);
  }

  /** A setting with what the section says for itself. */
  Groove.Setting setting(Groove.Setting from) {
    Kit kit = from.kit();
    Tempo tempo = from.tempo();
    Feel feel = from.feel();
    Levels levels = from.levels();
    boolean counts = from.showCounts();
    boolean sticking = from.showSticking();
    for (Line line : syntax.lines()) {
      Statement statement = line.statement();
      if (statement instanceof SettingStatement.On on) {
        kit = kit(on.kit().text(), line);
      } else if (statement instanceof SettingStatement.TempoSetting written) {
        Tempo read = settings.tempo(line, written.tempo(), from.meter());
        tempo = read == null ? tempo : read;
      } else if (statement instanceof SettingStatement.FeelSetting written) {
        Feel read = settings.feel(line, written);
        feel = read == null ? feel : read;
      } else if (statement instanceof SettingStatement.LevelsSetting written) {
        levels = settings.levels(line, written, levels);
      } else if (statement instanceof SettingStatement.Show written) {
        counts = SettingReader.shows(written, "counts");
        sticking = SettingReader.shows(written, "sticking");
      }
    }
    Time asked = scope.options().tempo();
    if (asked != null) {
      tempo = tempo.at(asked);
    }
    return new Groove.Setting(from.meter(), kit, tempo, feel, levels, counts, sticking);
  }

  /** The kit of this name, or the one asked for; said so at {@code line} if there is none. */
  Kit kit(String kitName, @Nullable Line line) {
    String asked = scope.options().on();
    Kit kit = scope.kit(asked == null ? kitName : asked);
    if (kit == null) {
      if (line != null && line.statement() instanceof SettingStatement.On on) {
        problems.unknown(line, on.kit(), "kit", scope.near(Scope.Kind.KIT, kitName));
      }
      kit = Kits.FIVE_PIECE;
    }
    Kit limited = withLimits(kit);
    return scope.options().leftHanded() && !kit.leftHanded() ? limited.mirrored() : limited;
  }

  /**
   * The kit with the header's limits behind its own, and those of the player asked for in front.
   */
  private Kit withLimits(Kit kit) {
    Map<String, Limits> header = scope.header().limits();
    String player = scope.options().player();
    if (header.isEmpty() && player == null) {
      return kit;
    }
    Map<String, Limits> all = new java.util.HashMap<>(header);
    all.putAll(kit.limits());
    Limits named = player == null ? null : all.get(player);
    if (named != null) {
      all.put("", named);
    }
    return new Kit(
        kit.name(),
        kit.surfaces(),
        kit.letters(),
        kit.standIns(),
        kit.positions(),
        all,
        kit.leftHanded());
  }
}
