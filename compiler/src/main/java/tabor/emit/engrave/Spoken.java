package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.notation.Bar;
import tabor.notation.Score;
import tabor.rhythm.CountNames;
import tabor.rhythm.Division;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/** A section in words, for whoever listens to the page: bar by bar, count by count. */
final class Spoken {
  private final Score score;
  private final Map<Integer, List<Stroke>> byBar;

  Spoken(Score score) {
    this.score = score;
    this.byBar = score.groove().strokes().stream().collect(Collectors.groupingBy(Stroke::bar));
  }

  /** The whole section. */
  String all() {
    Groove groove = score.groove();
    StringBuilder text = new StringBuilder();
    text.append(
        groove.isPickupOnly()
            ? "The end of a bar"
            : groove.bars() == 1 ? "1 bar" : groove.bars() + " bars");
    text.append(" of ").append(groove.meters().inWords());
    text.append(", ").append(groove.setting().tempo().words()).append('.');
    bars(Integer.MIN_VALUE, Integer.MAX_VALUE, text);
    return text.toString();
  }

  /** The bars from one number to another. */
  String bars(int first, int last) {
    StringBuilder text = new StringBuilder();
    bars(first, last, text);
    return text.toString().strip();
  }

  private void bars(int first, int last, StringBuilder text) {
    for (Bar bar : score.printed()) {
      if (bar.number() < first || bar.number() > last) {
        continue;
      }
      text.append(bar.isPickup() ? " Pickup: " : " Bar " + bar.number() + ": ");
      text.append(
          bar.repeat() ? "as the bar before" : bar(score.groove(), byBar.get(bar.number())));
      text.append('.');
    }
  }

  private static String bar(
      Groove groove, @org.jspecify.annotations.Nullable List<Stroke> strokes) {
    if (strokes == null) {
      return "silent";
    }
    TreeMap<Time, List<Stroke>> places = new TreeMap<>();
    for (Stroke stroke : strokes) {
      places.computeIfAbsent(stroke.at(), t -> new ArrayList<>()).add(stroke);
    }
    List<String> said = new ArrayList<>();
    for (Map.Entry<Time, List<Stroke>> place : places.entrySet()) {
      Stroke first = place.getValue().get(0);
      String count = count(first, groove.meter(first.bar()));
      said.add(
          count
              + " "
              + place.getValue().stream().map(Spoken::stroke).collect(Collectors.joining(" and ")));
    }
    return String.join("; ", said);
  }

  private static String count(Stroke stroke, Meter meter) {
    Division division = stroke.slot().division();
    boolean fits = division.beat() + division.beats() <= meter.beatCount();
    return (fits ? CountNames.of(division, stroke.at(), meter) : CountNames.of(stroke.at(), meter))
        .toString();
  }

  private static String stroke(Stroke stroke) {
    StringBuilder text = new StringBuilder();
    text.append(stroke.limb().words()).append(' ').append(stroke.surface().words());
    if (stroke.level() != Level.PLAIN) {
      text.append(stroke.level() == Level.GHOST ? " ghosted" : " accented");
    }
    for (Ornament ornament : stroke.ornaments().list()) {
      text.append(' ').append(ornament.word().replace('-', ' '));
    }
    return text.toString();
  }
}
