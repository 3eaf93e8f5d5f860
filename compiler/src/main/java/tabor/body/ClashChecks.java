package tabor.body;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Groove;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.kit.SurfaceFacts;
import tabor.lists.Lists;

/** What cannot be at one instant: looks at all strokes of one place of the bar together. */
record ClashChecks(Groove groove, Consumer<Finding> found) {
  /** Hands every clash of the section to {@code found}, in order of time. */
  static void each(Groove groove, Consumer<Finding> found) {
    ClashChecks checks = new ClashChecks(groove, found);
    List<Stroke> strokes = groove.strokes();
    int from = 0;
    while (from < strokes.size()) {
      Stroke first = strokes.get(from);
      int to = from + 1;
      while (to < strokes.size() && Stroke.areTogether(first, strokes.get(to))) {
        to++;
      }
      if (to - from > 1) {
        checks.instant(strokes.subList(from, to));
      }
      from = to;
    }
  }

  private void instant(List<Stroke> here) {
    pair(here, true);
    pair(here, false);
    hihat(here);
    for (Stroke stroke : here) {
      if (stroke.ornaments().graceNotes() > 0) {
        graceNotes(stroke, here);
      }
    }
    crossed(here);
  }

  /** One limb on two surfaces; with an open stroke that no limb of the pair was free for. */
  private void pair(List<Stroke> here, boolean hands) {
    int count = 0;
    for (Stroke stroke : here) {
      count += stroke.limb().isHand() == hands ? 1 : 0;
    }
    if (count < 2) {
      return;
    }
    List<Stroke> pair = Lists.filter(here, s -> s.limb().isHand() == hands);
    for (int i = 0; i < pair.size(); i++) {
      for (int j = i + 1; j < pair.size(); j++) {
        Stroke a = pair.get(i);
        Stroke b = pair.get(j);
        if (a.limb() == b.limb() && !a.surface().equals(b.surface())) {
          if (pair.size() > 2 && (a.dealt() || b.dealt())) {
            tooMany(pair, a.dealt() ? a : b, hands);
            return;
          }
          conflict(a, b, here);
        }
      }
    }
  }

  private void conflict(Stroke a, Stroke b, List<Stroke> here) {
    Limb other = a.limb().other();
    boolean free = !Lists.any(here, s -> s.limb() == other);
    found.accept(
        Finding.clash(
            Code.LIMB_CONFLICT,
            b,
            List.of(a, b),
            FindingWords.limb(a)
                + " cannot strike "
                + FindingWords.surface(a)
                + " and "
                + FindingWords.surface(b)
                + " at once at "
                + FindingWords.count(groove, b),
            free
                ? "the " + other.words() + " is free here: give it one of the two, or leave one out"
                : "leave one of the two out, or move it to another count"));
  }

  private void tooMany(List<Stroke> pair, Stroke open, boolean hands) {
    Set<String> surfaces = new LinkedHashSet<>();
    for (Stroke stroke : pair) {
      surfaces.add(FindingWords.surface(stroke));
    }
    found.accept(
        Finding.clash(
            hands ? Code.THREE_HANDS : Code.THREE_FEET,
            open,
            pair,
            FindingWords.and(List.copyOf(surfaces))
                + " together at "
                + FindingWords.count(groove, open)
                + " would take "
                + (pair.size() == 3 ? "three" : "more than two")
                + (hands ? " hands" : " feet"),
            "leave one of them out, or move it to another count"));
  }

