package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.resolve.LaneWalker.Placed;
import tabor.rhythm.CountNames;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.Beat;
import tabor.syntax.LimbRef;
import tabor.syntax.Subject;
import tabor.syntax.SurfaceRef;

/** Reads the letters of one part: who strikes, and what. */
final class LetterReader {
  /**
   * A stroke of a part of hands or feet that leaves open which of the two.
   *
   * @param stroke the stroke; limb and surface are not settled
   * @param hit the letter
   */
  record Either(Stroke stroke, Beat.Hit hit) {}

  private final SectionFrame frame;
  private final Problems problems;
  private final SectionDraft draft;
  private final Subject subject;
  private final Consumer<Placed> letters;
  private final List<Stroke> strokes = new ArrayList<>();
  private final List<Either> either = new ArrayList<>();

  /** Reads letters of a part whose subject the kit knows. */
  LetterReader(SectionFrame frame, Problems problems, SectionDraft draft, Subject subject) {
    this.frame = frame;
    this.problems = problems;
    this.draft = draft;
    this.subject = subject;
    this.letters = subject.match(new BySubject());
  }

  /** Strokes with a limb, and open ones that are dealt when the section ends. */
  List<Stroke> strokes() {
    return strokes;
  }

  /** Strokes that are dealt with their run of parts. */
  List<Either> either() {
    return either;
  }

  /** Reads one letter. */
  void read(Placed placed) {
    letters.accept(placed);
  }

  /** How letters are read, by what the part is called. */
  private final class BySubject implements Subject.Cases<Consumer<Placed>> {
    @Override
    public Consumer<Placed> limb(LimbRef limb) {
      return placed -> named(placed, limb.limb());
    }

    @Override
    public Consumer<Placed> hands(Span span) {
      return placed -> pair(placed, Limb.RIGHT_HAND);
    }

    @Override
    public Consumer<Placed> feet(Span span) {
      return placed -> pair(placed, Limb.RIGHT_FOOT);
    }

    @Override
    public Consumer<Placed> line(Span span) {
      return LetterReader.this::line;
    }

    @Override
    public Consumer<Placed> surface(SurfaceRef named) {
      Surface surface = frame.kit().surface(named.name());
      return surface == null ? placed -> {} : placed -> onSurface(placed, surface);
    }
  }

  private void pair(Placed placed, Limb right) {
    switch (placed.hit.letter()) {
      case 'r' -> byLimb(placed, right);
      case 'l' -> byLimb(placed, right.other());
      case 'b' -> {
        byLimb(placed, right);
        byLimb(placed, right.other());
      }
      case 'x' -> {
        Surface surface = draft.plays(right);
        if (surface != null) {
          either.add(new Either(stroke(placed, right, surface, false), placed.hit));
        }
      }
      default ->
          unknown(
              placed,
              "write r, l, b (both) or x (either) in the " + (right.isHand() ? "hands" : "feet"),
              null);
    }
  }

  private void line(Placed placed) {
    switch (placed.hit.letter()) {
      case 'r' -> byLimb(placed, Limb.RIGHT_HAND, true);
      case 'l' -> byLimb(placed, Limb.LEFT_HAND, true);
      case 'k' -> byLimb(placed, Limb.RIGHT_FOOT, true);
      case 'p' -> byLimb(placed, Limb.LEFT_FOOT, true);
      case 'b' -> {
        byLimb(placed, Limb.RIGHT_HAND, true);
        byLimb(placed, Limb.LEFT_HAND, true);
      }
      default ->
          unknown(placed, "in the line r and l are hands, k and p are feet, b is both hands", null);
    }
  }

  private void named(Placed placed, Limb limb) {
    char letter = placed.hit.letter();
    if (letter == 'x') {
      byLimb(placed, limb);
      return;
    }
    Surface surface = frame.kit().letter(letter);
    if (surface == null) {
      unknown(placed, lettersOf(limb), null);
    } else if (surface.isFoot() == limb.isHand()) {
      Spot spot = spot(placed);
      problems.incomplete();
      if (problems.isNew(spot)) {
        problems.add(
            SurfaceMessages.wrongLimb(spot, limb, surface)
                .in(new Diagnostic.Place(frame.name(), placed.bar, count(placed))));
      }
    } else {
      put(placed, stroke(placed, limb, surface, false));
    }
  }

  private String lettersOf(Limb limb) {
    StringBuilder text = new StringBuilder("the kit “" + frame.kit().name() + "” knows");
    frame
        .kit()
        .letters()
        .forEach(
            (letter, name) -> {
              Surface surface = frame.kit().surface(name);
              if (surface != null && surface.isFoot() != limb.isHand()) {
                text.append(' ').append(letter).append(" (").append(surface.words()).append("),");
              }
            });
    return text.append(" and x for what the ").append(limb.words()).append(" plays").toString();
  }

