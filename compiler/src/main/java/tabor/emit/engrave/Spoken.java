package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.groove.StrokeWords;
import tabor.groove.Terms;
import tabor.lists.Lists;
import tabor.notation.Bar;
import tabor.notation.Score;
import tabor.rhythm.Time;
import tabor.words.Words;

/**
 * A section in words, for whoever listens to the page: bar by bar, count by count. Safe for several
 * threads.
 */
final class Spoken {
  /** Nothing is said: for pages that say it elsewhere. */
  static final Spoken SILENT = new Spoken();

  private final @Nullable Score score;

  /** What was said of a bar by its number: once for the whole, once for its system. */
  private final Map<Integer, String> said = new ConcurrentHashMap<>();

  /** What was said of limb and surface. */
  private final Map<String, String> struck = new ConcurrentHashMap<>();

  private final Map<Integer, List<Stroke>> byBar = new HashMap<>();

  private Spoken() {
    this.score = null;
  }

  Spoken(Score score) {
    this.score = score;
    for (Stroke stroke : score.groove().strokes()) {
      byBar.computeIfAbsent(stroke.bar(), bar -> new ArrayList<>()).add(stroke);
    }
  }

  /** The whole section. */
  String all() {
    if (score == null) {
      return "";
    }
    Groove groove = score.groove();
    Words words = Terms.of(groove).words();
    return words.text(
            "spoken.section",
            groove.isPickupOnly()
                ? words.text("spoken.end-of-bar")
                : words.text("some.bars", groove.bars()),
            words.meters(groove.meters()),
            words.tempo(groove.setting().tempo()))
        + said(Integer.MIN_VALUE, Integer.MAX_VALUE);
  }

  /** The bars from one number to another. */
  String bars(int first, int last) {
    return said(first, last).strip();
  }

  private String said(int first, int last) {
    if (score == null) {
      return "";
    }
    Groove groove = score.groove();
    Terms terms = Terms.of(groove);
    Words words = terms.words();
    StringBuilder text = new StringBuilder();
    for (Bar bar : score.printed()) {
      if (bar.number() < first || bar.number() > last) {
        continue;
      }
      String said =
          bar.repeat()
              ? words.text("spoken.same")
              : this.said.computeIfAbsent(
                  bar.number(),
                  number -> bar(groove, byBar.getOrDefault(number, List.of()), terms));
      text.append(' ')
          .append(
              bar.isPickup()
                  ? words.text("spoken.pickup", said)
                  : words.text("spoken.bar", bar.number(), said));
    }
    return text.toString();
  }

  private String bar(Groove groove, List<Stroke> strokes, Terms terms) {
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
              String.join(
                  words.text("spoken.and"), Lists.map(place, stroke -> stroke(stroke, words)))));
    }
    return String.join(words.text("spoken.next"), said);
  }

  private String stroke(Stroke stroke, Words words) {
    String struck =
        this.struck.computeIfAbsent(
            stroke.limb().id() + " " + stroke.surface().name(),
            key ->
                words.text(
                    "spoken.stroke", words.limb(stroke.limb()), words.surface(stroke.surface())));
    return StrokeWords.with(stroke, struck, words);
  }
}
