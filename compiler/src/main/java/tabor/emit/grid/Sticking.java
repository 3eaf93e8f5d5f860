package tabor.emit.grid;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import tabor.body.RudimentFinder;
import tabor.groove.CountLabels;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.SectionNumbers;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Meter;
import tabor.words.Words;

/**
 * Who strikes: hands and feet under the counts, the rudiments that the hands play, and what was
 * left to Tabor to choose.
 */
public final class Sticking {
  private static final String INDENT = "   ";
  private static final int WIDTH = 78;

  private final List<String> lines = new ArrayList<>();

  private final boolean why;

  private Sticking(boolean why) {
    this.why = why;
  }

  /**
   * The grooves and steps given, in order; lines end with LF.
   *
   * @param lesson whose they are: they are numbered as in the lesson
   * @param why true to say of each hand why it plays what it plays
   */
  public static String of(Lesson lesson, List<Groove> grooves, boolean why) {
    Sticking sticking = new Sticking(why);
    SectionNumbers numbers = lesson.numbers();
    for (Groove groove : grooves) {
      sticking.groove(groove, numbers.of(groove));
    }
    return String.join("\n", sticking.lines) + "\n";
  }

  private void groove(Groove groove, String number) {
    if (!lines.isEmpty()) {
      lines.add("");
    }
    boolean titled = !groove.caption().equals(groove.name());
    String name = titled ? " (" + groove.name() + ")" : "";
    lines.addAll(TextWrapper.wrap(number + ". " + groove.caption() + name, "", WIDTH));
    if (groove.strokes().isEmpty()) {
      lines.add(INDENT + "nothing is played");
      return;
    }
    lines.addAll(GridWriter.write(GridLayout.limbs(groove, Words.english()), Words.english()));
    lines.addAll(rudiments(groove));
    String dealt = dealt(groove);
    if (!dealt.isEmpty()) {
      lines.addAll(TextWrapper.wrap("Tabor chose: " + dealt, INDENT, WIDTH));
    }
    if (why) {
      StickingReasons.of(groove)
          .forEach(line -> lines.addAll(TextWrapper.wrap(line, INDENT, WIDTH)));
    }
  }

  /** One line for each rudiment and place of the bar, with all bars that have it there. */
  private static List<String> rudiments(Groove groove) {
    Map<String, List<Integer>> bars = new LinkedHashMap<>();
    for (RudimentFinder.Found found : RudimentFinder.find(groove)) {
      if (found.throughout()) {
        return List.of(INDENT + "throughout: " + found.name());
      }
      if (found.first().bar() != found.last().bar()) {
        bars.put(across(groove, found.first(), found.last()) + ": " + found.name(), List.of());
        continue;
      }
      bars.computeIfAbsent(
              where(groove, found.first(), found.last()) + ": " + found.name(),
              w -> new ArrayList<>())
          .add(found.first().bar());
    }
    List<String> lines = new ArrayList<>();
    boolean one = groove.bars() == 1 && groove.firstBar() == 1;
    bars.forEach(
        (words, in) ->
            lines.addAll(
                TextWrapper.wrap(
                    (one || in.isEmpty() ? "" : bars(in) + ", ") + words, INDENT, WIDTH)));
    return lines;
  }

  /** {@code bar 3}, {@code bars 1 to 4}, {@code bars 1 3 7}. */
  static String bars(List<Integer> bars) {
    int first = bars.get(0);
    int last = bars.get(bars.size() - 1);
    if (first == last) {
      return "bar " + first;
    }
    if (last - first + 1 == bars.size()) {
      return "bars " + first + " to " + last;
    }
    return "bars " + bars.stream().map(String::valueOf).collect(Collectors.joining(" "));
  }

  /** {@code bar 1, 3 to bar 2, 2a}. */
  static String across(Groove groove, Stroke first, Stroke last) {
    return "bar "
        + first.bar()
        + ", "
        + count(groove, first)
        + " to bar "
        + last.bar()
        + ", "
        + count(groove, last);
  }

  /** {@code beats 1 to 2}, {@code 1& to 2a}. */
  static String where(Groove groove, Stroke first, Stroke last) {
    Meter meter = groove.meter(first.bar());
    int firstBeat = meter.beatAt(first.at());
    int lastBeat = meter.beatAt(last.at());
    if (!meter.beatStart(firstBeat).equals(first.at())) {
      String from = count(groove, first);
      return first == last ? from : from + " to " + count(groove, last);
    }
    return firstBeat == lastBeat
        ? "beat " + (firstBeat + 1)
        : "beats " + (firstBeat + 1) + " to " + (lastBeat + 1);
  }

  private static String count(Groove groove, Stroke stroke) {
    return CountLabels.of(groove).full(stroke.slot(), groove.meter(stroke.bar()));
  }

  /** {@code hi-hat with the right hand, snare with both hands}. */
  private static String dealt(Groove groove) {
    Map<String, Set<Limb>> bySurface = new LinkedHashMap<>();
    for (Stroke stroke : groove.strokes()) {
      if (stroke.dealt()) {
        bySurface
            .computeIfAbsent(stroke.surface().words(), words -> new LinkedHashSet<>())
            .add(stroke.limb());
      }
    }
    List<String> parts = new ArrayList<>();
    bySurface.forEach(
        (surface, limbs) -> {
          Limb one = limbs.iterator().next();
          String to =
              limbs.size() == 1 ? "the " + one.words() : one.isHand() ? "both hands" : "both feet";
          parts.add(surface + " with " + to);
        });
    return String.join(", ", parts);
  }
}
