package tabor.ide;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.source.Span;
import tabor.syntax.Beat;
import tabor.syntax.Edit;
import tabor.syntax.LimbRef;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.Subject;

/** Gives a stroke to another limb: by its letter, behind {@code with}, or below its part. */
record LimbFixes(Cursor cursor, Diagnostic diagnostic, List<QuickFix> found) {
  /** The letter of the limb on the other side. */
  static final Map<Character, Character> OTHER = Map.of('r', 'l', 'l', 'r', 'k', 'p', 'p', 'k');

  void find() {
    Line line = cursor.line();
    SyntaxToken token = cursor.token();
    if (line == null) {
      return;
    }
    if (line.statement() instanceof Edit.Add added && added.with() != null) {
      if (diagnostic.code() == Code.WRONG_LIMB || isFree(added.with().limb().other())) {
        with(added.with());
      }
    } else if (token != null && token.hit() != null) {
      if (line.statement() instanceof PartStatement.Lane lane
          && lane.subject() instanceof Subject.OfLimb limb) {
        below(line, token, token.hit(), limb.limb().limb());
      } else if (diagnostic.code() != Code.WRONG_LIMB) {
        letter(line, token, token.hit());
      }
    }
  }

  /**
   * True if a limb has nothing to do where the diagnostic's stroke is. Of three strokes for two
   * limbs none is helped by the other one.
   */
  private boolean isFree(Limb limb) {
    if (diagnostic.code() == Code.THREE_HANDS || diagnostic.code() == Code.THREE_FEET) {
      return false;
    }
    Groove groove = cursor.groove().orElse(null);
    return groove == null
        || groove.written().stream()
            .filter(stroke -> stroke.spot().equals(diagnostic.spot()))
            .noneMatch(stroke -> Simultaneous.isBusy(groove, limb, stroke));
  }

  private void with(LimbRef limb) {
    boolean wrong = diagnostic.code() == Code.WRONG_LIMB;
    Limb other = wrong ? counterpart(limb.limb()) : limb.limb().other();
    String words = limb.spelledOut() || wrong ? other.words() : other.isRight() ? "right" : "left";
    found.add(QuickFix.of("Give it to the " + other.words(), cursor.inFile(limb.span()), words));
  }

  /** The foot on the side of a hand, and the other way round. */
  private static Limb counterpart(Limb limb) {
    return switch (limb) {
      case RIGHT_HAND -> Limb.RIGHT_FOOT;
      case LEFT_HAND -> Limb.LEFT_FOOT;
      case RIGHT_FOOT -> Limb.RIGHT_HAND;
      case LEFT_FOOT -> Limb.LEFT_HAND;
    };
  }

  private void letter(Line line, SyntaxToken token, Beat.Hit hit) {
    Span letter = cursor.inFile(token.letterSpan(line));
    Character other = OTHER.get(hit.letter());
    if (other != null) {
      if (isFree(limb(other))) {
        found.add(QuickFix.of("Give it to the other limb", letter, cased(other, hit)));
      }
    } else if (hit.letter() == 'b') {
      found.add(QuickFix.of("Play it with the right alone", letter, cased('r', hit)));
      found.add(QuickFix.of("Play it with the left alone", letter, cased('l', hit)));
    }
  }

  private Limb limb(char letter) {
    boolean feet =
        cursor.line() != null
            && cursor.line().statement() instanceof PartStatement.Lane lane
            && (lane.subject() instanceof Subject.Feet || isFoot(lane.subject()));
    return switch (letter) {
      case 'k' -> Limb.RIGHT_FOOT;
      case 'p' -> Limb.LEFT_FOOT;
      case 'r' -> feet ? Limb.RIGHT_FOOT : Limb.RIGHT_HAND;
      default -> feet ? Limb.LEFT_FOOT : Limb.LEFT_HAND;
    };
  }

  private boolean isFoot(Subject subject) {
    Surface surface =
        subject instanceof Subject.OfSurface of ? cursor.kit().surface(of.surface().name()) : null;
    return surface != null && surface.isFoot();
  }

  private static String cased(char letter, Beat.Hit hit) {
    String text = String.valueOf(letter);
    return hit.accent() ? text.toUpperCase(Locale.ROOT) : text;
  }

  /** In a limb's own part: a dot there, and the stroke added for another limb below. */
  private void below(Line line, SyntaxToken token, Beat.Hit hit, Limb limb) {
    Diagnostic.Place place = diagnostic.place();
    Surface surface = cursor.kit().letter(hit.letter());
    if (place == null
        || place.count() == null
        || surface == null
        || !hit.suffixes().isEmpty()
        || hit.grace() > 0) {
      // What an added stroke cannot have would be lost.
      return;
    }
    boolean fits = surface.isFoot() != limb.isHand();
    if (fits && !isFree(limb.other())) {
      return;
    }
    String who = fits ? " with " + limb.other().words() : "";
    String title =
        fits
            ? "Give it to the " + limb.other().words()
            : "Give the " + surface.words() + " to a " + (surface.isFoot() ? "foot" : "hand");
    String text = cursor.compiled().text();
    Span whole = cursor.compiled().span(line.spot());
    String added =
        LineEnds.of(text)
            + LineEnds.before(text, whole.start())
            + "add "
            + surface.name()
            + who
            + level(token, hit)
            + " at "
            + place.count()
            + inBar(place.bar());
    int end = LineEnds.end(text, whole.end());
    found.add(
        new QuickFix(
            title,
            List.of(
                new TextEdit(cursor.inFile(token.span()), "."),
                new TextEdit(new Span(end, end), added)),
            false));
  }

  private String level(SyntaxToken token, Beat.Hit hit) {
    int before = cursor.inFile(token.span()).start();
    boolean ghost =
        cursor.line() != null
            && cursor.line().statement() instanceof PartStatement.Lane lane
            && SyntaxNodes.all(lane, Beat.Ghosts.class).stream()
                .map(Beat.Ghosts::span)
                .map(cursor::inFile)
                .anyMatch(span -> span.start() <= before && before < span.end());
    return hit.accent() ? " accented" : ghost ? " ghosted" : "";
  }

  private static String inBar(@Nullable Integer bar) {
    return bar == null ? "" : " in bar " + bar;
  }
}