  private void onSurface(Placed placed, Surface surface) {
    Limb right = surface.isFoot() ? Limb.RIGHT_FOOT : Limb.RIGHT_HAND;
    switch (placed.hit.letter()) {
      case 'r' -> put(placed, stroke(placed, right, surface, false));
      case 'l' -> put(placed, stroke(placed, right.other(), surface, false));
      case 'b' -> {
        put(placed, stroke(placed, right, surface, false));
        put(placed, stroke(placed, right.other(), surface, false));
      }
      case 'x' -> put(placed, stroke(placed, right, surface, true));
      case 'o' -> {
        boolean opens = SignRules.opened(stroke(placed, right, surface, true), frame) != null;
        if (opens) {
          unknown(placed, "the open hi-hat is written x=", "x=");
        } else {
          unknown(placed, LIMBS, "x");
        }
      }
      default -> unknown(placed, LIMBS, null);
    }
  }

  private static final String LIMBS =
      "in the part of a surface the letters are limbs: r, l, b (both) or x (either)";

  private void byLimb(Placed placed, Limb limb) {
    byLimb(placed, limb, false);
  }

  private void byLimb(Placed placed, Limb limb, boolean inLine) {
    Surface surface = draft.plays(limb);
    if (surface != null) {
      put(placed, stroke(placed, limb, surface, false).inLine(inLine));
    }
  }

  private void put(Placed placed, Stroke stroke) {
    Stroke done = adorned(placed.hit, stroke);
    if (done != null) {
      strokes.add(done);
    }
  }

  private Stroke stroke(Placed placed, Limb limb, Surface surface, boolean open) {
    Beat.Hit hit = placed.hit;
    Level level = placed.ghost ? Level.GHOST : hit.accent() ? Level.ACCENT : Level.PLAIN;
    Ornaments ornaments =
        switch (hit.grace()) {
          case 0 -> Ornaments.NONE;
          case 1 -> Ornaments.NONE.with(Ornament.FLAM);
          case 2 -> Ornaments.NONE.with(Ornament.DRAG);
          default -> Ornaments.NONE.with(Ornament.RUFF);
        };
    return new Stroke(
        placed.bar,
        placed.at,
        placed.length,
        limb,
        surface,
        level,
        ornaments,
        placed.slot,
        spot(placed),
        false,
        open,
        false,
        null);
  }

  /** An open stroke of hands or feet by the limb that it was given; null if it cannot be. */
  @Nullable Stroke settled(Either one, Limb limb) {
    Surface surface = draft.plays(limb);
    Stroke stroke = one.stroke().by(limb, true);
    return adorned(one.hit(), surface == null ? stroke : SignRules.on(stroke, surface));
  }

  /** The stroke with what is written after its letter; null, and said so, where it cannot be. */
  private @Nullable Stroke adorned(Beat.Hit hit, Stroke stroke) {
    Stroke done = stroke;
    for (Beat.Suffix suffix : hit.suffixes()) {
      Stroke next = SignRules.with(done, suffix, frame);
      if (next == null) {
        problems.incomplete(Gaps.of(subject, frame.kit()));
        SurfaceMessages.Refusal refusal = SignRules.refusal(suffix);
        if (refusal != null && problems.isNew(stroke.spot())) {
          problems.add(
              refusal
                  .at(stroke.spot(), done.surface())
                  .in(
                      new Diagnostic.Place(
                          frame.name(),
                          stroke.bar(),
                          CountNames.of(stroke.slot(), frame.meters().of(stroke.bar()))
                              .toString())));
        }
        return null;
      }
      done = next;
    }
    return done;
  }

  private Spot spot(Placed placed) {
    return placed.line.spot(placed.hit.span());
  }

  private String count(Placed placed) {
    return CountNames.of(placed.slot, frame.meters().of(placed.bar)).toString();
  }

  private void unknown(Placed placed, String help, @Nullable String instead) {
    problems.incomplete(Gaps.of(subject, frame.kit()));
    Spot spot = spot(placed);
    if (!problems.isNew(spot)) {
      return;
    }
    UnreadWord word = subject instanceof Subject.OfLimb ? null : UnreadWord.around(spot);
    if (word != null) {
      if (problems.isNew(word.spot())) {
        Diagnostic.Place place = new Diagnostic.Place(frame.name(), placed.bar, count(placed));
        problems.add(word.told(subject, help).in(place));
      }
      return;
    }
    Diagnostic made =
        problems
            .make(
                Code.UNKNOWN_LETTER,
                spot,
                placed.bar,
                count(placed),
                "“" + placed.hit.letter() + "” is no letter of the part “" + subject.words() + "”")
            .help(help);
    problems.add(instead == null ? made : made.fix("write " + instead, spot, instead));
  }
}
