package tabor.emit.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.rhythm.Count;
import tabor.rhythm.CountNames;
import tabor.rhythm.Division;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

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
    List<String> lines = new ArrayList<>();
    String before = "";
    for (var bar : bars.entrySet()) {
      String words =
          bar(groove.meter(bar.getKey()), bar.getValue(), !groove.page().blankSticking());
      String name = bar.getKey() == 0 ? "Pickup" : "Bar " + bar.getKey();
      boolean same = bar.getKey() > 1 && words.equals(before);
      lines.add(name + ": " + (same ? "as the bar before." : words));
      before = words;
    }
    return lines;
  }

  /** Which hand strikes is not said where a student is to find it. */
  private static String bar(Meter meter, Map<Time, List<Stroke>> places, boolean hands) {
    if (places.isEmpty()) {
      return "silent.";
    }
    return places.values().stream()
            .map(
                strokes ->
                    said(count(strokes.get(0), meter))
                        + ", "
                        + strokes.stream()
                            .map(stroke -> stroke(stroke, hands))
                            .collect(Collectors.joining(" and ")))
            .collect(Collectors.joining("; "))
        + ".";
  }

  private static Count count(Stroke stroke, Meter meter) {
    Division division = stroke.slot().division();
    boolean fits = division.beat() + division.beats() <= meter.beatCount();
    return fits ? CountNames.of(division, stroke.at(), meter) : CountNames.of(stroke.at(), meter);
  }

  /** {@code 2 and}; a place without a syllable of its own {@code 2, place 3 of 5}. */
  static String said(Count count) {
    StringBuilder text = new StringBuilder().append(count.beat());
    switch (count.syllable()) {
      case NONE -> {}
      case E -> text.append(" e");
      case AND -> text.append(" and");
      case A -> text.append(" a");
    }
    for (int place : count.places()) {
      text.append(", place ").append(place);
      if (count.division() > 0) {
        text.append(" of ").append(count.division());
      }
    }
    return text.toString();
  }

  private static String stroke(Stroke stroke, boolean hands) {
    StringBuilder text = new StringBuilder();
    switch (stroke.limb()) {
      case RIGHT_HAND -> text.append(hands ? "right " : "");
      case LEFT_HAND -> text.append(hands ? "left " : "");
      case RIGHT_FOOT, LEFT_FOOT -> {}
    }
    text.append(stroke.surface().words());
    if (stroke.level() != Level.PLAIN) {
      text.append(stroke.level() == Level.GHOST ? " ghosted" : " accented");
    }
    for (Ornament ornament : stroke.ornaments().list()) {
      text.append(' ').append(ornament.word().replace('-', ' '));
    }
    return text.toString();
  }
}
