package tabor.parse;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.source.Span;
import tabor.syntax.Beat;
import tabor.syntax.Beat.Suffix;
import tabor.syntax.LaneBar;
import tabor.syntax.Num;

/** Trees of bars, words and strokes to records. */
final class BeatBuilder extends TaborParserBaseVisitor<Beat.Element> {
  private final FirstProblem problems;

  BeatBuilder(FirstProblem problems) {
    this.problems = problems;
  }

  List<LaneBar> bars(TaborParser.BarsContext context) {
    List<LaneBar> bars = new ArrayList<>(context.items.size());
    for (TaborParser.BarContext bar : context.items) {
      List<Beat> beats = new ArrayList<>(bar.beats.size());
      for (TaborParser.BeatContext beat : bar.beats) {
        beats.add(beat(beat));
      }
      bars.add(new LaneBar(beats, bar.repeat != null, Spans.of(bar)));
    }
    return bars;
  }

  private Beat beat(TaborParser.BeatContext beat) {
    Num over = null;
    if (beat.over != null) {
      Span span = Spans.of(beat.over);
      over = NumberBuilder.within(beat.over.getText().substring(1), span.start() + 1);
      if (over.whole() < 1) {
        problems.report(
            over.span(), "a word cannot take 0 beats", "Write 1 or more after the colon");
      }
    }
    return new Beat(elements(beat.elements), over, Spans.of(beat));
  }

  List<Beat.Element> elements(List<? extends ParserRuleContext> contexts) {
    List<Beat.Element> elements = new ArrayList<>(contexts.size());
    for (ParserRuleContext context : contexts) {
      elements.add(context.accept(this));
    }
    return elements;
  }

  @Override
  public Beat.Element visitHit(TaborParser.HitContext hit) {
    return stroke(hit.sign, hit.small, hit.suffixes, Spans.of(hit));
  }

  @Override
  public Beat.Element visitSilence(TaborParser.SilenceContext silence) {
    return new Beat.Rest(Spans.of(silence));
  }

  @Override
  public Beat.Element visitHold(TaborParser.HoldContext hold) {
    return new Beat.Hold(Spans.of(hold));
  }

  @Override
  public Beat.Element visitGroup(TaborParser.GroupContext group) {
    return new Beat.Group(elements(group.elements), Spans.of(group));
  }

  @Override
  public Beat.Element visitGhosts(TaborParser.GhostsContext ghosts) {
    Span span = Spans.of(ghosts);
    if (ghosts.small == null && ghosts.suffixes.isEmpty()) {
      return new Beat.Ghosts(elements(ghosts.elements), span);
    }
    if (ghosts.elements.size() == 1
        && ghosts.elements.get(0) instanceof TaborParser.SoftHitContext only) {
      return new Beat.Ghosts(List.of(stroke(only.sign, ghosts.small, ghosts.suffixes, span)), span);
    }
    problems.report(
        ghosts.small != null ? Spans.of(ghosts.small) : Spans.of(ghosts.suffixes.get(0)),
        ghosts.small != null
            ? "grace notes stand before one stroke, not before several in parentheses"
            : "a sign stands after one stroke, not after several in parentheses",
        "Give each stroke its own parentheses: '(r)(l) or (r)/(l)/");
    return new Beat.Ghosts(elements(ghosts.elements), span);
  }

  @Override
  public Beat.Element visitSoftHit(TaborParser.SoftHitContext hit) {
    return stroke(hit.sign, null, List.of(), Spans.of(hit));
  }

  @Override
  public Beat.Element visitSoftSilence(TaborParser.SoftSilenceContext silence) {
    return new Beat.Rest(Spans.of(silence));
  }

  @Override
  public Beat.Element visitSoftGroup(TaborParser.SoftGroupContext group) {
    return new Beat.Group(elements(group.elements), Spans.of(group));
  }

  private Beat.Hit stroke(
      Token sign, @Nullable Token small, List<TaborParser.SuffixContext> suffixes, Span span) {
    char letter = sign.getText().charAt(0);
    boolean accent = letter >= 'A' && letter <= 'Z';
    return new Beat.Hit(
        accent ? (char) (letter - 'A' + 'a') : letter,
        accent,
        small == null ? 0 : small.getText().length(),
        suffixes.isEmpty() ? List.of() : suffixes(suffixes),
        span);
  }

  private List<Suffix> suffixes(List<TaborParser.SuffixContext> contexts) {
    List<Suffix> found = new ArrayList<>(contexts.size());
    Set<Suffix> seen = EnumSet.noneOf(Suffix.class);
    boolean rolls = false;
    for (TaborParser.SuffixContext context : contexts) {
      Suffix suffix = Suffix.of(context.sign.getText());
      boolean roll = suffix.isRoll();
      if (!seen.add(suffix)) {
        problems.report(
            Spans.of(context), "`" + suffix.sign() + "` is written twice", "Leave one of them out");
      } else if (roll && rolls && suffix == Suffix.DIDDLE) {
        problems.report(
            Spans.of(context),
            "there is a slash too many here",
            "One slash is a diddle, two are an open roll, three a roll in thirty-seconds");
      } else if (roll && rolls) {
        problems.report(
            Spans.of(context),
            "one stroke cannot be rolled in two ways",
            "Keep one of / (diddle), // (open roll), /// (roll) and ~ (press roll)");
      }
      rolls |= roll;
      found.add(suffix);
    }
    return found;
  }
}
