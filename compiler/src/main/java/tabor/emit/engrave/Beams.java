package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import tabor.lists.Lists;
import tabor.notation.Beam;

/**
 * The beam of one group: where it runs, how long its stems are, and its broken secondary beams.
 *
 * @param group its chords in order
 * @param xs the middle of each stem on the page
 * @param y where the primary beam's middle stands at the first stem
 * @param slope how much lower it is a space further right
 */
record Beams(List<ChordShape> group, double[] xs, double y, double slope) {
  /** How far the ends of a beam may differ in height. */
  private static final double MOST_RISE = 1.0;

  private static final double MOST_SLOPE = 0.14;

  /** Stems of a group may be so much shorter than single ones. */
  private static final double SHORTER = 0.4;

  /** Something that a beam must keep clear of: a y that it must stay beyond at an x. */
  record Obstacle(double x, double y) {}

  static Beams of(List<ChordShape> group, double[] xs, List<Obstacle> obstacles) {
    boolean up = group.get(0).up();
    int last = group.size() - 1;
    double slope = slope(group, xs, up);
    double y = up ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
    for (int i = 0; i <= last; i++) {
      ChordShape chord = group.get(i);
      // A hook of a neighbour reaches towards this head: leave room for the deeper of both.
      int levels = Math.max(levels(group, i), Math.max(levels(group, i - 1), levels(group, i + 1)));
      double least = (levels - 1) * Rule.BEAM_STEP + Rule.BEAM / 2 + 1;
      double length = Math.max(Stems.length(chord) - SHORTER, least);
      double end = up ? chord.near() - length : chord.near() + length;
      double here = end - slope * (xs[i] - xs[0]);
      y = up ? Math.min(y, here) : Math.max(y, here);
    }
    for (Obstacle obstacle : obstacles) {
      double here = obstacle.y() - slope * (obstacle.x() - xs[0]);
      y = up ? Math.min(y, here) : Math.max(y, here);
    }
    return new Beams(List.copyOf(group), xs, y, slope);
  }

  private static int levels(List<ChordShape> group, int i) {
    return i < 0 || i >= group.size() ? 0 : group.get(i).chord().beams().size();
  }

  private static double slope(List<ChordShape> group, double[] xs, boolean up) {
    int last = group.size() - 1;
    if (last == 0) {
      return 0;
    }
    double first = group.get(0).near();
    double end = group.get(last).near();
    double rise = end - first;
    // An inner note that stands nearer to the beam than both ends makes it level.
    double edge = up ? Math.min(first, end) : Math.max(first, end);
    for (int i = 1; i < last; i++) {
      double inner = group.get(i).near();
      if (up ? inner <= edge : inner >= edge) {
        return 0;
      }
    }
    double run = xs[last] - xs[0];
    double limited = Math.max(-MOST_RISE, Math.min(MOST_RISE, rise * 0.5));
    double slope = limited / run;
    return Math.max(-MOST_SLOPE, Math.min(MOST_SLOPE, slope));
  }

  /** Where the primary beam's middle stands at an x. */
  double at(double x) {
    return y + slope * (x - xs[0]);
  }

  boolean up() {
    return group.get(0).up();
  }

  /** All beams of the group as bands: primary first, then the broken ones. */
  List<Contour> bands() {
    List<Contour> bands = new ArrayList<>();
    int levels = Lists.most(group, c -> c.chord().beams().size());
    for (int level = 0; level < levels; level++) {
      int start = -1;
      for (int i = 0; i < group.size(); i++) {
        List<Beam> beams = group.get(i).chord().beams();
        if (level >= beams.size()) {
          start = -1;
          continue;
        }
        switch (beams.get(level)) {
          case BEGIN -> start = i;
          case CONTINUE -> {}
          case END -> {
            if (start >= 0) {
              bands.add(band(xs[start], xs[i], level));
            }
            start = -1;
          }
          case FORWARD_HOOK -> bands.add(band(xs[i], xs[i] + hook(i, i + 1), level));
          case BACKWARD_HOOK -> bands.add(band(xs[i] - hook(i, i - 1), xs[i], level));
        }
      }
    }
    return bands;
  }

  private double hook(int i, int neighbour) {
    if (neighbour < 0 || neighbour >= xs.length) {
      return Rule.HOOK;
    }
    return Math.min(Rule.HOOK, Math.abs(xs[neighbour] - xs[i]) * 0.6);
  }

  private Contour band(double from, double to, int level) {
    double off = (up() ? 1 : -1) * level * Rule.BEAM_STEP;
    double left = from - Rule.STEM / 2;
    double right = to + Rule.STEM / 2;
    return Contour.band(left, at(left) + off, right, at(right) + off, Rule.BEAM);
  }
}
