package tabor.pattern;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Timelines and evenly spread strokes, in {@code x} and dots.
 *
 * <p>Sources: Godfried Toussaint, "The Euclidean algorithm generates traditional musical rhythms"
 * (BRIDGES 2005) for tresillo, cinquillo and samba; "The Geometry of Musical Rhythm", chapter 7, as
 * copied by others, for the 16-pulse timelines; the standard bell from secondary lists.
 */
public final class Timelines {
  private Timelines() {}

  private static final Map<String, String> ALL = table();

  private static Map<String, String> table() {
    Map<String, String> all = new LinkedHashMap<>();
    all.put("son-clave", "x..x..x...x.x...");
    all.put("son-clave-2-3", "..x.x...x..x..x.");
    all.put("rumba-clave", "x..x...x..x.x...");
    all.put("rumba-clave-2-3", "..x.x...x..x...x");
    all.put("bossa", "x..x..x...x..x..");
    all.put("shiko", "x...x.x...x.x...");
    all.put("soukous", "x..x..x...xx....");
    all.put("gahu", "x..x..x...x...x.");
    all.put("tresillo", "x..x..x.");
    all.put("cinquillo", "x.xx.xx.");
    all.put("samba", "x.x..x.x.x..x.x.");
    all.put("standard-bell", "x.x.xx.x.x.x");
    return Collections.unmodifiableMap(all);
  }

  /** All timelines by name. */
  public static Map<String, String> all() {
    return ALL;
  }

  /** The places of the timeline of this name. */
  public static Optional<List<PatternPlace>> named(String name) {
    return Optional.ofNullable(ALL.get(name)).map(Timelines::places);
  }

  /** Places of a text in {@code x} and dots. */
  static List<PatternPlace> places(String text) {
    List<PatternPlace> places = new ArrayList<>();
    for (int i = 0; i < text.length(); i++) {
      places.add(new PatternPlace(text.charAt(i), false, 0, false, false));
    }
    return places;
  }

  /**
   * {@code strokes} strokes spread as evenly as can be over {@code places} places: strokes are
   * paired with rests, then heads with remainders, until at most one remainder is left; read from
   * the first stroke.
   *
   * @param strokes 1 to {@code places}
   * @param places at most 512
   */
  public static List<PatternPlace> spread(int strokes, int places) {
    if (strokes < 1 || places < strokes || places > 512) {
      throw new IllegalArgumentException("spread " + strokes + " " + places);
    }
    String head = "x";
    String tail = ".";
    int heads = strokes;
    int tails = places - strokes;
    while (tails > 1) {
      int pairs = Math.min(heads, tails);
      String joined = head + tail;
      if (heads > tails) {
        tail = head;
        tails = heads - pairs;
      } else {
        tails = tails - pairs;
      }
      head = joined;
      heads = pairs;
    }
    StringBuilder text = new StringBuilder(places);
    for (int i = 0; i < heads; i++) {
      text.append(head);
    }
    for (int i = 0; i < tails; i++) {
      text.append(tail);
    }
    return places(text.toString());
  }
}
