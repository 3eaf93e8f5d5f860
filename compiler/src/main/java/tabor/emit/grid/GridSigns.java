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
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.words.Words;

/** How a stroke is shown, and the legend of the signs that are used. */
final class GridSigns {
  private GridSigns() {}

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
    StringBuilder before = new StringBuilder();
    StringBuilder after = new StringBuilder(level == Level.GHOST ? ")" : "");
    for (Ornament ornament : ornaments.list()) {
      before.append(ornament.before());
      after.append(ornament.after());
    }
    before.append(level == Level.GHOST ? "(" : "");
    return new GridBar.Cell(before.toString(), level == Level.ACCENT ? 'X' : 'x', after.toString());
  }

  /** The signs that these sections use, each with its meaning; empty where all is plain. */
  static List<String> legend(List<Groove> grooves, Words words) {
    Set<Level> levels = EnumSet.noneOf(Level.class);
    Set<Ornament> ornaments = EnumSet.noneOf(Ornament.class);
    boolean rolls = false;
    boolean both = false;
    for (Groove groove : grooves) {
      Snap snap = Snap.of(groove);
      both |= groove.setting().showSticking() && handsMeet(groove);
      for (Stroke stroke : groove.strokes()) {
        levels.add(stroke.level());
        ornaments.addAll(stroke.ornaments().list());
        rolls |= goesOn(snap, stroke);
      }
    }
    List<String> legend = new ArrayList<>();
    if (levels.isEmpty()) {
      return legend;
    }
    legend.add(words.text("grid.sign", "x", words.text("grid.stroke")));
    if (levels.contains(Level.ACCENT)) {
      legend.add(words.text("grid.sign", "X", words.text("key.accent")));
    }
    if (levels.contains(Level.GHOST)) {
      legend.add(words.text("grid.sign", "(x)", words.text("grid.ghost")));
    }
    for (Ornament ornament : ornaments) {
      legend.add(meaning(ornament, words));
    }
    if (rolls) {
      legend.add(words.text("grid.sign", "-", words.text("grid.roll-goes-on")));
    }
    legend.add(words.text("grid.sign", ".", words.text("grid.silent")));
    if (both) {
      legend.add(words.text("grid.sign", "RL", words.text("grid.both")));
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

  /** {@code x// open roll}. */
  private static String meaning(Ornament ornament, Words words) {
    return words.text(
        "grid.sign",
        ornament.before() + "x" + ornament.after(),
        words.text("ornament." + ornament.word()));
  }

  /** True for a roll that is held beyond its own slot. */
  static boolean goesOn(Snap snap, Stroke stroke) {
    return stroke.ornaments().isRolled() && snap.slotLength(stroke).before(stroke.length());
  }
}
