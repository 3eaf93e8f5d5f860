package tabor.emit.engrave;

import tabor.rhythm.Time;

/** Lengths of time as distances: the one place where a time of this room becomes inexact. */
final class Durations {
  private Durations() {}

  /** In whole notes. */
  static double of(Time time) {
    return (double) time.num() / time.den();
  }

  /** How far {@code at} lies between two times, 0 to 1. */
  static double share(Time from, Time at, Time to) {
    double span = of(to.minus(from));
    return span <= 0 ? 0 : Math.min(1, Math.max(0, of(at.minus(from)) / span));
  }
}
