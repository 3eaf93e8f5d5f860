package tabor.resolve;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;

/** Puts strokes in order and makes one of those that are one. */
final class StrokeOrder {
  private StrokeOrder() {}

  /**
   * The strokes in the order of {@link Stroke#ORDER}. A limb on one surface at one place is one
   * stroke, with the louder level; so is an open stroke on a surface that is struck anyway.
   */
  static List<Stroke> tidy(List<Stroke> strokes) {
    if (isTidy(strokes)) {
      return strokes;
    }
    List<Stroke> sorted = new ArrayList<>(strokes);
    sorted.sort(Stroke.ORDER);
    List<Stroke> kept = new ArrayList<>(sorted.size());
    int from = 0;
    while (from < sorted.size()) {
      int to = from + 1;
      while (to < sorted.size() && Stroke.areTogether(sorted.get(from), sorted.get(to))) {
        to++;
      }
      if (to == from + 1) {
        kept.add(sorted.get(from));
      } else {
        onePlace(sorted.subList(from, to), kept);
      }
      from = to;
    }
    return kept;
  }

  private static boolean isTidy(List<Stroke> strokes) {
    if (strokes.isEmpty()) {
      return true;
    }
    Stroke before = strokes.get(0);
    for (int i = 1; i < strokes.size(); i++) {
      Stroke stroke = strokes.get(i);
      int byPlace = Stroke.byPlace(before, stroke);
      if (byPlace > 0 || (byPlace == 0 && !isTidy(strokes, i))) {
        return false;
      }
      before = stroke;
    }
    return true;
  }

  /** True if a stroke is in order with those before it at its place, and one with none of them. */
  private static boolean isTidy(List<Stroke> strokes, int i) {
    Stroke stroke = strokes.get(i);
    if (Stroke.ORDER.compare(strokes.get(i - 1), stroke) >= 0) {
      return false;
    }
    for (int j = i - 1; j >= 0 && Stroke.areTogether(strokes.get(j), stroke); j--) {
      if ((stroke.open() || strokes.get(j).open()) && sameSurface(strokes.get(j), stroke)) {
        return false;
      }
    }
    return true;
  }

  private static boolean sameSurface(Stroke a, Stroke b) {
    return a.surface().name().equals(b.surface().name());
  }

  /** Makes one of the strokes of one place that are one. */
  private static void onePlace(List<Stroke> here, List<Stroke> kept) {
    if (here.size() == 2 && !sameSurface(here.get(0), here.get(1))) {
      kept.addAll(here);
      return;
    }
    Map<String, List<Stroke>> bySurface = new LinkedHashMap<>();
    for (Stroke stroke : here) {
      List<Stroke> there =
          bySurface.computeIfAbsent(stroke.surface().name(), name -> new ArrayList<>(2));
      int same = -1;
      for (int i = 0; i < there.size(); i++) {
        Stroke other = there.get(i);
        if (other.open() || stroke.open() || other.limb() == stroke.limb()) {
          same = i;
          break;
        }
      }
      if (same < 0) {
        there.add(stroke);
      } else {
        there.set(same, merged(there.get(same), stroke));
      }
    }
    int start = kept.size();
    bySurface.values().forEach(kept::addAll);
    kept.subList(start, kept.size()).sort(Stroke.ORDER);
  }

  /** Two strokes as one: the limb that is not open, the louder level, the ornaments of both. */
  private static Stroke merged(Stroke a, Stroke b) {
    Level louder = a.level().compareTo(b.level()) >= 0 ? a.level() : b.level();
    Ornaments both = a.ornaments();
    for (Ornament ornament : b.ornaments().list()) {
      both = both.with(ornament);
    }
    Stroke kept = a.open() && !b.open() ? a.by(b.limb(), b.dealt()).fixed() : a;
    kept = kept.level() == louder ? kept : kept.at(louder);
    return both.equals(kept.ornaments()) ? kept : kept.with(both);
  }
}
