package tabor.body;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;

/** Says of a finished section why each hand plays what it plays. */
public final class HandReasons {
  private HandReasons() {}

  /** Why a stroke is a hand's. */
  public enum Why {
    /** The source names the hand. */
    WRITTEN,
    /** Chosen where the line stands that left it open, and kept by a line below. */
    KEPT,
    KEEPS_TIME,
    AGAINST_TIME,
    CRASH,
    /** The hand lies on the drum. */
    HAND_LIES,
    /** Single strokes in turn. */
    IN_TURN,
    /** Time that is too quick for one hand. */
    SHARED_TIME,
    /** A stroke on its own, by the hand that leads. */
    LEADS,
    /** A stroke on its own, by the hand that was there. */
    STAYS,
    /** The hand that should have played it has something else to do. */
    OTHER_BUSY
  }

  /**
   * Strokes with one reason.
   *
   * @param why the reason
   * @param strokes in order of time: of {@link Why#IN_TURN} one row, of {@link Why#SHARED_TIME} all
   *     there are, else all of one hand on one surface; at least one
   */
  public record Phrase(Why why, List<Stroke> strokes) {
    /** Copies the list. */
    public Phrase {
      strokes = List.copyOf(strokes);
    }
  }

  /** What is told together: a row by its number, anything else by hand and surface. */
  private record Key(Why why, int row, Limb limb, String surface) {}

  /** The reasons of a section's hands, in the order in which they first come up. */
  public static List<Phrase> of(Groove groove) {
    List<Stroke> given = new ArrayList<>();
    List<Dealer.Open> open = new ArrayList<>();
    List<Stroke> hands = new ArrayList<>();
    for (Stroke stroke : groove.written()) {
      if (!stroke.limb().isHand() || !stroke.hasLimb()) {
        continue;
      }
      hands.add(stroke);
      if (stroke.open()) {
        open.add(new Dealer.Open(stroke, true, false, null));
      } else {
        given.add(stroke);
      }
    }
    Loop loop = Loop.of(groove.setting(), groove.bars(), groove.pickup(), given, open, true);
    List<LimbWish> wishes = Roles.of(loop).wishes();
    Map<Stroke, LimbWish> byStroke = new IdentityHashMap<>();
    for (Loop.Hit hit : loop.hits) {
      if (hit.isOpen()) {
        byStroke.put(open.get(hit.open()).stroke(), wishes.get(hit.number()));
      }
    }
    boolean mirrored = groove.setting().kit().leftHanded();
    return phrases(hands, byStroke, mirrored);
  }

  private static List<Phrase> phrases(
      List<Stroke> hands, Map<Stroke, LimbWish> wishes, boolean mirrored) {
    Map<Key, List<Stroke>> groups = new LinkedHashMap<>();
    int row = 0;
    boolean inRow = false;
    for (Stroke stroke : hands) {
      LimbWish wish = wishes.get(stroke);
      Why why = wish == null ? (stroke.dealt() ? Why.KEPT : Why.WRITTEN) : why(wish, stroke);
      boolean turns = why == Why.IN_TURN;
      row += turns && !inRow ? 1 : 0;
      inRow = turns || (inRow && wish == null);
      Stroke shown = mirrored ? stroke.by(stroke.limb().other(), stroke.dealt()) : stroke;
      String surface = shown.surface().name();
      Key key =
          turns ? new Key(why, row, Limb.RIGHT_HAND, "") : new Key(why, 0, shown.limb(), surface);
      if (why == Why.SHARED_TIME) {
        key = new Key(why, 0, Limb.RIGHT_HAND, "");
      }
      groups.computeIfAbsent(key, k -> new ArrayList<>()).add(shown);
    }
    List<Phrase> phrases = new ArrayList<>();
    groups.forEach((key, strokes) -> phrases.add(new Phrase(key.why(), strokes)));
    return phrases;
  }

  private static Why why(LimbWish wish, Stroke stroke) {
    if (wish.right() != stroke.limb().isRight()) {
      return wish.reason() == LimbWish.Reason.ALONE ? Why.STAYS : Why.OTHER_BUSY;
    }
    return switch (wish.reason()) {
      case KEEPS_TIME -> Why.KEEPS_TIME;
      case AGAINST_TIME -> Why.AGAINST_TIME;
      case CRASH -> Why.CRASH;
      case HAND_LIES -> Why.HAND_LIES;
      case ROW -> Why.IN_TURN;
      case SHARED_TIME -> Why.SHARED_TIME;
      case ALONE, PEDAL -> Why.LEADS;
    };
  }
}
