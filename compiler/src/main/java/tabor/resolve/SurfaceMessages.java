package tabor.resolve;

import java.util.Map;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.kit.Kit;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.pattern.Rudiments;
import tabor.pattern.Timelines;
import tabor.source.Spot;
import tabor.syntax.Edit;
import tabor.syntax.Line;
import tabor.syntax.Subject;
import tabor.syntax.SurfaceRef;
import tabor.syntax.TargetRef;

/** Says what cannot be played on a surface. */
final class SurfaceMessages {
  /** Words for places that stand where a part is expected; common practice in 4/4, no source. */
  private static final Map<String, String> PLACES =
      Map.of(
          "backbeats", "2 4",
          "downbeats", "every beat",
          "offbeats", "every &",
          "upbeats", "every &");

  private SurfaceMessages() {}

  /** Says that hands play no foot surface, and feet no hand surface. */
  static Diagnostic wrongLimb(Spot spot, Limb limb, Surface surface) {
    return Diagnostic.of(
            Code.WRONG_LIMB, spot, "the " + limb.words() + " cannot play the " + surface.words())
        .help(
            surface.isFoot()
                ? "the " + surface.words() + " is played by a foot"
                : "the " + surface.words() + " is played by a hand");
  }

  /**
   * Says that the kit has no surface of a name, and what it has, or that a pattern has the name.
   *
   * @param own true if a pattern of the file has it
   */
  static void unknown(Problems problems, Line line, SurfaceRef named, Kit kit, boolean own) {
    String name = named.name();
    boolean pattern = own || Rudiments.named(name).isPresent() || Timelines.named(name).isPresent();
    Spot spot = line.spot(named.span());
    Diagnostic plain =
        problems
            .make(Code.UNKNOWN_NAME, spot, null, null, "there is no surface “" + name + "”")
            .help(
                pattern
                    ? "it is a pattern, and is played in a note value: hands play "
                        + name
                        + " in sixteenths"
                    : "the kit “" + kit.name() + "” has " + String.join(" ", kit.surfaceNames()));
    boolean alone =
        line.statement() instanceof Edit.Plays plays
            && plays.who().words().equals("hands")
            && plays.span().end() == named.span().end();
    problems.add(
        !pattern
            ? Problems.unknown(plain, spot, SurfaceNames.near(name, kit))
            : alone
                ? plain.fix("write “" + name + " in sixteenths”", spot, name + " in sixteenths")
                : plain);
  }

  /** Says that a target is no limb and no surface of the kit, and what was probably meant. */
  static void unknownTarget(Problems problems, Line line, TargetRef target, Kit kit) {
    String places = PLACES.get(target.words());
    if (places != null
        && line.statement() instanceof Edit.Change change
        && change.targets().size() == 1
        && change.at().places() == null) {
      String all = "all at " + places;
      Spot spot = line.spot(target.span());
      String message = "“" + target.words() + "” are places, not whose strokes are meant";
      problems.add(
          problems
              .make(Code.UNKNOWN_NAME, spot, null, null, message)
              .help("write whose strokes first, then where: " + all)
              .fix("write “" + all + "”", spot, all));
      return;
    }
    problems.unknown(
        line,
        target.words(),
        target.span(),
        "surface or limb",
        SurfaceNames.nearTarget(target.words(), kit));
  }

  /** Says that a part is called by no surface of the kit, and how it could be. */
  static void unknownPart(Problems problems, Line line, Subject subject, Kit kit) {
    String word = subject.words();
    Spot spot = line.spot(subject.span());
    Diagnostic plain =
        problems
            .make(Code.UNKNOWN_NAME, spot, null, null, "there is no surface or limb “" + word + "”")
            .help("the kit “" + kit.name() + "” has " + String.join(" ", kit.surfaceNames()));
    problems.add(Problems.unknown(plain, spot, SurfaceNames.nearPart(word, kit)));
  }

  /** What {@code open}, {@code choke} or {@code rimshot} is refused by. */
  enum Refusal {
    OPEN,
    CHOKE,
    RIMSHOT;

    /** A diagnostic without its place in the music. */
    Diagnostic at(Spot spot, Surface surface) {
      String message =
          switch (this) {
            case OPEN -> "the " + surface.words() + " cannot be opened";
            case CHOKE -> "the " + surface.words() + " cannot be choked";
            case RIMSHOT -> "there is no rimshot on the " + surface.words();
          };
      String help =
          switch (this) {
            case OPEN -> "only the hi-hat opens";
            case CHOKE -> "only cymbals and the hi-hat under the stick are choked";
            case RIMSHOT -> "rimshots are for the snare and the toms";
          };
      return Diagnostic.of(Code.MISSING_SURFACE, spot, message).help(help);
    }
  }
}
