package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tabor.diagnostic.Near;
import tabor.kit.Kit;

/**
 * Other words of the trade for our surfaces, and the name that was probably meant. Common practice,
 * no source.
 */
final class SurfaceNames {
  private static final Map<String, String> TRADE =
      Map.ofEntries(
          Map.entry("bass", "kick"),
          Map.entry("bass-drum", "kick"),
          Map.entry("bassdrum", "kick"),
          Map.entry("bd", "kick"),
          Map.entry("kd", "kick"),
          Map.entry("sd", "snare"),
          Map.entry("snare-drum", "snare"),
          Map.entry("sn", "snare"),
          Map.entry("cross-stick", "snare.cross"),
          Map.entry("sidestick", "snare.cross"),
          Map.entry("side-stick", "snare.cross"),
          Map.entry("rim", "snare.cross"),
          Map.entry("hh", "hihat"),
          Map.entry("hat", "hihat"),
          Map.entry("hats", "hihat"),
          Map.entry("hi-hat", "hihat"),
          Map.entry("hi-hats", "hihat"),
          Map.entry("hihats", "hihat"),
          Map.entry("closed-hat", "hihat"),
          Map.entry("open-hat", "hihat.open"),
          Map.entry("open-hihat", "hihat.open"),
          Map.entry("hihat.closed", "hihat"),
          Map.entry("pedal", "hihat.foot"),
          Map.entry("hihat-foot", "hihat.foot"),
          Map.entry("hihat.pedal", "hihat.foot"),
          Map.entry("foot-hat", "hihat.foot"),
          Map.entry("rd", "ride"),
          Map.entry("bell", "ride.bell"),
          Map.entry("ride-bell", "ride.bell"),
          Map.entry("cr", "crash"),
          Map.entry("cc", "crash"),
          Map.entry("cymbal", "crash"),
          Map.entry("crash1", "crash"),
          Map.entry("cow-bell", "cowbell"),
          Map.entry("cb", "cowbell"),
          Map.entry("tom", "tom1"),
          Map.entry("toms", "tom1"),
          Map.entry("rack-tom", "tom1"),
          Map.entry("high-tom", "tom1"),
          Map.entry("t1", "tom1"),
          Map.entry("mid-tom", "tom2"),
          Map.entry("t2", "tom2"),
          Map.entry("tom3", "floor"),
          Map.entry("t3", "floor"),
          Map.entry("ft", "floor"),
          Map.entry("low-tom", "floor"),
          Map.entry("floor-tom", "floor"),
          Map.entry("floortom", "floor"));

  private static final List<String> LIMBS = List.of("right", "left", "right foot", "left foot");

  private SurfaceNames() {}

  /** The surface of a kit that a word probably means. */
  static Optional<String> near(String word, Kit kit) {
    return near(word, kit.surfaces().keySet());
  }

  /** The one of some surfaces that a word probably means. */
  static Optional<String> near(String word, Set<String> surfaces) {
    String trade = TRADE.get(word);
    return trade != null && surfaces.contains(trade)
        ? Optional.of(trade)
        : Near.find(word, surfaces);
  }

  /** The surface or limbs that a word probably means as a target. */
  static Optional<String> nearTarget(String word, Kit kit) {
    return near(word, kit, List.of("hands", "feet", "all"));
  }

  /** The surface or limbs that a word probably means as the name of a part. */
  static Optional<String> nearPart(String word, Kit kit) {
    return near(word, kit, List.of("hands", "feet", "line"));
  }

  private static Optional<String> near(String word, Kit kit, List<String> groups) {
    String trade = TRADE.get(word);
    if (trade != null && kit.surface(trade) != null) {
      return Optional.of(trade);
    }
    List<String> names = new ArrayList<>(kit.surfaceNames());
    names.addAll(groups);
    names.addAll(LIMBS);
    return Near.find(word, names);
  }
}
