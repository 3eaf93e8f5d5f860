package tabor.ide;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.Edit;
import tabor.syntax.Line;
import tabor.syntax.Num;
import tabor.syntax.PartStatement;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Statement;

/** The bars that a line, or a place on it, speaks of. */
final class NamedBars {
  private NamedBars() {}

  /** The bars that a statement names; all of the section where it names none. */
  static Set<Integer> of(Statement statement, Groove groove) {
    return of(SyntaxNodes.first(statement, At.Bars.class).orElse(null), groove);
  }

  /** All bars, the pickup among them. */
  static Set<Integer> all(Groove groove) {
    return of((At.Bars) null, groove);
  }

  /** The bars that a count on a line is read in. */
  static Set<Integer> of(Statement statement, Span count, Groove groove) {
    if (statement instanceof Edit.Dynamic dynamic) {
      return Set.of(number(dynamic.bar(), 1));
    }
    if (statement instanceof Edit.Hairpin hairpin) {
      int from = number(hairpin.fromBar(), 1);
      boolean end = count.equals(hairpin.to().span());
      return Set.of(end ? number(hairpin.toBar(), from) : from);
    }
    return of(statement, groove);
  }

  private static int number(@Nullable Num bar, int otherwise) {
    return bar == null ? otherwise : bar.whole();
  }

  private static Set<Integer> of(At.@Nullable Bars clause, Groove groove) {
    int last = groove.bars();
    IntStream bars =
        clause == null
            ? IntStream.rangeClosed(groove.firstBar(), last)
            : clause.match(
                new At.BarsCases<>() {
                  @Override
                  public IntStream listed(At.Listed bars) {
                    return bars.bars().stream().mapToInt(Num::whole);
                  }

                  @Override
                  public IntStream through(At.Through bars) {
                    return IntStream.rangeClosed(bars.from().whole(), bars.to().whole());
                  }

                  @Override
                  public IntStream last(At.Last bars) {
                    return IntStream.of(last);
                  }

                  @Override
                  public IntStream everyNth(At.EveryNth bars) {
                    int n = Math.max(1, bars.n().whole());
                    return IntStream.rangeClosed(1, last / n).map(i -> i * n);
                  }
                });
    return bars.filter(bar -> bar >= groove.firstBar() && bar <= last)
        .boxed()
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** The number of the first bar that a part writes, after the systems above it. */
  static int first(SectionSyntax section, Line part, Groove groove) {
    int first = groove.firstBar();
    int widest = 0;
    for (Line line : section.lines()) {
      if (line == part) {
        return first;
      }
      if (line.statement() instanceof PartStatement.Next) {
        first += widest;
        widest = 0;
      } else if (line.statement() instanceof PartStatement.Lane lane && !lane.ostinato()) {
        widest = Math.max(widest, lane.bars().size());
      }
    }
    return first;
  }

  /** {@code bar 2}, {@code bars 2 to 4}, {@code bars 1 3 5}. */
  static String words(Set<Integer> bars) {
    if (bars.size() == 1) {
      return "bar " + bars.iterator().next();
    }
    TreeSet<Integer> ordered = new TreeSet<>(bars);
    boolean row = ordered.last() - ordered.first() == ordered.size() - 1;
    return row && ordered.size() > 2
        ? "bars " + ordered.first() + " to " + ordered.last()
        : "bars " + ordered.stream().map(String::valueOf).collect(Collectors.joining(" "));
  }
}
