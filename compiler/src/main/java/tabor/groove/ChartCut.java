package tabor.groove;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.lists.Lists;

/** A chart with nothing but what is played of some sections. */
public final class ChartCut {
  private final Set<String> left;
  private final List<Chart.Item> done = new ArrayList<>();

  /** What belongs to the next line that plays, and what stands between. */
  private final List<Chart.Item> waiting = new ArrayList<>();

  private boolean played;
  private boolean ringing;

  private ChartCut(Set<String> left) {
    this.left = left;
  }

  /**
   * The chart without the rest; empty if it plays nothing that is left. Count-ins, marks and cues
   * of lines that go, go with them, and so do fills.
   *
   * @param left names of the grooves, steps and variations that are left
   */
  public static Optional<Chart> of(Chart chart, Set<String> left) {
    ChartCut cut = new ChartCut(left);
    chart.items().forEach(cut::item);
    cut.flush(false);
    return cut.played ? Optional.of(chart.with(neighbours(cut.done))) : Optional.empty();
  }

  private void item(Chart.Item item) {
    if (item instanceof Chart.Play play) {
      List<Chart.Turn> turns = Lists.filter(play.turns(), turn -> has(turn.groove()));
      boolean kept =
          playing(
              turns.isEmpty()
                  ? null
                  : new Chart.Play(
                      turns, play.amount(), play.each(), extras(play.extras()), named(play)));
      // One of a row is gone: words for a bar of the row would stand in another.
      if (kept && turns.size() < play.turns().size()) {
        dropBarCues();
      }
    } else if (item instanceof Chart.Climb climb) {
      playing(has(climb.groove()) ? climb.with(extras(climb.extras())) : null);
    } else if (item instanceof Chart.Trade trade) {
      playing(
          has(trade.turn().groove())
              ? new Chart.Trade(trade.turn(), trade.bars(), trade.amount(), extras(trade.extras()))
              : null);
    } else if (item instanceof Chart.Hold) {
      if (ringing) {
        done.add(item);
      }
    } else {
      waiting.add(item);
    }
  }

  /** A line that plays; null if nothing of it is left. */
  private boolean playing(Chart.@Nullable Item line) {
    ringing = line != null;
    flush(line != null);
    if (line != null) {
      played = true;
      done.add(line);
    }
    return line != null;
  }

  private void flush(boolean follows) {
    for (Chart.Item item : waiting) {
      boolean bound =
          item instanceof Chart.CountIn || item instanceof Chart.Mark || item instanceof Chart.Cue;
      if (follows || !bound) {
        done.add(item);
      }
    }
    waiting.clear();
  }

  private void dropBarCues() {
    for (int i = done.size() - 2; i >= 0 && done.get(i).turns().isEmpty(); i--) {
      if (done.get(i) instanceof Chart.Cue cue && cue.bar() > 0) {
        done.remove(i);
      }
    }
  }

  private boolean has(Groove groove) {
    return left.contains(groove.name());
  }

  private List<Section> named(Chart.Play play) {
    List<Section> kept = new ArrayList<>();
    for (Section section : play.named()) {
      boolean there =
          section instanceof Sheet sheet
              ? Lists.any(sheet.grooves(), this::has)
              : left.contains(section.name());
      if (there) {
        kept.add(section);
      }
    }
    return kept;
  }

  private Chart.Extras extras(Chart.Extras extras) {
    Groove fill = extras.fill();
    return fill == null || has(fill) ? extras : new Chart.Extras(extras.without(), null);
  }

  /** Count-ins take meter and tempo of what follows now, rests of what was before. */
  private static List<Chart.Item> neighbours(List<Chart.Item> items) {
    List<Chart.Item> found = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      Chart.Item item = items.get(i);
      if (item instanceof Chart.CountIn count) {
        Chart.Turn next = near(items, i, 1);
        found.add(
            next == null ? count : new Chart.CountIn(count.bars(), next.groove(), next.tempo()));
      } else if (item instanceof Chart.Rest rest) {
        Chart.Turn near = near(items, i, -1);
        near = near == null ? near(items, i, 1) : near;
        found.add(near == null ? rest : new Chart.Rest(rest.bars(), near.groove(), near.tempo()));
      } else {
        found.add(item);
      }
    }
    return found;
  }

  private static Chart.@Nullable Turn near(List<Chart.Item> items, int from, int step) {
    for (int i = from + step; i >= 0 && i < items.size(); i += step) {
      List<Chart.Turn> turns = items.get(i).turns();
      if (!turns.isEmpty()) {
        return turns.get(step > 0 ? 0 : turns.size() - 1);
      }
    }
    return null;
  }
}
