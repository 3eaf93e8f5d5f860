package tabor.groove;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.kit.Limb;
import tabor.lists.Lists;
import tabor.words.Words;

/** Which parts some strokes make up. */
final class PartSplit {
  private PartSplit() {}

  /** Takes one part: its name, whether all its strokes are meant, and the strokes. */
  interface Said {
    void part(String part, boolean whole, List<Stroke> strokes);
  }

  /** Splits strokes into parts, the fewest that say it: all, hands, a limb, a surface. */
  static void split(Collection<Stroke> some, List<Stroke> of, Words words, Said said) {
    if (some.isEmpty()) {
      return;
    }
    Set<Stroke> left = new LinkedHashSet<>(some);
    if (left.size() > 1 && left.containsAll(of)) {
      said.part(words.text("limb.everything"), true, of);
      return;
    }
    for (boolean hands : new boolean[] {true, false}) {
      List<Stroke> pair = Lists.filter(of, s -> s.limb().isHand() == hands);
      boolean both = Lists.any(pair, s -> s.limb() != pair.get(0).limb());
      if (both && left.containsAll(pair)) {
        said.part(words.text(hands ? "limb.hands" : "limb.feet"), true, pair);
        pair.forEach(left::remove);
      }
    }
    for (Limb limb : Limb.values()) {
      List<Stroke> own = Lists.filter(of, s -> s.limb() == limb);
      boolean shares = Lists.any(of, s -> s.limb() != limb && sharesSurface(s, own));
      if (own.size() > 1
          && (shares || !Lists.all(own, s -> sharesSurface(s, own.subList(0, 1))))
          && left.containsAll(own)) {
        said.part(words.limb(limb), true, own);
        own.forEach(left::remove);
      }
    }
    bySurface(left)
        .forEach(
            (surface, strokes) -> {
              long all = Lists.count(of, s -> s.surface().name().equals(surface));
              said.part(words.surface(strokes.get(0).surface()), strokes.size() == all, strokes);
            });
  }

  private static boolean sharesSurface(Stroke stroke, List<Stroke> own) {
    return Lists.any(own, s -> s.surface().name().equals(stroke.surface().name()));
  }

  /** Strokes by the name of their surface, hands before feet, each in order of time. */
  static Map<String, List<Stroke>> bySurface(Collection<Stroke> strokes) {
    List<Stroke> sorted = new ArrayList<>(strokes);
    sorted.sort(Stroke.ORDER);
    Map<String, List<Stroke>> map = new LinkedHashMap<>();
    // Hands are named before feet.
    for (boolean hands : new boolean[] {true, false}) {
      for (Stroke stroke : sorted) {
        if (stroke.limb().isHand() == hands) {
          map.computeIfAbsent(stroke.surface().name(), name -> new ArrayList<>()).add(stroke);
        }
      }
    }
    return map;
  }
}
