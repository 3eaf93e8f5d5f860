package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.source.Spot;
import tabor.syntax.Beat;

/** Reads the letters of one part: who strikes, and what. */
final class Letters {
  /**
   * An {@code x} of the hands or the feet: the surface is what the chosen limb plays.
   *
   * @param stroke with the right limb for now
   * @param hit the letter
   */
  record Either(Stroke stroke, Beat.Hit hit) {}

  private final Work work;
  private final Subject subject;
  private final List<Stroke> given = new ArrayList<>();
  private final List<Either> either = new ArrayList<>();
  private final java.util.Set<Spot> reported = new java.util.HashSet<>();

  Letters(Work work, Subject subject) {
    this.work = work;
    this.subject = subject;
  }

  /** Strokes with a limb, and open ones of a surface. */
  List<Stroke> given() {
    return given;
  }

  /** Strokes of the hands or the feet that either of the two may take. */
  List<Either> either() {
    return either;
  }

  /** Reads one letter. */
  void read(LaneWalker.Placed placed) {
    char letter = placed.hit.letter();
    switch (subject.kind()) {
      case HANDS, FEET -> pair(placed, subject.kind() == Subject.Kind.HANDS);
      case LINE, ALL -> line(placed);
      case LIMB -> limb(placed, letter);
      case SURFACE -> surface(placed);
    }
  }

  private void pair(LaneWalker.Placed placed, boolean hands) {
    Limb right = hands ? Limb.RIGHT_HAND : Limb.RIGHT_FOOT;
    switch (placed.hit.letter()) {
      case 'r' -> byLimb(placed, right);
      case 'l' -> byLimb(placed, right.other());
      case 'b' -> {
        byLimb(placed, right);
        byLimb(placed, right.other());
      }
      case 'x' -> {
        Surface surface = work.plays(right);
        if (surface != null) {
          Stroke stroke = stroke(placed, right, surface);
          either.add(new Either(stroke, placed.hit));
        }
      }
      default ->
          unknown(
              placed,
              hands
                  ? "write r, l, b (both) or x (either) in the hands"
                  : "write r, l, b (both) or x (either) in the feet");
    }
  }

  private void line(LaneWalker.Placed placed) {
    switch (placed.hit.letter()) {
      case 'r' -> byLimb(placed, Limb.RIGHT_HAND);
      case 'l' -> byLimb(placed, Limb.LEFT_HAND);
      case 'k' -> byLimb(placed, Limb.RIGHT_FOOT);
      case 'p' -> byLimb(placed, Limb.LEFT_FOOT);
      case 'b' -> {
        byLimb(placed, Limb.RIGHT_HAND);
        byLimb(placed, Limb.LEFT_HAND);
      }
      default ->
          unknown(placed, "in the line r and l are hands, k and p are feet, b is both hands");
    }
  }

  private void limb(LaneWalker.Placed placed, char letter) {
    Limb limb = subject.limb();
    if (limb == null) {
      return;
    }
    if (letter == 'x') {
      byLimb(placed, limb);
      return;
    }
    Surface surface = work.kit().letter(letter);
    if (surface == null) {
      unknown(placed, lettersOf(limb));
      return;
    }
    if (surface.isFoot() == limb.isHand()) {
      Spot spot = placed.line.spot(placed.hit.span());
      work.partial = true;
      if (reported.add(spot)) {
        work.problems.add(wrongLimb(spot, limb, surface).in(place(placed)));
      }
      return;
    }
    adorn(placed, stroke(placed, limb, surface));
  }

  private String lettersOf(Limb limb) {
    StringBuilder text = new StringBuilder("the kit “" + work.kit().name() + "” knows");
    work.kit()
        .letters()
        .forEach(
            (letter, name) -> {
              Surface surface = work.kit().surface(name);
              if (surface != null && surface.isFoot() != limb.isHand()) {
                text.append(' ').append(letter).append(" (").append(surface.words()).append("),");
              }
            });
    return text.append(" and x for what the ").append(limb.words()).append(" plays").toString();
  }

  private void surface(LaneWalker.Placed placed) {
    Surface surface = subject.surface();
    if (surface == null) {
      return;
    }
    Limb right = surface.isFoot() ? Limb.RIGHT_FOOT : Limb.RIGHT_HAND;
    switch (placed.hit.letter()) {
      case 'r' -> adorn(placed, stroke(placed, right, surface));
      case 'l' -> adorn(placed, stroke(placed, right.other(), surface));
      case 'b' -> {
        adorn(placed, stroke(placed, right, surface));
        adorn(placed, stroke(placed, right.other(), surface));
      }
      case 'x' -> {
        Stroke stroke = adorned(placed.hit, stroke(placed, right, surface), placed);
        if (stroke != null) {
          given.add(stroke.opened());
        }
      }
      default ->
          unknown(
              placed,
              "in the part of a surface the letters are limbs: r, l, b (both) or x (either)");
    }
  }

  private void byLimb(LaneWalker.Placed placed, Limb limb) {
    Surface surface = work.plays(limb);
    if (surface != null) {
      adorn(placed, stroke(placed, limb, surface));
    }
  }

  private void adorn(LaneWalker.Placed placed, Stroke stroke) {
    Stroke done = adorned(placed.hit, stroke, placed);
    if (done != null) {
      given.add(done);
    }
  }

