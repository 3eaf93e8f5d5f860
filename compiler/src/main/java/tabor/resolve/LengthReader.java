package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.Statement;
import tabor.syntax.Subject;

/**
 * Finds out how long a section is. In a groove the parts decide; in a step the section has its
 * length and the parts have to fit.
 */
final class LengthReader {
  private final SectionFrame frame;
  private final Problems problems;
  private final Patterns patterns;
  private final List<Line> lines;
  private final List<Line> loops = new ArrayList<>();
  private final List<Integer> systems = new ArrayList<>(List.of(1));
  private @Nullable Line decider;
  private int total;
  private boolean fits = true;
  private boolean open;

  /** Measures the parts among some lines. */
  LengthReader(SectionFrame frame, Problems problems, List<Line> lines) {
    this.frame = frame;
    this.problems = problems;
    this.patterns = new Patterns(frame.scope());
    this.lines = lines;
  }

  private boolean isKnown(Subject subject) {
    return TargetFilter.of(subject.target(), frame.kit()) != null;
  }

  /** True if the parts agree, and each system has one that tells how long it is. */
  private boolean areKnown() {
    return fits && !open;
  }

  /** The length of a groove; {@code said} is its {@code bars} line, if it has one. */
  SectionLength ofGroove(SectionLength.@Nullable Said said) {
    systems(said);
    Line first = decider;
    if (first == null && systems.size() == 1) {
      int bars = said != null ? said.bars() : loopBars();
      checkOstinatos(bars, said == null ? null : said.line());
      return new SectionLength(bars, systems, areKnown());
    }
    int bars = said != null ? said.bars() : Math.max(1, total);
    if (said != null && first != null && total != said.bars()) {
      agreeWith(said, first);
    }
    if (said != null || !open) {
      checkOstinatos(bars, said != null ? said.line() : first);
    }
    return new SectionLength(bars, systems, areKnown());
  }

  /** The length of a run of parts in a step of so many bars. */
  SectionLength ofStep(int bars) {
    systems(null);
    Line first = decider;
    if (first != null && total != bars && fits && !open) {
      fits = false;
      problems.tell(
          Code.BAR_COUNT,
          first,
          first.statement().span(),
          "these parts have "
              + SectionLength.bars(total)
              + ", but the section has "
              + SectionLength.bars(bars),
          "write "
              + SectionLength.bars(bars)
              + ", or set the length with “bars "
              + total
              + "” above");
    }
    checkOstinatos(bars, first);
    return new SectionLength(bars, systems, areKnown());
  }

  /** Adds up the systems; all parts of one have the same number of bars. */
  private void systems(SectionLength.@Nullable Said said) {
    Line first = null;
    int systemBars = 0;
    boolean only = true;
    boolean unread = false;
    for (Line line : lines) {
      only &= !(line.statement() instanceof PartStatement.Next);
    }
    for (Line line : lines) {
      Statement statement = line.statement();
      if (statement instanceof PartStatement.Next) {
        total += systemBars;
        open |= unread && first == null;
        unread = false;
        systems.add(total + 1);
        first = null;
        systemBars = 0;
      } else if (statement instanceof PartStatement.Played) {
        loops.add(line);
      } else if (statement instanceof Statement.Broken broken) {
        unread |= broken.lane();
      } else if (statement instanceof PartStatement.Lane lane && isKnown(lane.subject())) {
        if (lane.ostinato()) {
          loops.add(line);
          continue;
        }
        boolean pickup = systems.size() == 1 && frame.pickupBeats() > 0;
        int bars = lane.bars().size() - (pickup ? 1 : 0);
        if (first == null) {
          first = line;
          decider = line;
          systemBars = bars;
        } else if (bars != systemBars) {
          fits = false;
          disagree(line, bars, first, systemBars, "this part");
        }
        if (said != null && only && bars != said.bars() && later(said.line(), line) == line) {
          fits = false;
          disagree(line, bars, said.line(), said.bars(), "this part");
        }
      }
    }
    total += systemBars;
    open |= unread && first == null;
  }

