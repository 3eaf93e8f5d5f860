package tabor.body;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import tabor.lists.Lists;
import tabor.pattern.PatternPlace;
import tabor.pattern.Rudiments;

/**
 * What a rudiment looks like as single strokes.
 *
 * @param name as it is played
 * @param strokes one cycle, right lead
 * @param places length of the cycle in places
 * @param alternates true if the next cycle starts with the other hand
 * @param even true if all its places are equally long
 * @param least how many strokes of it make it worth naming
 * @param alone true if it needs a rest before and after, to be told from a longer roll
 */
record RudimentShape(
    String name,
    List<Beat> strokes,
    int places,
    boolean alternates,
    boolean even,
    int least,
    boolean alone) {

  /**
   * A stroke.
   *
   * @param small how many grace notes come before it
   * @param half its distance from the start of the cycle in half places
   */
  record Beat(boolean right, int small, boolean buzz, int half) {}

  /** True for a roll of single, double or pressed strokes, one hand to a cycle. */
  boolean rolls() {
    return places == 1 && strokes.get(0).small() == 0;
  }

  /** Their places are printed in two lengths, or in more than one way. */
  private static final Set<String> UNEVEN =
      Set.of(
          "six-stroke-roll",
          "drag-paradiddle-1",
          "drag-paradiddle-2",
          "double-ratamacue",
          "triple-ratamacue");

  /** All 40, each as it is looked for. */
  static final List<RudimentShape> ALL = Lists.map(Rudiments.all().values(), RudimentShape::of);

  /** The strokes of the longest cycle. */
  static final int LONGEST =
      ALL.stream().mapToInt(shape -> shape.strokes().size()).max().orElseThrow();

  private static RudimentShape of(Rudiments.Rudiment rudiment) {
    List<PatternPlace> lead = rudiment.lead();
    String name = rudiment.name();
    // Rolls that go on have no cycle of their own: the shortest that repeats is looked for.
    int places =
        switch (name) {
          case "single-stroke-roll", "multiple-bounce-roll", "double-stroke-open-roll" -> 1;
          default -> lead.size();
        };
    List<Beat> strokes = new ArrayList<>();
    for (int i = 0; i < places; i++) {
      PatternPlace place = lead.get(i);
      boolean right = place.letter() == 'r';
      strokes.add(new Beat(right, place.graceNotes(), place.buzz(), 2 * i));
      if (place.diddle()) {
        strokes.add(new Beat(right, 0, false, 2 * i + 1));
      }
    }
    boolean small = Lists.any(lead, place -> place.graceNotes() > 0);
    int least =
        switch (name) {
          case "single-stroke-roll", "double-stroke-open-roll" -> 8;
          case "multiple-bounce-roll" -> 4;
          default -> small && places == 2 ? 2 * strokes.size() : strokes.size();
        };
    return new RudimentShape(
        RudimentFinder.spoken(rudiment),
        strokes,
        places,
        rudiment.alternates() || places < lead.size(),
        !UNEVEN.contains(name),
        least,
        name.equals("single-stroke-four") || name.equals("single-stroke-seven"));
  }
}
