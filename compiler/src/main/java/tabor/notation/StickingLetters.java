package tabor.notation;

import java.util.Collections;
import java.util.HashSet;
import java.util.Set;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.lists.Lists;
import tabor.rhythm.Time;

/** Which letters stand under the notes for those who strike them: common practice, but for both. */
public final class StickingLetters {
  /** Both hands, or both feet, at once: our own, no agreed letter. */
  public static final String BOTH = "B";

  private StickingLetters() {}

  /** True if every foot plays the pedal that it plays on most kits: then feet have no letters. */
  static boolean feetAreUsual(Groove groove) {
    return Lists.all(groove.strokes(), stroke -> isUsual(groove, stroke));
  }

  private static boolean isUsual(Groove groove, Stroke stroke) {
    if (stroke.limb().isHand()) {
      return true;
    }
    boolean right = stroke.limb().isRight() != groove.setting().kit().leftHanded();
    return switch (stroke.surface().sort()) {
      case KICK -> right;
      case FOOT_HIHAT -> !right;
      case SNARE, TOM, CYMBAL, STICK_HIHAT, BELL, OWN -> true;
    };
  }

  /** True if {@link #BOTH} stands somewhere under the notes of a section that shows letters. */
  public static boolean sayBoth(Groove groove) {
    return areAtOnce(groove, true) || (!feetAreUsual(groove) && areAtOnce(groove, false));
  }

  private static boolean areAtOnce(Groove groove, boolean hands) {
    Set<Time> left = new HashSet<>();
    Set<Time> right = new HashSet<>();
    for (Stroke stroke : groove.strokes()) {
      if (stroke.limb().isHand() == hands) {
        (stroke.limb().isRight() ? right : left).add(groove.position(stroke));
      }
    }
    return !Collections.disjoint(left, right);
  }
}
