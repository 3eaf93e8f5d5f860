package tabor.emit.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tabor.groove.CountLabels;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.groove.StrokeWords;
import tabor.groove.Terms;
import tabor.lists.Lists;
import tabor.rhythm.Count;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.words.Words;

/**
 * The notation in words, a line for each bar, for whoever listens to the page: each count as it is
 * said aloud, then who plays what.
 */
final class SpokenBars {
  private SpokenBars() {}

  /** The bars of a section in order, the pickup first where there is one. */
  static List<String> of(Groove groove) {
    TreeMap<Integer, TreeMap<Time, List<Stroke>>> bars = new TreeMap<>();
    if (groove.pickup().sign() > 0) {
      bars.put(0, new TreeMap<>());
    }
    for (int bar = 1; bar <= groove.bars() && !groove.isPickupOnly(); bar++) {
      bars.put(bar, new TreeMap<>());
    }
    for (Stroke stroke : groove.strokes()) {
      bars.computeIfAbsent(stroke.bar(), b -> new TreeMap<>())
          .computeIfAbsent(stroke.at(), t -> new ArrayList<>())
          .add(stroke);
    }
    Terms terms = Terms.of(groove);
    Words words = terms.words();
    List<String> lines = new ArrayList<>();
    String before = "";
    for (var bar : bars.entrySet()) {
      String said =
          bar(groove.meter(bar.getKey()), bar.getValue(), terms, !groove.page().blankSticking());
      boolean same = bar.getKey() > 1 && said.equals(before);
      String shown = same ? words.text("spoken.same") : said;
      lines.add(
          bar.getKey() == 0
              ? words.text("spoken.pickup", shown)
              : words.text("spoken.bar", bar.getKey(), shown));
      before = said;
    }
    return lines;
  }

  /** Which hand strikes is not said where a student is to find it. */
  private static String bar(
      Meter meter, Map<Time, List<Stroke>> places, Terms terms, boolean hands) {
    Words words = terms.words();
    if (places.isEmpty()) {
      return words.text("spoken.silent");
    }
    return String.join(
        words.text("spoken.next"),
        Lists.map(
            places.values(),
            strokes ->
                words.text(
                    "spoken.count",
                    said(strokes.get(0), meter, terms),
                    String.join(
                        words.text("spoken.and"),
                        Lists.map(strokes, stroke -> stroke(stroke, words, hands))))));
  }

  /** {@code 2 and}; a place without a syllable of its own {@code 2, place 3 of 5}. */
  private static String said(Stroke stroke, Meter meter, Terms terms) {
    CountLabels labels = terms.counts();
    Words words = terms.words();
    Count count = labels.of(stroke, meter);
    String syllable = labels.syllable(stroke, meter);
    String text = labels.number(stroke, meter);
    if (!syllable.isEmpty()) {
      text =
          words.text(
              "spoken.syllable", text, syllable.equals("&") ? words.text("count.and") : syllable);
    }
    for (int place : count.places()) {
      text =
          count.division() > 0
              ? words.text("spoken.place-of", text, place, count.division())
              : words.text("spoken.slot", text, place);
    }
    return text;
  }

  private static String stroke(Stroke stroke, Words words, boolean hands) {
    String surface = words.surface(stroke.surface());
    String struck =
        switch (stroke.limb()) {
          case RIGHT_HAND -> hands ? words.text("spoken.right", surface) : surface;
          case LEFT_HAND -> hands ? words.text("spoken.left", surface) : surface;
          case RIGHT_FOOT, LEFT_FOOT -> surface;
        };
    return StrokeWords.with(stroke, struck, words);
  }
}
