package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tabor.body.Fastest;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.Beat;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.SettingStatement;
import tabor.syntax.Subject;

/**
 * Fixes of what a limb has no time for: the other limb of the pair takes strokes of the line where
 * it is free, or the section goes slower.
 */
record PaceFixes(Cursor cursor, Diagnostic diagnostic, List<QuickFix> found) {
  void find() {
    Groove groove = cursor.groove().orElse(null);
    if (groove != null) {
      if (cursor.line() != null && cursor.line().statement() instanceof PartStatement.Lane lane) {
        strokeOf(groove, diagnostic.spot())
            .ifPresent(stroke -> share(groove, cursor.line(), lane, stroke));
      }
      slower(groove);
    }
  }

  private static Optional<Stroke> strokeOf(Groove groove, Spot spot) {
    return groove.written().stream().filter(stroke -> stroke.spot().equals(spot)).findFirst();
  }

  /** Hands the strokes that come too soon to the other limb, unless that one has strokes there. */
  private void share(Groove groove, Line line, PartStatement.Lane lane, Stroke late) {
    Limb other = late.limb().other();
    boolean all = diagnostic.code() == Code.FAR_REACH;
    List<Span> given = all ? onSurface(groove, line, late) : everyOther(groove, line, late);
    boolean free =
        groove.written().stream()
            .filter(stroke -> given.contains(stroke.spot().span()) && isOf(line, stroke))
            .noneMatch(stroke -> Simultaneous.isBusy(groove, other, stroke));
    if (given.isEmpty() || !free) {
      return;
    }
    String what = all ? late.surface().words() : "every other stroke";
    String title = "Give " + (all ? "the " : "") + what + " to the " + other.words();
    Optional<List<TextEdit>> edits =
        lane.subject() instanceof Subject.OfLimb
            ? ownPart(groove, line, lane, given, other)
            : letters(line, given);
    edits.ifPresent(changes -> found.add(new QuickFix(title, changes, false)));
  }

  private static boolean isOf(Line line, Stroke stroke) {
    return stroke.spot().passage() == line.passage();
  }

  /** The limb's strokes on the surface that it cannot get to in time, as the line writes them. */
  private static List<Span> onSurface(Groove groove, Line line, Stroke late) {
    return spans(
        line, ofLimb(groove, late).stream().filter(s -> s.surface().equals(late.surface())));
  }

  private static List<Span> spans(Line line, Stream<Stroke> strokes) {
    Span whole = line.spot().span();
    return strokes
        .filter(stroke -> isOf(line, stroke))
        .map(stroke -> stroke.spot().span())
        .filter(whole::holds)
        .distinct()
        .toList();
  }

  private static List<Stroke> ofLimb(Groove groove, Stroke like) {
    return groove.written().stream()
        .filter(stroke -> stroke.limb() == like.limb())
        .sorted(Stroke.ORDER)
        .toList();
  }

  /** The second, fourth … stroke of every run as dense as the one that is told. */
  private List<Span> everyOther(Groove groove, Line line, Stroke late) {
    List<Stroke> strokes = ofLimb(groove, late);
    int told = strokes.indexOf(late);
    if (told < 1) {
      return List.of();
    }
    Time dense = gap(groove, strokes.get(told - 1), late);
    List<Stroke> given = new ArrayList<>();
    boolean before = false;
    for (int i = 1; i < strokes.size(); i++) {
      boolean close = gap(groove, strokes.get(i - 1), strokes.get(i)).compareTo(dense) <= 0;
      before = close && !before;
      if (before) {
        given.add(strokes.get(i));
      }
    }
    List<Span> spans = spans(line, given.stream());
    // A run that goes on in another line would be half shared.
    return spans.size() == given.stream().map(Stroke::spot).distinct().count() ? spans : List.of();
  }

  private static Time gap(Groove groove, Stroke from, Stroke to) {
    Time gap = to.at().minus(from.at());
    for (int bar = from.bar(); bar < to.bar(); bar++) {
      gap = gap.plus(groove.meter(bar).bar());
    }
    return gap;
  }

