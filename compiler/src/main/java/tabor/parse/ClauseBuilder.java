package tabor.parse;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.source.Span;
import tabor.syntax.ChartStatement;
import tabor.syntax.Name;
import tabor.syntax.Num;
import tabor.syntax.SettingStatement;
import tabor.syntax.TargetRef;

/** What may follow in a {@code play}, {@code trade} or {@code climb}: each once, in any order. */
record ClauseBuilder(FirstProblem problems, NumberBuilder numbers, SettingBuilder settings) {
  ChartStatement.Clauses of(List<TaborParser.PlayClauseContext> clauses) {
    Span each = null;
    Num times = null;
    Num bars = null;
    ChartStatement.Duration time = null;
    SettingStatement.Tempo tempo = null;
    List<TargetRef> without = List.of();
    Name fill = null;
    for (TaborParser.PlayClauseContext clause : clauses) {
      Span span = Spans.of(clause);
      if (clause instanceof TaborParser.EachClauseContext) {
        problems.once(each != null, span, "each");
        each = span;
      } else if (clause instanceof TaborParser.TimesClauseContext said) {
        howLong(times, bars, time, span, "times");
        times = numbers.positive(said.value, "the number of times");
      } else if (clause instanceof TaborParser.BarsClauseContext said) {
        howLong(bars, times, time, span, "bars");
        bars = numbers.positive(said.value, "the number of bars");
      } else if (clause instanceof TaborParser.ForClauseContext said) {
        howLong(time, times, bars, span, "for");
        time = duration(said.length);
      } else if (clause instanceof TaborParser.TempoClauseContext said) {
        problems.once(tempo != null, span, "at tempo");
        tempo = settings.tempo(said.speed);
      } else if (clause instanceof TaborParser.WithoutClauseContext said) {
        problems.once(!without.isEmpty(), span, "without");
        without = NameBuilder.targets(said.whom);
      } else if (clause instanceof TaborParser.FillClauseContext said) {
        problems.once(fill != null, span, "fill");
        fill = NameBuilder.name(said.section);
      }
    }
    return new ChartStatement.Clauses(each, times, bars, time, tempo, without, fill);
  }

  /** Times, bars and minutes each say how long something is played: one of them is enough. */
  private void howLong(
      @Nullable Object same, @Nullable Object one, @Nullable Object other, Span span, String word) {
    problems.once(same != null, span, word);
    if (one != null || other != null) {
      problems.report(
          span,
          "how long this is played is said in two ways",
          "Keep the times, the bars or the minutes");
    }
  }

  ChartStatement.Duration duration(TaborParser.DurationContext length) {
    Num number = new Num(NumberBuilder.exact(length.value.getText()), Spans.of(length.value));
    boolean minutes =
        length.unit.getType() == TaborLexer.MINUTES || length.unit.getType() == TaborLexer.MINUTE;
    if (number.value().sign() == 0) {
      problems.report(
          Spans.of(length), "no time at all cannot be filled", "Write 1 second or more");
    }
    return new ChartStatement.Duration(number, minutes, Spans.of(length));
  }

  /** What a ladder does not take, having it already. */
  void ofClimb(ChartStatement.Clauses said, boolean open, Span line) {
    refuse(said.each(), "each", "a ladder is of one section");
    SettingStatement.Tempo tempo = said.tempo();
    if (tempo != null) {
      problems.report(
          tempo.span(), "a ladder has tempos of its own", "They stand after from and to");
    }
    Num number = said.times() == null ? said.bars() : said.times();
    refuse(
        number, "how often a ladder plays each tempo stands after `every`", "write every 4 times");
    if (open && said.time() == null) {
      problems.report(
          line,
          "how long each tempo of this ladder lasts is not said",
          "Write every 4 times, every 8 bars, or for 10 minutes");
    }
  }

  void refuse(@Nullable Span span, String word, String why) {
    if (span != null) {
      problems.report(span, "`" + word + "` does not fit here: " + why, "Leave it out");
    }
  }

  void refuse(@Nullable Num number, String message, String help) {
    if (number != null) {
      problems.report(number.span(), message, Wording.sentence(help));
    }
  }
}