  /** Says that the parts are not as long as {@code bars} says, unless each part was told so. */
  private void agreeWith(SectionLength.Said said, Line first) {
    if (open) {
      return;
    }
    boolean systemsAdded = systems.size() > 1;
    if (later(said.line(), first) == said.line()) {
      fits = false;
      disagree(said.line(), said.bars(), first, total, "this line");
    } else if (systemsAdded) {
      fits = false;
      disagree(first, total, said.line(), said.bars(), "this part");
    }
  }

  private static Line later(Line a, Line b) {
    return a.start() > b.start() ? a : b;
  }

  private void disagree(Line line, int bars, Line other, int otherBars, String what) {
    Diagnostic made =
        problems
            .make(
                Code.BAR_COUNT,
                line,
                line.statement().span(),
                what
                    + " has "
                    + SectionLength.bars(bars)
                    + (otherBars == 1 ? ", but there is " : ", but there are ")
                    + SectionLength.bars(otherBars)
                    + " above")
            .label(other.spot(), SectionLength.bars(otherBars) + " here");
    Line part = line.statement() instanceof PartStatement.Lane ? line : other;
    int partBars = part == line ? bars : otherBars;
    int wanted = part == line ? otherBars : bars;
    boolean loops =
        part.statement() instanceof PartStatement.Lane
            && partBars > 0
            && wanted > partBars
            && wanted % partBars == 0
            && systems.size() == 1
            && frame.pickupBeats() == 0;
    if (loops) {
      Spot start =
          part.spot(new Span(part.statement().span().start(), part.statement().span().start()));
      made =
          made.help(
                  "put “ostinato” before the part to play its "
                      + SectionLength.bars(partBars)
                      + " over and over")
              .fix("make the part an ostinato", start, "ostinato ");
    } else {
      made = made.help("give all parts the same number of bars; % repeats the bar before");
    }
    problems.add(made);
  }

  private void checkOstinatos(int bars, @Nullable Line other) {
    for (Line line : loops) {
      if (!(line.statement() instanceof PartStatement.Lane lane)
          || bars % lane.bars().size() == 0) {
        continue;
      }
      fits = false;
      Line at = other == null ? line : later(line, other);
      Line there = at == line && other != null ? other : line;
      problems.add(
          problems
              .make(
                  Code.BAR_COUNT,
                  at,
                  at.statement().span(),
                  "an ostinato of "
                      + SectionLength.bars(lane.bars().size())
                      + " does not divide "
                      + SectionLength.bars(bars)
                      + " evenly")
              .label(
                  there.spot(), there == line ? "the ostinato" : SectionLength.bars(bars) + " here")
              .help("make the section a multiple of the ostinato's bars"));
    }
  }

  /**
   * The fewest bars, in whole cycles of the meters, that all ostinatos and played patterns divide.
   */
  private int loopBars() {
    int cycle = frame.meters().size();
    long needed = cycle;
    for (Line line : loops) {
      long own = cycle;
      if (line.statement() instanceof PartStatement.Lane lane) {
        own = SectionLength.together(lane.bars().size(), cycle);
      } else if (line.statement() instanceof PartStatement.Played played) {
        own = patterns.bars(played, frame.meters());
        if (own == 0) {
          continue;
        }
        if (own > Patterns.MOST_BARS) {
          tooLong(
              line,
              "this pattern ends on a bar line only after " + own + " bars",
              "say how long the section is with “bars”, at most " + SectionDraft.MOST_BARS);
          continue;
        }
      }
      long all = SectionLength.together(needed, own);
      if (all > SectionDraft.MOST_BARS) {
        tooLong(
            line,
            "these parts end together only after " + all + " bars",
            "say how long the section is with “bars”");
        continue;
      }
      needed = all;
    }
    return (int) needed;
  }

  private void tooLong(Line line, String message, String help) {
    fits = false;
    problems.tell(Code.TOO_LONG, line, line.statement().span(), message, help);
  }
}
