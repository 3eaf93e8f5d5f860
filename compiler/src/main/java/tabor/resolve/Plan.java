package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.kit.Kit;
import tabor.rhythm.Meter;
import tabor.rhythm.NoteValue;
import tabor.rhythm.Time;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.Statement;

/**
 * How long a section is and where its systems start, settled before any line acts. In a groove the
 * parts decide; in a step the section has its length and the parts have to fit.
 */
final class Plan {
  /** Most bars that a played pattern may need. */
  private static final int MOST_PATTERN_BARS = 32;

  private final Problems problems;
  private final Patterns patterns;
  private final Kit kit;
  private final int pickupBeats;
  private boolean tooLong;

  Plan(Problems problems, Patterns patterns, Kit kit, int pickupBeats) {
    this.problems = problems;
    this.patterns = patterns;
    this.kit = kit;
    this.pickupBeats = pickupBeats;
  }

  /**
   * What was found.
   *
   * @param bars whole bars of the section
   * @param systems the first bar of each system, 1-based, as many as there are systems
   * @param fits false if something did not agree
   */
  record Found(int bars, List<Integer> systems, boolean fits) {}

  private static boolean isPart(Statement statement) {
    return statement instanceof PartStatement.Lane
        || statement instanceof PartStatement.Played
        || statement instanceof Statement.Broken;
  }

  /**
   * Measures the parts of a groove, or of one run of parts in a step.
   *
   * @param lines the lines to look at
   * @param meter the meter
   * @param fixed the section's bars in a step; 0 in a groove
   * @param said the {@code bars} line of a groove; null without one
   * @param saidBars how many bars it says
   */
  Found measure(List<Line> lines, Meter meter, int fixed, @Nullable Line said, int saidBars) {
    boolean fits = true;
    int total = 0;
    List<Integer> systems = new ArrayList<>(List.of(1));
    Line first = null;
    int systemBars = 0;
    Line decider = null;
    List<Line> loops = new ArrayList<>();
    for (Line line : lines) {
      Statement statement = line.statement();
      if (statement instanceof PartStatement.Next) {
        total += systemBars;
        systems.add(total + 1);
        first = null;
        systemBars = 0;
        continue;
      }
      if (!isPart(statement)) {
        continue;
      }
      if (statement instanceof PartStatement.Played) {
        loops.add(line);
        continue;
      }
      if (!(statement instanceof PartStatement.Lane lane)) {
        fits = false;
        continue;
      }
      if (lane.ostinato()) {
        loops.add(line);
        continue;
      }
      if (Subject.of(lane.subject().text(), kit) == null) {
        continue;
      }
      int bars = lane.bars().size() - (systems.size() == 1 && pickupBeats > 0 ? 1 : 0);
      if (first == null) {
        first = line;
        systemBars = bars;
        decider = line;
      } else if (bars != systemBars) {
        fits = false;
        disagree(line, bars, first, systemBars, "this part");
      }
      if (said != null && systems.size() == 1 && bars != saidBars && isOnly(lines)) {
        fits = false;
        Line later = later(said, line);
        if (later == line) {
          disagree(line, bars, said, saidBars, "this part");
        }
      }
    }
    total += systemBars;
    if (decider == null && systems.size() == 1) {
      int needed = fixed > 0 ? fixed : said != null ? saidBars : loopBars(loops, meter);
      boolean all = checkOstinatos(loops, needed, said) && fits && !tooLong;
      return new Found(needed, systems, all);
    }
    int whole = fixed > 0 ? fixed : said != null ? saidBars : Math.max(1, total);
    if (fixed > 0 && total != fixed && decider != null && fits) {
      fits = false;
      problems.add(
          problems
              .make(
                  Code.BAR_COUNT,
                  decider,
                  decider.statement().span(),
                  "these parts have " + bars(total) + ", but the section has " + bars(fixed))
              .help("write " + bars(fixed) + ", or set the length with “bars” before"));
    } else if (said != null && decider != null && total != saidBars) {
      Line later = later(said, decider);
      if (later == said || !isOnly(lines)) {
        fits = false;
        disagree(
            later,
            later == said ? saidBars : total,
            later == said ? decider : said,
            later == said ? total : saidBars,
            later == said ? "this line" : "this part");
      }
    }
    return new Found(
        whole, systems, checkOstinatos(loops, whole, decider == null ? said : decider) && fits);
  }

  private static boolean isOnly(List<Line> lines) {
    return lines.stream().noneMatch(l -> l.statement() instanceof PartStatement.Next);
  }

  private static Line later(Line a, Line b) {
    return a.start() > b.start() ? a : b;
  }

  private void disagree(Line line, int bars, Line other, int otherBars, String what) {
    problems.add(
        problems
            .make(
                Code.BAR_COUNT,
                line,
                line.statement().span(),
                what + " has " + bars(bars) + ", but there are " + bars(otherBars) + " above")
            .label(other.spot(), bars(otherBars) + " here")
            .help("give all parts the same number of bars; % repeats the bar before"));
  }

  static String bars(int bars) {
    return bars == 1 ? "1 bar" : bars + " bars";
  }

  private boolean checkOstinatos(List<Line> loops, int total, @Nullable Line decider) {
    boolean fits = true;
    for (Line line : loops) {
      if (line.statement() instanceof PartStatement.Lane lane
          && total % lane.bars().size() != 0
          && Subject.of(lane.subject().text(), kit) != null) {
        fits = false;
        Line spot = decider == null ? line : later(line, decider);
        problems.add(
            problems
                .make(
                    Code.BAR_COUNT,
                    spot,
                    spot.statement().span(),
                    "an ostinato of "
                        + bars(lane.bars().size())
                        + " does not go into "
                        + bars(total)
                        + " without a rest")
                .label(
                    spot == line ? (decider == null ? line : decider).spot() : line.spot(), "here")
                .help("let the ostinato's bars divide the section's"));
      }
    }
    return fits;
  }

  /** The fewest bars that all ostinatos and played patterns divide; 1 where there are none. */
  private int loopBars(List<Line> loops, Meter meter) {
    long needed = 1;
    for (Line line : loops) {
      long own = 1;
      if (line.statement() instanceof PartStatement.Lane lane) {
        if (Subject.of(lane.subject().text(), kit) == null) {
          continue;
        }
        own = lane.bars().size();
      } else if (line.statement() instanceof PartStatement.Played played) {
        int places = patterns.length(played);
        NoteValue value = NoteValue.of(played.value().text()).orElse(NoteValue.EIGHTHS);
        if (places == 0) {
          continue;
        }
        Time length = value.length().times(places);
        own = length.over(meter.bar()).num();
        if (own > MOST_PATTERN_BARS) {
          tooLong(
              line,
              "this pattern comes round on a bar line only after " + own + " bars",
              "say how long the section is with “bars”, at most " + Work.MOST_BARS);
          continue;
        }
      }
      long together = Time.lcm(needed, own);
      if (together > Work.MOST_BARS) {
        tooLong(
            line,
            "these parts come round together only after " + together + " bars",
            "say how long the section is with “bars”");
        continue;
      }
      needed = together;
    }
    return (int) needed;
  }

  private void tooLong(Line line, String message, String help) {
    tooLong = true;
    problems.add(problems.make(Code.TOO_LONG, line, line.statement().span(), message).help(help));
  }
}
