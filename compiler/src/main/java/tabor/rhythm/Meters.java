package tabor.rhythm;

import java.util.List;
import java.util.stream.Collectors;
import tabor.lists.Lists;

/**
 * The meters of a section, taken in turn, bar by bar, over and over. Most sections have one. Bars 0
 * (a pickup) and 1 have the first.
 *
 * @param cycle the meters in order, at least one
 */
public record Meters(List<Meter> cycle) {
  /** Throws {@link IllegalArgumentException} if there is none. */
  public Meters {
    cycle = List.copyOf(cycle);
    if (cycle.isEmpty()) {
      throw new IllegalArgumentException("no meter");
    }
  }

  /** One meter throughout. */
  public static Meters of(Meter meter) {
    return new Meters(List.of(meter));
  }

  /** The meter of bar 1, whose beat a bare tempo counts. */
  public Meter first() {
    return cycle.get(0);
  }

  /** How many bars it takes until the meters come round again. */
  public int size() {
    return cycle.size();
  }

  /** True if all bars are equally long. */
  public boolean hasEqualBars() {
    return Lists.all(cycle, meter -> meter.bar().equals(first().bar()));
  }

  /** The meter of a bar; 1-based, 0 is the pickup. */
  public Meter of(int bar) {
    return cycle.get(index(bar));
  }

  /** The index of a bar's meter in the cycle. */
  public int index(int bar) {
    return bar <= 1 ? 0 : (bar - 1) % cycle.size();
  }

  /** Distance of a bar's line from that of bar 1, in whole notes; negative for bar 0. */
  public Time start(int bar) {
    if (cycle.size() == 1 || bar < 1) {
      return first().bar().times(bar - 1L);
    }
    return length(bar - 1);
  }

  /** Length of the first so many bars, in whole notes. */
  public Time length(int bars) {
    if (cycle.size() == 1) {
      return first().bar().times(bars);
    }
    Time length = cycleLength().times(bars / cycle.size());
    for (int i = 0; i < bars % cycle.size(); i++) {
      length = length.plus(cycle.get(i).bar());
    }
    return length;
  }

  /** Length of one bar of each meter, in whole notes. */
  public Time cycleLength() {
    Time length = Time.ZERO;
    for (Meter meter : cycle) {
      length = length.plus(meter.bar());
    }
    return length;
  }

  /** The 1-based bar that holds a place, measured from the line of bar 1; 0 or more. */
  public int barAt(Time place) {
    long rounds = place.over(cycleLength()).floor();
    Time left = place.minus(cycleLength().times(rounds));
    int bar = (int) rounds * cycle.size() + 1;
    for (Meter meter : cycle) {
      if (left.before(meter.bar())) {
        break;
      }
      left = left.minus(meter.bar());
      bar++;
    }
    return bar;
  }

  /**
   * A place of a section.
   *
   * @param bar 1-based; 0 is the pickup
   * @param at distance from its barline in whole notes, less than the bar
   */
  public record Place(int bar, Time at) {}

  /** The place so far from the line of bar 1, in whole notes; negative before it. */
  public Place place(Time fromBarOne) {
    int bar =
        cycle.size() == 1 || fromBarOne.sign() < 0
            ? Math.toIntExact(fromBarOne.over(first().bar()).floor()) + 1
            : barAt(fromBarOne);
    return new Place(bar, fromBarOne.minus(start(bar)));
  }

  /** The place so far from a barline, in whole notes, which may lie in a later bar. */
  public Place place(int bar, Time at) {
    return at.sign() >= 0 && at.before(of(bar).bar())
        ? new Place(bar, at)
        : place(start(bar).plus(at));
  }

  /** Distance of one bar's line from another's, in whole notes. */
  public Time between(int bar, int later) {
    return bar == later ? Time.ZERO : start(later).minus(start(bar));
  }

  /** As written after {@code time}: {@code 4/4 3/4}. */
  public String words() {
    return cycle.stream().map(Meter::words).collect(Collectors.joining(" "));
  }

  /** The signatures alone: {@code 4/4 3/4}. */
  @Override
  public String toString() {
    return cycle.stream().map(Meter::signature).collect(Collectors.joining(" "));
  }
}
