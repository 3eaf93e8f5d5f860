package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.groove.StrokeWords;
import tabor.groove.Terms;
import tabor.notation.Bar;
import tabor.notation.Score;
import tabor.rhythm.Time;
import tabor.words.Words;

/** A section in words, for whoever listens to the page: bar by bar, count by count. */
final class Spoken {
  private Spoken() {}

  static String of(Score score) {
    Groove groove = score.groove();
    Words words = Terms.of(groove).words();
    return words.text(
            "spoken.section",
            words.text("some.bars", groove.bars()),
            words.meters(groove.meters()),
            words.tempo(groove.setting().tempo()))
        + bars(score, Integer.MIN_VALUE, Integer.MAX_VALUE);
  }

  /** The bars from one number to another. */
  static String bars(Score score, int first, int last) {
    Groove groove = score.groove();
    Terms terms = Terms.of(groove);
    Words words = terms.words();
    Map<Integer, List<Stroke>> byBar =
        groove.strokes().stream().collect(Collectors.groupingBy(Stroke::bar));
    StringBuilder text = new StringBuilder();
    for (Bar bar : score.bars()) {
      if (bar.number() >= first && bar.number() <= last) {
        String said =
            bar.repeat()
                ? words.text("spoken.same")
                : bar(groove, byBar.getOrDefault(bar.number(), List.of()), terms);
        text.append(' ')
            .append(
                bar.isPickup()
                    ? words.text("spoken.pickup", said)
                    : words.text("spoken.bar", bar.number(), said));
      }
    }
    return first == Integer.MIN_VALUE ? text.toString() : text.toString().strip();
  }

  private static String bar(Groove groove, List<Stroke> strokes, Terms terms) {
    Words words = terms.words();
    if (strokes.isEmpty()) {
      return words.text("spoken.silent");
    }
    TreeMap<Time, List<Stroke>> places = new TreeMap<>();
    for (Stroke stroke : strokes) {
      places.computeIfAbsent(stroke.at(), t -> new ArrayList<>()).add(stroke);
    }
    List<String> said = new ArrayList<>();
    for (List<Stroke> place : places.values()) {
      Stroke first = place.get(0);
      said.add(
          words.text(
              "spoken.place",
              terms.counts().full(first, groove.meter(first.bar())),
              place.stream()
                  .map(stroke -> stroke(stroke, words))
                  .collect(Collectors.joining(words.text("spoken.and")))));
    }
    return String.join(words.text("spoken.next"), said);
  }

  private static String stroke(Stroke stroke, Words words) {
    return StrokeWords.with(
        stroke,
        words.text("spoken.stroke", words.limb(stroke.limb()), words.surface(stroke.surface())),
        words);
  }
}
