package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.rhythm.Count.Syllable;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.Num;
import tabor.syntax.Word;

/** Trees of {@code at}, {@code in} and {@code where} to records. */
final class AtBuilder {
  private final Leaves leaves;
  private final BarsVisitor barsVisitor = new BarsVisitor();

  AtBuilder(Leaves leaves) {
    this.leaves = leaves;
  }

  At at(TaborParser.AtContext context) {
    if (context.parts.isEmpty()) {
      return At.EVERYWHERE;
    }
    At.Places places = null;
    At.Bars bars = null;
    Word where = null;
    for (TaborParser.AtPartContext part : context.parts) {
      if (part instanceof TaborParser.AtPlacesContext at) {
        once(places, at.AT().getSymbol());
        places = places(at);
      } else if (part instanceof TaborParser.InBarsContext in) {
        once(bars, in.IN().getSymbol());
        bars = bars(in.in);
      } else if (part instanceof TaborParser.WhereLevelContext level) {
        once(where, level.WHERE().getSymbol());
        where = leaves.level(level.degree);
      }
    }
    return new At(places, bars, where);
  }

  private void once(@Nullable Object before, Token keyword) {
    if (before != null) {
      String word = keyword.getText();
      leaves.report(
          Spans.of(keyword),
          "`" + word + "` stands twice on this line",
          word.equals("at")
              ? "Write all places after one at: at 1 2& 4"
              : word.equals("in")
                  ? "Write all bars after one in: in bars 2 4 6"
                  : "Choose one level");
    }
  }

  private At.Places places(TaborParser.AtPlacesContext context) {
    List<At.Place> items = new ArrayList<>(context.places.size());
    for (TaborParser.PlaceItemContext item : context.places) {
      if (item instanceof TaborParser.CountedContext counted) {
        items.add(
            counted.to == null
                ? new At.One(leaves.count(counted.from))
                : new At.Range(leaves.count(counted.from), leaves.count(counted.to)));
      } else if (item instanceof TaborParser.EveryContext every) {
        items.add(new At.Every(syllable(every.what), Spans.of(every)));
      }
    }
    return new At.Places(items, items.get(0).span().to(items.get(items.size() - 1).span()));
  }

  private Syllable syllable(Token token) {
    if (token.getType() == TaborLexer.AMPERSAND) {
      return Syllable.AND;
    }
    if (token.getType() == TaborLexer.BEAT) {
      return Syllable.NONE;
    }
    Word word = Leaves.word(token);
    if (!Lists.SYLLABLES.contains(word.text())) {
      leaves.report(
          word.span(),
          "`" + word.text() + "` is not counted in a beat",
          "Write every beat, every e, every & or every a");
    }
    return word.text().equals("e") ? Syllable.E : Syllable.A;
  }

  At.Bars bars(TaborParser.BarListContext context) {
    return context.accept(barsVisitor);
  }

  At.@Nullable Bars barsOrNull(TaborParser.@Nullable BarListContext context) {
    return context == null ? null : bars(context);
  }

  private final class BarsVisitor extends TaborParserBaseVisitor<At.Bars> {
    @Override
    public At.Bars visitListed(TaborParser.ListedContext context) {
      List<Num> bars = new ArrayList<>(context.items.size());
      for (Token item : context.items) {
        bars.add(Leaves.whole(item));
      }
      return new At.Listed(bars, Spans.of(context));
    }

    @Override
    public At.Bars visitThrough(TaborParser.ThroughContext context) {
      Num from = Leaves.whole(context.from);
      Num to = Leaves.whole(context.to);
      if (to.whole() < from.whole()) {
        Span span = from.span().to(to.span());
        leaves.report(
            Problem.syntax(span, "these bars run backwards", "Write the earlier bar first")
                .change(
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
              tabor.rhythm.Time.of(Leaves.digits(written.substring(0, written.length() - 2))),
              Spans.of(context.nth));
      if (nth.whole() < 1) {
        leaves.report(nth.span(), "there is no " + written + " bar", "Write 1st or more");
      }
      return new At.EveryNth(nth, Spans.of(context));
    }
  }
}
