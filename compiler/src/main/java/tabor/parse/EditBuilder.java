package tabor.parse;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.syntax.At;
import tabor.syntax.Edit;
import tabor.syntax.Num;
import tabor.syntax.Word;

/** Trees of edits to records. */
final class EditBuilder extends TaborParserBaseVisitor<Edit> {
  private final Leaves leaves;
  private final AtBuilder places;

  EditBuilder(Leaves leaves) {
    this.leaves = leaves;
    this.places = new AtBuilder(leaves);
  }

  @Override
  public Edit visitPlays(TaborParser.PlaysContext line) {
    return new Edit.Plays(
        Leaves.limb(line.who),
        Leaves.surface(line.what),
        leaves.levelOrNull(line.degree),
        places.at(line.range),
        Spans.of(line));
  }

  @Override
  public Edit visitSplit(TaborParser.SplitContext line) {
    return new Edit.Split(
        Leaves.limb(line.who),
        leaves.levelOrNull(line.degree),
        line.surfaces.stream().map(Leaves::surface).toList(),
        places.at(line.range),
        Spans.of(line));
  }

  @Override
  public Edit visitAdd(TaborParser.AddContext line) {
    Word what = line.who != null ? Leaves.limb(line.who) : Leaves.surface(line.what);
    Word level = leaves.levelOrNull(line.degree);
    At at = places.at(line.range);
    if (at.places() == null) {
      leaves.report(
          Spans.of(line),
          "where to add it is not said",
          "Write the counts after at: add kick at 1 2&");
    } else {
      for (At.Place place : at.places().items()) {
        if (place instanceof At.Range range) {
          leaves.report(
              range.span(),
              "strokes are added at single counts, not from one count to another",
              "Write each count, or every &");
        }
      }
    }
    if (at.where() != null) {
      leaves.report(
          at.where().span(),
          "`where` asks for strokes that are there, but `add` makes new ones",
          "Leave out where " + at.where().text());
    }
    return new Edit.Add(what, Leaves.limbOrNull(line.with), level, at, Spans.of(line));
  }

  @Override
  public Edit visitDrop(TaborParser.DropContext line) {
    return new Edit.Drop(Leaves.targets(line.whom), places.at(line.range), Spans.of(line));
  }

  @Override
  public Edit visitSetLevel(TaborParser.SetLevelContext line) {
    return new Edit.SetLevel(
        Leaves.word(line.keyword),
        Leaves.targets(line.whom),
        places.at(line.range),
        Spans.of(line));
  }

  @Override
  public Edit visitMultiply(TaborParser.MultiplyContext line) {
    return new Edit.Multiply(
        Leaves.word(line.keyword),
        Leaves.targets(line.whom),
        places.at(line.range),
        Spans.of(line));
  }

  @Override
  public Edit visitAdorn(TaborParser.AdornContext line) {
    return new Edit.Adorn(
        Leaves.word(line.keyword),
        Leaves.targets(line.whom),
        places.at(line.range),
        Spans.of(line));
  }

  @Override
  public Edit visitFollows(TaborParser.FollowsContext line) {
    return new Edit.Follows(
        Leaves.surface(line.what), Leaves.limb(line.who), places.at(line.range), Spans.of(line));
  }

  @Override
  public Edit visitMove(TaborParser.MoveContext line) {
    return new Edit.Move(
        Leaves.targets(line.whom),
        leaves.count(line.from),
        leaves.count(line.to),
        places.barsOrNull(line.in),
        Spans.of(line));
  }

  @Override
  public Edit visitShift(TaborParser.ShiftContext line) {
    Word way = leaves.listed(line.way, Lists.DIRECTIONS, "a direction");
    Word unit = Leaves.word(line.unit);
    if (line.unit.getType() == TaborLexer.NAME && !Lists.VALUES_BOTH.contains(unit.text())) {
      List<String> all = new java.util.ArrayList<>(Lists.VALUES_BOTH);
      all.addAll(List.of("beat", "beats", "bar", "bars"));
      leaves.report(Leaves.unlisted(unit, all, "a note value, beats or bars"));
    }
    return new Edit.Shift(
        Leaves.targets(line.whom),
        way.text().equals("later"),
        leaves.positive(line.value, "the distance"),
        unit,
        Spans.of(line));
  }

  @Override
  public Edit visitSwapHands(TaborParser.SwapHandsContext line) {
    return new Edit.SwapHands(Spans.of(line));
  }

  @Override
  public Edit visitOnly(TaborParser.OnlyContext line) {
    return new Edit.Only(Leaves.targets(line.whom), Spans.of(line));
  }

  @Override
  public Edit visitTake(TaborParser.TakeContext line) {
    return new Edit.Take(
        Leaves.targets(line.whom),
        Leaves.name(line.section),
        places.at(line.range),
        Spans.of(line));
  }

  @Override
  public Edit visitFill(TaborParser.FillContext line) {
    return new Edit.Fill(
        Leaves.name(line.section),
        places.bars(line.in),
        line.from == null ? null : leaves.count(line.from),
        Spans.of(line));
  }

  @Override
  public Edit visitDynamic(TaborParser.DynamicContext line) {
    return new Edit.Dynamic(
        leaves.listed(line.loudness, Lists.DYNAMICS, "a dynamic mark"),
        line.place == null ? null : leaves.count(line.place),
        bar(line.inOne),
        Spans.of(line));
  }

  @Override
  public Edit visitHairpin(TaborParser.HairpinContext line) {
    return new Edit.Hairpin(
        Leaves.word(line.keyword),
        leaves.listed(line.loudness, Lists.DYNAMICS, "a dynamic mark"),
        leaves.count(line.from),
        bar(line.fromBar),
        leaves.count(line.to),
        bar(line.toBar),
        Spans.of(line));
  }

  private static @Nullable Num bar(TaborParser.@Nullable InBarContext context) {
    return context == null ? null : Leaves.whole(context.value);
  }
}
