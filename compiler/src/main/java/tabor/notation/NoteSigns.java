package tabor.notation;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.groove.CountLabels;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.kit.SurfaceFacts;
import tabor.lists.Lists;
import tabor.notation.Note.Hihat;
import tabor.rhythm.Meter;
import tabor.rhythm.Slot;

/** What is written at the strokes of a section beside their time. */
final class NoteSigns {
  private final Groove groove;
  private final Snap snap;
  private final CountLabels labels;
  private final Set<Stroke> changed;
  private final IdentityHashMap<Stroke, Hihat> hihats = new IdentityHashMap<>();
  private final boolean usualFeet;
  private final RollWriting rolls;
  private final Voicing voicing;

  /**
   * Signs of a section.
   *
   * @param changed the strokes to mark as changed
   * @param rolls how its measured rolls are written
   * @param voicing which strokes are one voice over the whole body
   */
  NoteSigns(Groove groove, Set<Stroke> changed, RollWriting rolls, Voicing voicing) {
    this.groove = groove;
    this.snap = Snap.of(groove);
    this.labels = CountLabels.of(groove);
    this.changed = changed;
    this.rolls = rolls;
    this.voicing = voicing;
    this.usualFeet = StickingLetters.feetAreUsual(groove);
    readHihat();
  }

  /**
   * A closed stroke is marked where the last one was not closed and no foot has closed it since.
   */
  private void readHihat() {
    boolean open = false;
    List<Stroke> strokes = groove.strokes();
    for (int i = 0; i < strokes.size(); ) {
      int next = i;
      boolean foot = false;
      while (next < strokes.size() && Stroke.areTogether(strokes.get(i), strokes.get(next))) {
        foot |= strokes.get(next).surface().hihat() == SurfaceFacts.HiHat.CHICK;
        next++;
      }
      open &= !foot;
      for (Stroke stroke : strokes.subList(i, next)) {
        Hihat sign = hihat(stroke.surface(), open);
        hihats.put(stroke, sign);
        if (stroke.surface().sort() == Surface.Sort.STICK_HIHAT) {
          open = sign == Hihat.OPEN || sign == Hihat.HALF;
        }
      }
      i = next;
    }
  }

  private static Hihat hihat(Surface surface, boolean open) {
    return switch (surface.hihat()) {
      case OPEN, SPLASH -> Hihat.OPEN;
      case HALF -> Hihat.HALF;
      case CLOSED -> open ? Hihat.CLOSED : Hihat.NONE;
      case CHICK, NONE -> Hihat.NONE;
    };
  }

  /** The note heads of an event, from the lowest up. */
  List<Note> notes(Draft draft) {
    Map<String, List<Stroke>> bySurface = new LinkedHashMap<>();
    for (List<Stroke> some : List.of(draft.struck(), draft.held())) {
      for (Stroke stroke : some) {
        bySurface.computeIfAbsent(stroke.surface().name(), none -> new ArrayList<>()).add(stroke);
      }
    }
    List<Note> notes = new ArrayList<>();
    for (List<Stroke> strokes : bySurface.values()) {
      notes.add(note(draft, strokes));
    }
    if (notes.size() > 1) {
      notes.sort(NoteSigns::fromBelow);
    }
    return notes;
  }

  private static int fromBelow(Note a, Note b) {
    int byPlace = Integer.compare(a.place().halfSpaces(), b.place().halfSpaces());
    return byPlace != 0 ? byPlace : a.surface().name().compareTo(b.surface().name());
  }

  private Note note(Draft draft, List<Stroke> strokes) {
    Stroke first = strokes.get(0);
    boolean held = draft.held().contains(first);
    boolean ghost = !held;
    boolean accent = false;
    boolean onward = false;
    boolean change = false;
    int grace = 0;
    int slashes = 0;
    for (Stroke stroke : strokes) {
      ghost &= stroke.level() == Level.GHOST;
      accent |= stroke.level() == Level.ACCENT;
      grace = Math.max(grace, stroke.ornaments().graceNotes());
      slashes = Math.max(slashes, rolls.slashes(stroke, draft));
      onward |= draft.onward().contains(stroke);
      change |= changed.contains(rolls.origin(stroke));
    }
    return new Note(
        strokes,
        ghost,
        !held && accent,
        held ? 0 : grace,
        slashes,
        has(strokes, Ornament.BUZZ),
        !held && has(strokes, Ornament.CHOKE),
        !held && has(strokes, Ornament.RIMSHOT),
        held ? Hihat.NONE : hihats.getOrDefault(rolls.origin(first), Hihat.NONE),
        held,
        onward,
        change);
  }

  private static boolean has(List<Stroke> strokes, Ornament ornament) {
    for (Stroke stroke : strokes) {
      if (stroke.ornaments().has(ornament)) {
        return true;
      }
    }
    return false;
  }

  /** How the place is counted: the number of a beat, a syllable, or nothing. */
  String count(Draft draft) {
    for (Stroke stroke : draft.struck()) {
      Slot slot = snap.slot(stroke);
      Meter meter = groove.meter(stroke.bar());
      if (slot.division().isInside(meter)) {
        String label = labels.above(slot, meter);
        if (!label.isEmpty()) {
          return label;
        }
      }
    }
    return "";
  }

  /** Which limb strikes, if that needs saying. In a line the feet have their letters in it. */
  String sticking(Draft draft) {
    List<Limb> said = limbs(draft.struck(), true);
    if (said.isEmpty() && Lists.any(draft.struck(), voicing::isRow)) {
      return pedal(draft.struck());
    }
    if (said.isEmpty() && !usualFeet) {
      said = limbs(draft.struck(), false);
    }
    return said.isEmpty() ? "" : said.size() > 1 ? StickingLetters.BOTH : said.get(0).letter();
  }

  private static List<Limb> limbs(List<Stroke> struck, boolean hands) {
    List<Limb> limbs = new ArrayList<>();
    for (Stroke stroke : struck) {
      if (stroke.limb().isHand() == hands && !limbs.contains(stroke.limb())) {
        limbs.add(stroke.limb());
      }
    }
    return limbs;
  }

  /** The letters that a line has for the feet. */
  private String pedal(List<Stroke> struck) {
    boolean mirrored = groove.setting().kit().leftHanded();
    return Lists.any(struck, stroke -> stroke.limb().isRight() != mirrored) ? "K" : "P";
  }
}