  private void hihat(List<Stroke> here) {
    Limb hatFoot = groove.setting().kit().hihatFoot();
    @Nullable Stroke stick = null;
    @Nullable Stroke chick = null;
    @Nullable Stroke secondPedal = null;
    for (Stroke stroke : here) {
      Surface surface = stroke.surface();
      if (surface.sort() == Surface.Sort.STICK_HIHAT) {
        stick = stroke;
      } else if (surface.hihat() == SurfaceFacts.HiHat.CHICK) {
        chick = stroke;
      } else if (surface.sort() == Surface.Sort.KICK && stroke.limb() == hatFoot) {
        secondPedal = stroke;
      }
    }
    if (stick == null) {
      return;
    }
    boolean closed = stick.surface().hihat() == SurfaceFacts.HiHat.CLOSED;
    String count = FindingWords.count(groove, stick);
    if (chick != null && closed) {
      found.accept(
          Finding.clash(
                  Code.FOOT_ON_CLOSED_HIHAT,
                  chick,
                  List.of(stick, chick),
                  "the hi-hat is struck closed at " + count + " where the foot is to close it",
                  "a foot that is already down cannot chick: leave out the foot or the stick here")
              .once(chick.limb()));
    } else if (chick != null) {
      found.accept(
          Finding.clash(
                  Code.HIHAT_CONTRADICTION,
                  chick,
                  List.of(stick, chick),
                  FindingWords.surface(stick)
                      + " is struck at "
                      + count
                      + " where the foot closes it",
                  "move the foot to where the hi-hat is to close, or strike it closed")
              .once(chick.limb()));
    } else if (secondPedal != null && closed) {
      found.accept(
          Finding.clash(
                  Code.HIHAT_CONTRADICTION,
                  secondPedal,
                  List.of(stick, secondPedal),
                  "the hi-hat is struck closed at "
                      + count
                      + " while the foot that keeps it closed is on the kick pedal",
                  "strike it open here, or leave the kick to the other foot")
              .once(secondPedal.limb()));
    }
  }

  private void graceNotes(Stroke main, List<Stroke> here) {
    Limb other = main.limb().other();
    for (Stroke stroke : here) {
      if (stroke.limb() == other) {
        if (stroke.ornaments().graceNotes() > 0 && stroke.limb().compareTo(main.limb()) < 0) {
          return; // both are ornamented, as on b: said once
        }
        found.accept(
            Finding.clash(
                Code.NO_FREE_HAND,
                main,
                List.of(main, stroke),
                "the "
                    + name(main)
                    + " at "
                    + FindingWords.count(groove, main)
                    + " needs the "
                    + other.words()
                    + ", which strikes "
                    + FindingWords.surface(stroke)
                    + " there",
                "grace notes are made by the other "
                    + (other.isHand() ? "hand" : "foot")
                    + ": leave them out, or free it at this count"));
        return;
      }
    }
  }

  private static String name(Stroke main) {
    for (Ornament ornament : main.ornaments().list()) {
      if (ornament.graceNotes() > 0) {
        return ornament.word();
      }
    }
    return "grace note";
  }

  private void crossed(List<Stroke> here) {
    List<Stroke> hands = new ArrayList<>(2);
    for (Stroke stroke : here) {
      if (stroke.limb().isHand()) {
        hands.add(stroke);
      }
    }
    if (hands.size() != 2 || hands.get(0).limb() == hands.get(1).limb()) {
      return;
    }
    int rightAt = hands.get(0).limb() == Limb.RIGHT_HAND ? 0 : 1;
    Stroke right = hands.get(rightAt);
    Stroke left = hands.get(1 - rightAt);
    KitPlaces places = KitPlaces.of(groove.setting().kit());
    if (places.of(right.surface()).x() + KitPlaces.SIDE_BY_SIDE >= places.of(left.surface()).x()) {
      return;
    }
    Stroke other = groove.setting().kit().leftHanded() ? right : left;
    // The lead hand over the other on the snare, to hi-hat or crash, is how people sit.
    if (other.surface().sort() == Surface.Sort.SNARE) {
      return;
    }
    found.accept(
        Finding.clash(
            Code.CROSSED_ARMS,
            left,
            List.of(right, left),
            "the arms cross at "
                + FindingWords.count(groove, left)
                + ": the right hand on "
                + FindingWords.surface(right)
                + ", the left on "
                + FindingWords.surface(left),
            "the hands could change places here"));
  }
}
