package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.rhythm.Time;
import tabor.syntax.Num;
import tabor.syntax.PlayerStatement;

/** Lines of players to trees. */
final class PlayerBuilder extends TaborParserBaseVisitor<PlayerStatement> {
  /** Shares of a tempo at which something can still be practised, in percent. */
  private static final int SMALLEST = 10;

  private static final int LARGEST = 400;

  private final FirstProblem problems;
  private final NumberBuilder numbers;

  PlayerBuilder(FirstProblem problems, NumberBuilder numbers) {
    this.problems = problems;
    this.numbers = numbers;
  }

  @Override
  public PlayerStatement visitOpenHanded(TaborParser.OpenHandedContext line) {
    return new PlayerStatement.OpenHanded(Spans.of(line));
  }

  @Override
  public PlayerStatement visitTempoShare(TaborParser.TempoShareContext line) {
    String written = line.share.getText();
    Time share = NumberBuilder.exact(written.substring(0, written.length() - 1));
    if (share.before(Time.of(SMALLEST)) || Time.of(LARGEST).before(share)) {
      problems.report(
          Spans.of(line.share),
          "a player cannot take the lesson at " + written,
          "The share lies between " + SMALLEST + "% and " + LARGEST + "%");
    }
    return new PlayerStatement.TempoShare(new Num(share, Spans.of(line.share)), Spans.of(line));
  }

  @Override
  public PlayerStatement visitPlayerSections(TaborParser.PlayerSectionsContext line) {
    List<PlayerStatement.Range> ranges = new ArrayList<>(line.items.size());
    for (TaborParser.SectionRangeContext item : line.items) {
      ranges.add(
          item.number_ != null
              ? new PlayerStatement.Range(
                  numbers.positive(item.number_, "the number of sections"), null, null)
              : new PlayerStatement.Range(
                  null, NameBuilder.name(item.from), NameBuilder.nameOrNull(item.to)));
    }
    return new PlayerStatement.Sections(ranges, Spans.of(line));
  }
}
