package tabor.cli;

import java.io.PrintStream;
import java.util.List;
import tabor.perform.Performance;
import tabor.perform.Segment;
import tabor.rhythm.Meters;
import tabor.rhythm.Time;

/**
 * The line that moves along while music plays: the bar, and its beats with the present one in
 * brackets.
 */
final class MovingCount {
  private static final int WIDTH = 78;

  private final Performance performance;
  private final PrintStream out;
  private final boolean changing;
  private String shown = "";

  MovingCount(Performance performance, PrintStream out) {
    this.performance = performance;
    this.out = out;
    this.changing = isChanging(performance);
  }

  /** Shows a place, if it looks different from what is there. */
  void show(Time position) {
    String line = line(position);
    if (!line.equals(shown)) {
      shown = line;
      out.print("\r" + line);
      out.flush();
    }
  }

  /** Leaves the line. */
  void end() {
    if (!shown.isEmpty()) {
      out.print("\r" + " ".repeat(WIDTH) + "\r");
      out.flush();
      shown = "";
    }
  }

  /** {@code bar 2 of 4 1 2 [3] 4}, always as wide. */
  String line(Time position) {
    Time last = Time.max(Time.ZERO, Time.min(position, performance.length()));
    Segment segment = performance.segmentAt(last);
    Meters.Place place = segment.meters().place(last.minus(segment.barline(1)));
    int number = Math.min(place.bar(), segment.bars());
    int beat =
        last.equals(performance.length()) ? -1 : segment.meter(place.bar()).beatAt(place.at());
    StringBuilder line = new StringBuilder("  ").append(heading(segment, number));
    line.append(" ".repeat(Math.max(1, (changing ? 44 : 24) - line.length())));
    for (int i = 0; i < segment.meter(number).beatCount(); i++) {
      line.append(i == beat ? "[" + (i + 1) + "]" : " " + (i + 1) + " ");
    }
    line.append(" ".repeat(Math.max(0, WIDTH - line.length())));
    return line.substring(0, WIDTH);
  }

  private String heading(Segment segment, int bar) {
    String tempo = changing ? ", tempo " + segment.tempo().perMinute().decimal() : "";
    return switch (segment.kind()) {
      case COUNT_IN -> "count-in" + tempo;
      case PAUSE -> "rest";
      case HOLD -> "hold";
      case YOURS -> "you, bar " + bar + " of " + segment.bars() + tempo;
      case REST -> "rest, bar " + bar + " of " + segment.bars() + tempo;
      case SECTION ->
          (changing && segment.groove() != null ? segment.groove().name() + ", " : "")
              + (bar < 1 ? "pickup" : "bar " + bar + " of " + segment.bars())
              + tempo;
    };
  }

  /** True if it makes sense to say which section at which tempo. */
  private static boolean isChanging(Performance performance) {
    return performance.segments().stream()
            .filter(s -> s.kind() == Segment.Kind.SECTION)
            .map(s -> List.of(s.groove() == null ? "" : s.groove().name(), s.tempo()))
            .distinct()
            .count()
        > 1;
  }
}
