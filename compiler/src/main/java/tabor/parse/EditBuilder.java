package tabor.parse;

import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.lists.Lists;
import tabor.syntax.Distance;
import tabor.syntax.Edit;
import tabor.syntax.TargetRef;
import tabor.syntax.Verb;

/** Trees of edits to records. */
final class EditBuilder extends TaborParserBaseVisitor<Edit> {
  private final NumberBuilder numbers;
  private final AtBuilder places;

  EditBuilder(FirstProblem problems, NumberBuilder numbers) {
    this.numbers = numbers;
    this.places = new AtBuilder(problems, numbers);
  }

  @Override
  public Edit visitPlays(TaborParser.PlaysContext line) {
    return new Edit.Plays(
        NameBuilder.player(line.who),
        NameBuilder.surface(line.what),
        NameBuilder.levelOrNull(line.degree),
        places.at(line.where),
        Spans.of(line));
  }

  @Override
  public Edit visitSplit(TaborParser.SplitContext line) {
    return new Edit.Split(
        NameBuilder.limb(line.who),
        NameBuilder.levelOrNull(line.degree),
        Lists.map(line.surfaces, NameBuilder::surface),
        places.at(line.where),
        Spans.of(line));
  }

  @Override
  public Edit visitAdd(TaborParser.AddContext line) {
    TargetRef what =
        line.who != null
            ? new TargetRef.OfLimb(NameBuilder.limb(line.who))
            : new TargetRef.OfSurface(NameBuilder.surface(line.what));
    return new Edit.Add(
        what,
        NameBuilder.limbOrNull(line.with),
        line.degree == null ? null : NameBuilder.level(line.degree.word),
        places.added(line.where),
        places.barsOrNull(line.where.in),
        Spans.of(line));
  }

  @Override
  public Edit visitChange(TaborParser.ChangeContext line) {
    return new Edit.Change(
        Verb.of(line.keyword.word.getText()),
        NameBuilder.targets(line.whom),
        places.at(line.where),
        Spans.of(line));
  }

  @Override
  public Edit visitFollows(TaborParser.FollowsContext line) {
    return new Edit.Follows(
        NameBuilder.surface(line.what),
        NameBuilder.limb(line.who),
        places.at(line.where),
        Spans.of(line));
  }

  @Override
  public Edit visitMove(TaborParser.MoveContext line) {
    return new Edit.Move(
        NameBuilder.targets(line.whom),
        numbers.count(line.from),
        numbers.count(line.to),
        places.barsOrNull(line.in),
        Spans.of(line));
  }

  @Override
  public Edit visitShift(TaborParser.ShiftContext line) {
    return new Edit.Shift(
        NameBuilder.targets(line.whom),
        line.way.getType() == TaborLexer.LATER,
        numbers.positive(line.value, "the distance"),
        distance(line.unit),
        Spans.of(line));
  }

  private static Distance distance(TaborParser.DistanceContext unit) {
    if (unit.value != null) {
      return new Distance.OfValue(NameBuilder.noteValue(unit.value).value(), Spans.of(unit));
    }
    return unit.beats != null
        ? new Distance.Beats(Spans.of(unit))
        : new Distance.Bars(Spans.of(unit));
  }

  @Override
  public Edit visitSwapHands(TaborParser.SwapHandsContext line) {
    return new Edit.SwapHands(Spans.of(line));
  }

  @Override
  public Edit visitOnly(TaborParser.OnlyContext line) {
    return new Edit.Only(NameBuilder.targets(line.whom), Spans.of(line));
  }

  @Override
  public Edit visitTake(TaborParser.TakeContext line) {
    return new Edit.Take(
        NameBuilder.targets(line.whom),
        NameBuilder.name(line.section),
        places.at(line.where),
        Spans.of(line));
  }

  @Override
  public Edit visitFill(TaborParser.FillContext line) {
    return new Edit.Fill(
        NameBuilder.name(line.section),
        places.bars(line.in),
        line.from == null ? null : numbers.count(line.from),
        Spans.of(line));
  }

  @Override
  public Edit visitDynamic(TaborParser.DynamicContext line) {
    return new Edit.Dynamic(
        NameBuilder.loudness(line.mark),
        line.from == null ? null : numbers.count(line.from),
        AtBuilder.barOrNull(line.inOne),
        Spans.of(line));
  }

  @Override
  public Edit visitHairpin(TaborParser.HairpinContext line) {
    return new Edit.Hairpin(
        line.keyword.getType() == TaborLexer.CRESCENDO,
        NameBuilder.loudness(line.mark),
        numbers.count(line.from),
        AtBuilder.barOrNull(line.fromBar),
        numbers.count(line.to),
        AtBuilder.barOrNull(line.toBar),
        Spans.of(line));
  }
}