  /** In parts whose letters are limbs: the other letter. */
  private Optional<List<TextEdit>> letters(Line line, List<Span> given) {
    List<TextEdit> edits = new ArrayList<>();
    for (SyntaxToken token : SyntaxTokens.of(line)) {
      if (token.hit() != null && given.contains(line.spot(token.span()).span())) {
        Character other = LimbFixes.OTHER.get(token.hit().letter());
        if (other == null) {
          return Optional.empty(); // the limb is dealt: it was the best that there is
        }
        String text = token.hit().accent() ? other.toString().toUpperCase(Locale.ROOT) : "" + other;
        edits.add(new TextEdit(cursor.inFile(token.letterSpan(line)), text));
      }
    }
    return edits.size() == given.size() ? Optional.of(edits) : Optional.empty();
  }

  /** In a part of one limb: dots there, and the strokes in a part of the other limb below it. */
  private Optional<List<TextEdit>> ownPart(
      Groove groove, Line line, PartStatement.Lane lane, List<Span> given, Limb other) {
    boolean taken = groove.written().stream().anyMatch(stroke -> stroke.limb() == other);
    boolean soft = !SyntaxNodes.all(lane, Beat.Ghosts.class).isEmpty();
    if (taken || soft) {
      return Optional.empty();
    }
    String text = line.spot().text();
    StringBuilder kept = new StringBuilder();
    StringBuilder moved = new StringBuilder(other.isHand() ? side(other) : other.words());
    int colon = text.indexOf(':');
    moved.append(" ".repeat(Math.max(1, colon - moved.length())));
    int at = 0;
    int copied = colon;
    int before = lane.span().start();
    for (SyntaxToken token : SyntaxTokens.of(line)) {
      if (token.hit() != null) {
        Span span = token.span().shift(-before);
        boolean goes = given.contains(line.spot(token.span()).span());
        kept.append(text, at, span.start()).append(goes ? "." : span.in(text));
        moved.append(text, copied, span.start()).append(goes ? span.in(text) : ".");
        at = span.end();
        copied = at;
      }
    }
    kept.append(text.substring(at));
    moved.append(text.substring(copied));
    Span whole = cursor.compiled().span(line.spot());
    String start = LineEnds.before(cursor.compiled().text(), whole.start());
    int end = LineEnds.end(cursor.compiled().text(), whole.end());
    String below = LineEnds.of(cursor.compiled().text()) + start + moved.toString().stripTrailing();
    return Optional.of(
        List.of(new TextEdit(whole, kept.toString()), new TextEdit(new Span(end, end), below)));
  }

  private static String side(Limb limb) {
    return limb.isRight() ? "right" : "left";
  }

  /** The tempo at which nothing in the section is too fast, if the section is the one to slow. */
  private void slower(Groove groove) {
    Fastest.Bound bound = Fastest.of(groove).extreme();
    if (bound == null
        || bound.tempo() < 1
        || !Time.of(bound.tempo()).before(groove.setting().tempo().perMinute())) {
      return; // a chart plays it faster than it is written
    }
    String title = "Slow this section down to tempo " + bound.tempo();
    Line own = null;
    for (Line line : cursor.section().lines()) {
      if (line.statement() instanceof SettingStatement.TempoSetting) {
        own = line;
      }
    }
    found.add(
        own == null
            ? QuickFix.of(title, below(cursor.section().heading()), newLine(groove, bound))
            : QuickFix.of(title, speed(own), Long.toString(bound.tempo())));
  }

  private Span speed(Line line) {
    SettingStatement.TempoSetting setting = (SettingStatement.TempoSetting) line.statement();
    return cursor.compiled().span(line.spot(setting.tempo().perMinute().span()));
  }

  private Span below(@Nullable Line heading) {
    int end =
        heading == null
            ? cursor.start()
            : LineEnds.end(cursor.compiled().text(), cursor.compiled().span(heading.spot()).end());
    return new Span(end, end);
  }

  private String newLine(Groove groove, Fastest.Bound bound) {
    Line first = cursor.section().lines().get(0);
    String indent =
        LineEnds.before(cursor.compiled().text(), cursor.compiled().span(first.spot()).start());
    Time quarter = Time.of(1, 4);
    boolean plain =
        groove.setting().tempo().beat().equals(quarter) && groove.meter().beat(0).equals(quarter);
    String unit = plain ? "" : unit(groove);
    return LineEnds.of(cursor.compiled().text()) + indent + "tempo " + unit + bound.tempo();
  }

  /** What the header's tempo counts, so that the same is counted here. */
  private String unit(Groove groove) {
    return groove.setting().tempo().beatWords().replace(' ', '-') + " = ";
  }
}