  private Stroke stroke(LaneWalker.Placed placed, Limb limb, Surface surface) {
    Beat.Hit hit = placed.hit;
    Level level = placed.ghost ? Level.GHOST : hit.accent() ? Level.ACCENT : Level.PLAIN;
    Ornaments ornaments = Ornaments.NONE;
    if (hit.small() > 0) {
      ornaments =
          ornaments.with(
              hit.small() == 1 ? Ornament.FLAM : hit.small() == 2 ? Ornament.DRAG : Ornament.RUFF);
    }
    return new Stroke(
        placed.bar,
        placed.at,
        placed.length,
        limb,
        surface,
        level,
        ornaments,
        placed.slot,
        placed.line.spot(hit.span()),
        false);
  }

  /** The stroke with what is written after its letter; null, and said so, where it cannot be. */
  @Nullable Stroke adorned(Beat.Hit hit, Stroke stroke, LaneWalker.@Nullable Placed placed) {
    Stroke done = stroke;
    for (Beat.Suffix suffix : hit.suffixes()) {
      Stroke next =
          switch (suffix) {
            case DIDDLE -> done.with(done.ornaments().with(Ornament.DIDDLE));
            case OPEN_ROLL -> done.with(done.ornaments().with(Ornament.OPEN_ROLL));
            case BUZZ -> done.with(done.ornaments().with(Ornament.BUZZ));
            case OPEN -> opened(done, work.kit());
            case CHOKE -> choked(done);
            case RIMSHOT -> rimshot(done);
          };
      if (next == null) {
        refuse(suffix, done);
        work.partial = true;
        return null;
      }
      done = next;
    }
    return done;
  }

  private void refuse(Beat.Suffix suffix, Stroke stroke) {
    if (reported.add(stroke.spot())) {
      work.problems.add(cannotTake(work, stroke.spot(), stroke, ornamentWords(suffix)));
    }
  }

  private static String ornamentWords(Beat.Suffix suffix) {
    return switch (suffix) {
      case OPEN -> "open";
      case CHOKE -> "choke";
      case RIMSHOT -> "rimshot";
      default -> suffix.name().toLowerCase(Locale.ROOT);
    };
  }

  /** Says that a surface cannot be opened, choked or struck as a rimshot. */
  static Diagnostic cannotTake(Work work, Spot spot, Stroke stroke, String what) {
    String message =
        switch (what) {
          case "open" -> "the " + stroke.surface().words() + " cannot be opened";
          case "choke" -> "the " + stroke.surface().words() + " cannot be choked";
          default -> "there is no rimshot on the " + stroke.surface().words();
        };
    String help =
        switch (what) {
          case "open" -> "only the hi-hat opens";
          case "choke" -> "only cymbals and the hi-hat under the stick are choked";
          default -> "rimshots are for the snare and the toms";
        };
    return work.problems
        .make(
            Code.MISSING_SURFACE,
            spot,
            stroke.bar(),
            tabor.rhythm.CountNames.of(stroke.slot(), work.meter()).toString(),
            message)
        .help(help);
  }

  /** The stroke on the open hi-hat, or the splashing one; null on other surfaces. */
  static @Nullable Stroke opened(Stroke stroke, tabor.kit.Kit kit) {
    Surface.Sort sort = stroke.surface().sort();
    if (sort != Surface.Sort.STICK_HIHAT && sort != Surface.Sort.FOOT_HIHAT) {
      return null;
    }
    Surface other = kit.surface(sort == Surface.Sort.STICK_HIHAT ? "hihat.open" : "hihat.splash");
    return other == null ? null : Work.on(stroke, other);
  }

  /** The stroke choked; null where that cannot be. */
  static @Nullable Stroke choked(Stroke stroke) {
    return stroke.surface().canChoke()
        ? stroke.with(stroke.ornaments().with(Ornament.CHOKE))
        : null;
  }

  /** The stroke as a rimshot; null where that cannot be. */
  static @Nullable Stroke rimshot(Stroke stroke) {
    return stroke.surface().canRimshot()
        ? stroke.with(stroke.ornaments().with(Ornament.RIMSHOT))
        : null;
  }

  private void unknown(LaneWalker.Placed placed, String help) {
    work.partial = true;
    Spot spot = placed.line.spot(placed.hit.span());
    if (!reported.add(spot)) {
      return;
    }
    work.problems.add(
        work.problems
            .make(
                Code.UNKNOWN_LETTER,
                spot,
                placed.bar,
                tabor.rhythm.CountNames.of(placed.slot, work.meter()).toString(),
                "“" + placed.hit.letter() + "” means nothing in this part")
            .help(help));
  }

  private Diagnostic.Place place(LaneWalker.Placed placed) {
    return new Diagnostic.Place(
        work.name, placed.bar, tabor.rhythm.CountNames.of(placed.slot, work.meter()).toString());
  }

  /** Says that hands play no foot surface, and feet no hand surface. */
  static Diagnostic wrongLimb(Spot spot, Limb limb, Surface surface) {
    return Diagnostic.of(
            Code.WRONG_LIMB, spot, "the " + limb.words() + " cannot play the " + surface.words())
        .help(
            surface.isFoot()
                ? "the " + surface.words() + " is played by a foot"
                : "the " + surface.words() + " is played by a hand");
  }
}
