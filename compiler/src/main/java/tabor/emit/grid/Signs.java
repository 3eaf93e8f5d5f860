package tabor.emit.grid;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;

/** How a stroke is shown, and the legend of the signs that are used. */
final class Signs {
  private Signs() {}

  /** The cell of the strokes of one part at one place: usually one, two where both hands strike. */
  static GridBar.Cell cell(Collection<Stroke> strokes) {
    Level level = Level.GHOST;
    Ornaments ornaments = Ornaments.NONE;
    for (Stroke stroke : strokes) {
      level = stroke.level().compareTo(level) > 0 ? stroke.level() : level;
      for (Ornament ornament : stroke.ornaments().list()) {
        ornaments = ornaments.with(ornament);
      }
    }
    String small = "'".repeat(ornaments.smallStrokes());
    StringBuilder after = new StringBuilder(level == Level.GHOST ? ")" : "");
    for (Ornament ornament : ornaments.list()) {
      after.append(suffix(ornament));
    }
    return new GridBar.Cell(
        level == Level.GHOST ? small + "(" : small,
        level == Level.ACCENT ? 'X' : 'x',
        after.toString());
  }

  private static String suffix(Ornament ornament) {
    return switch (ornament) {
      case FLAM, DRAG, RUFF -> "";
      case DIDDLE -> "/";
      case OPEN_ROLL -> "//";
      case BUZZ -> "~";
      case CHOKE -> "!";
      case RIMSHOT -> "^";
    };
  }

  /** The signs that these sections use, each with its meaning; empty where all is plain. */
  static List<String> legend(List<Groove> grooves) {
    Set<Level> levels = EnumSet.noneOf(Level.class);
    Set<Ornament> ornaments = EnumSet.noneOf(Ornament.class);
    boolean rolls = false;
    boolean both = false;
    for (Groove groove : grooves) {
      both |= groove.setting().showSticking() && handsMeet(groove);
      for (Stroke stroke : groove.strokes()) {
        levels.add(stroke.level());
        ornaments.addAll(stroke.ornaments().list());
        rolls |= goesOn(groove, stroke);
      }
    }
    List<String> legend = new ArrayList<>();
    if (levels.isEmpty()) {
      return legend;
    }
    legend.add("x stroke");
    if (levels.contains(Level.ACCENT)) {
      legend.add("X accent");
    }
    if (levels.contains(Level.GHOST)) {
      legend.add("(x) ghost");
    }
    for (Ornament ornament : ornaments) {
      legend.add(meaning(ornament));
    }
    if (rolls) {
      legend.add("- goes on");
    }
    legend.add(". silent");
    if (both) {
      legend.add("RL both hands, that of the upper row first");
    }
    return legend;
  }

  private static boolean handsMeet(Groove groove) {
    Stroke last = null;
    for (Stroke stroke : groove.strokes()) {
      if (stroke.limb().isHand()) {
        if (last != null && last.bar() == stroke.bar() && last.at().equals(stroke.at())) {
          return true;
        }
        last = stroke;
      }
    }
    return false;
  }

  private static String meaning(Ornament ornament) {
    return switch (ornament) {
      case FLAM -> "'x flam";
      case DRAG -> "''x drag";
      case RUFF -> "'''x ruff";
      case DIDDLE -> "x/ diddle";
      case OPEN_ROLL -> "x// open roll";
      case BUZZ -> "x~ buzz";
      case CHOKE -> "x! choke";
      case RIMSHOT -> "x^ rimshot";
    };
  }

  /** True for a roll that is held beyond its own slot. */
  static boolean goesOn(Groove groove, Stroke stroke) {
    boolean roll = stroke.ornaments().list().stream().anyMatch(Ornament::isRoll);
    return roll && stroke.slot().length(groove.meter()).before(stroke.length());
  }
}
