package tabor.groove;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.lists.Lists;

/**
 * What the charts of a lesson say at the notes of a section. They say it only where it is true of
 * every time that the section is played: it stands in one line of one chart. A cue in a bar and a
 * hold need a line that plays it once through; everything else stands on the road map alone.
 *
 * @param mark the rehearsal mark at its beginning; null for none
 * @param cues words over its bars
 * @param holds true if its last stroke is held
 */
public record ChartSigns(@Nullable String mark, List<Cue> cues, boolean holds) {
  /** Nothing. */
  public static final ChartSigns NONE = new ChartSigns(null, List.of(), false);

  /**
   * Words over a bar.
   *
   * @param bar the number of the bar; 0 for where the section begins
   */
  public record Cue(int bar, String text) {}

  /** Copies the list. */
  public ChartSigns {
    cues = List.copyOf(cues);
  }

  private boolean isEmpty() {
    return mark == null && cues.isEmpty() && !holds;
  }

  /** What is said of each section, by its name; nothing of those that are not in the map. */
  public static Map<String, ChartSigns> of(Lesson lesson) {
    Map<String, Integer> lines = new HashMap<>();
    Map<String, ChartSigns> said = new HashMap<>();
    for (Section section : lesson.sections()) {
      if (section instanceof Chart chart) {
        read(chart.items(), lines, said);
      }
    }
    said.entrySet().removeIf(one -> lines.getOrDefault(one.getKey(), 0) != 1);
    return said;
  }

  private static void read(
      List<Chart.Item> items, Map<String, Integer> lines, Map<String, ChartSigns> said) {
    String mark = null;
    List<Chart.Cue> cues = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      Chart.Item item = items.get(i);
      if (item instanceof Chart.Mark letter) {
        mark = letter.text();
      } else if (item instanceof Chart.Cue cue) {
        cues.add(cue);
      } else {
        List<Groove> played = played(item);
        played.forEach(groove -> lines.merge(groove.name(), 1, Integer::sum));
        if (played.size() == 1) {
          Groove groove = played.get(0);
          boolean held = i + 1 < items.size() && items.get(i + 1) instanceof Chart.Hold;
          ChartSigns signs = signs(item, groove, mark, cues, held);
          if (!signs.isEmpty()) {
            said.put(groove.name(), signs);
          }
        }
        if (!played.isEmpty() || passes(item)) {
          mark = null;
          cues.clear();
        }
      }
    }
  }

  /** True for a line in which time passes. */
  private static boolean passes(Chart.Item item) {
    return item instanceof Chart.Rest || item instanceof Chart.Pause || item instanceof Chart.Hold;
  }

  private static List<Groove> played(Chart.Item item) {
    return item instanceof Chart.Climb climb
        ? List.of(climb.groove())
        : Lists.map(item.turns(), Chart.Turn::groove);
  }

  private static ChartSigns signs(
      Chart.Item item, Groove groove, @Nullable String mark, List<Chart.Cue> cues, boolean held) {
    boolean once =
        item instanceof Chart.Play play
            && (play.amount().times() == 1 || play.amount().bars() == groove.bars());
    boolean filled = item instanceof Chart.Play play && play.extras().fill() != null;
    List<Cue> over = new ArrayList<>();
    for (Chart.Cue cue : cues) {
      if (cue.bar() == 0 || (once && cue.bar() <= groove.bars())) {
        over.add(new Cue(cue.bar(), cue.text()));
      }
    }
    // What is practised by the clock is no place in a song.
    boolean song = item instanceof Chart.Play play && play.amount().seconds() == null;
    return new ChartSigns(song ? mark : null, over, held && once && !filled);
  }
}
