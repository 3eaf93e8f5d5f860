package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.groove.CountingWords;
import tabor.rhythm.Count.Syllable;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.Num;

/** Trees of {@code at}, {@code in} and {@code where} to records. */
final class AtBuilder {
  private final FirstProblem problems;
  private final NumberBuilder numbers;
  private final PlaceVisitor placeVisitor = new PlaceVisitor();
  private final BarsVisitor barsVisitor = new BarsVisitor();

  AtBuilder(FirstProblem problems, NumberBuilder numbers) {
    this.problems = problems;
    this.numbers = numbers;
  }

  At at(TaborParser.@Nullable AtContext context) {
    if (context == null) {
      return At.EVERYWHERE;
    }
    return new At(
        context.places_ == null ? null : places(context.places_),
        barsOrNull(context.in),
        context.level_ == null ? null : NameBuilder.level(context.level_.degree.word));
  }

  At.Places added(TaborParser.AddedAtContext context) {
    TaborParser.AddedPlacesContext places = context.places_;
    List<List<? extends ParserRuleContext>> groups = new ArrayList<>(places.groups.size());
    places.groups.forEach(group -> groups.add(group.items));
    return places(places.pick, groups);
  }

  private At.Places places(TaborParser.AtPlacesContext places) {
    List<List<? extends ParserRuleContext>> groups = new ArrayList<>(places.groups.size());
    places.groups.forEach(group -> groups.add(group.items));
    return places(places.pick, groups);
  }

  private At.Places places(@Nullable Token pick, List<List<? extends ParserRuleContext>> groups) {
    List<At.Place> items = new ArrayList<>();
    List<Integer> ends = new ArrayList<>(0);
    for (List<? extends ParserRuleContext> group : groups) {
      if (!items.isEmpty()) {
        ends.add(items.size());
      }
      for (ParserRuleContext item : group) {
        items.add(item.accept(placeVisitor));
      }
    }
    Num choose = pick == null ? null : numbers.positive(pick, "the number of places");
    Span first = choose == null ? items.get(0).span() : choose.span();
    return new At.Places(items, choose, ends, first.to(items.get(items.size() - 1).span()));
  }

  At.Bars bars(TaborParser.InBarsContext context) {
    return context.items.accept(barsVisitor);
  }

  At.@Nullable Bars barsOrNull(TaborParser.@Nullable InBarsContext context) {
    return context == null ? null : bars(context);
  }

  static @Nullable Num barOrNull(TaborParser.@Nullable InBarContext context) {
    return context == null ? null : NumberBuilder.whole(context.value);
  }

  private final class PlaceVisitor extends TaborParserBaseVisitor<At.Place> {
    @Override
    public At.Place visitPlace(TaborParser.PlaceContext place) {
      if (place.every_ != null) {
        return place.every_.accept(this);
      }
      return place.to == null
          ? new At.One(numbers.count(place.from))
          : new At.Range(numbers.count(place.from), numbers.count(place.to));
    }

    @Override
    public At.Place visitAddedPlace(TaborParser.AddedPlaceContext place) {
      return place.every_ != null
          ? place.every_.accept(this)
          : new At.One(numbers.count(place.from));
    }

    @Override
    public At.Place visitEveryAnd(TaborParser.EveryAndContext every) {
      return new At.EverySyllable(Syllable.AND, Spans.of(every));
    }

    @Override
    public At.Place visitEveryE(TaborParser.EveryEContext every) {
      return new At.EverySyllable(Syllable.E, Spans.of(every));
    }

    @Override
    public At.Place visitEveryA(TaborParser.EveryAContext every) {
      return new At.EverySyllable(Syllable.A, Spans.of(every));
    }

    @Override
    public At.Place visitEveryBeat(TaborParser.EveryBeatContext every) {
      return new At.EverySyllable(Syllable.NONE, Spans.of(every));
    }

    @Override
    public At.Place visitEverySlot(TaborParser.EverySlotContext every) {
      Num slot =
          NumberBuilder.within(every.slot.getText().substring(1), every.slot.getStartIndex() + 1);
      if (slot.whole() < 1) {
        problems.report(
            Spans.of(every.slot), "there is no slot 0 in a beat", "The first slot is .1");
      }
      return new At.EverySlot(slot, Spans.of(every));
    }

    @Override
    public At.Place visitEveryValue(TaborParser.EveryValueContext every) {
      return new At.EveryValue(NameBuilder.noteValue(every.value).value(), Spans.of(every));
    }

    @Override
    public At.Place visitEverySaid(TaborParser.EverySaidContext every) {
      String word = every.saidWord().getText();
      return new At.EverySaid(CountingWords.plain(word), Spans.of(every));
    }
  }

  private final class BarsVisitor extends TaborParserBaseVisitor<At.Bars> {
    @Override
    public At.Bars visitListed(TaborParser.ListedContext context) {
      List<Num> bars = new ArrayList<>(context.items.size());
      for (Token item : context.items) {
        bars.add(NumberBuilder.whole(item));
      }
      return new At.Listed(bars, Spans.of(context));
    }

    @Override
    public At.Bars visitThrough(TaborParser.ThroughContext context) {
      Num from = NumberBuilder.whole(context.from);
      Num to = NumberBuilder.whole(context.to);
      if (to.whole() < from.whole()) {
        Span span = from.span().to(to.span());
        problems.report(
            SyntaxProblem.of(span, "these bars run backwards", "Write the earlier bar first")
                .fix(
                    "Turn them round",
                    span,
                    context.to.getText() + " to " + context.from.getText()));
      }
      return new At.Through(from, to, Spans.of(context));
    }

    @Override
    public At.Bars visitLastBar(TaborParser.LastBarContext context) {
      return new At.Last(Spans.of(context));
    }

    @Override
    public At.Bars visitEveryNth(TaborParser.EveryNthContext context) {
      String written = context.nth.getText();
      Num nth =
          new Num(
              tabor.rhythm.Time.of(
                  NumberBuilder.digits(written.substring(0, written.length() - 2))),
              Spans.of(context.nth));
      if (nth.whole() < 1) {
        problems.report(nth.span(), "there is no " + written + " bar", "Write 1st or more");
      }
      return new At.EveryNth(nth, Spans.of(context));
    }
  }
}
