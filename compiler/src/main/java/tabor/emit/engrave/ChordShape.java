package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tabor.notation.Event;
import tabor.notation.Note;

/**
 * A chord of one voice, measured: heads, stem and small notes around its column.
 *
 * @param chord what it shows
 * @param heads its heads, lowest first; x from the column, y on the staff
 * @param stemX the middle of its stem, from the column
 * @param stemStart where its stem leaves the heads
 * @param near the head nearest the stem's end
 * @param far the head farthest from it
 * @param dots the middles of its augmentation dots
 * @param graces left edges of its small notes, first to last, from the column
 * @param left how far it reaches to the left of the column, as a coordinate (0 or less)
 * @param right how far it reaches to the right, flags included
 */
record ChordShape(
    Event.Chord chord,
    List<Head> heads,
    double stemX,
    double stemStart,
    double near,
    double far,
    List<Dot> dots,
    List<Double> graces,
    double left,
    double right) {
  /** A head with its left edge at x and its middle at y. */
  record Head(Note note, Sign sign, double x, double y) {
    double right() {
      return x + sign.box().width();
    }

    double middle() {
      return x + sign.box().width() / 2;
    }
  }

  /** The middle of an augmentation dot. */
  record Dot(double x, double y) {}

  static final double PAREN = Sign.of("noteheadParenthesisLeft").box().width();
  static final double PAREN_GAP = 0.1;

  private static final double PAREN_HEIGHT = Sign.of("noteheadParenthesisLeft").box().height();

  /** How far the patch behind a changed head reaches beyond it. */
  static final double CHANGED_ROOM = 0.28;

  private static final double FLAG_WIDTH = 1.06;
  private static final double GRACE_STEP = 1.05;

  boolean up() {
    return chord.stemUp();
  }

  boolean hasFlags() {
    return chord.written().type().flags() > 0 && chord.beams().isEmpty();
  }

  /** Measures a chord whose heads stand {@code shift} to the right of the column. */
  static ChordShape of(Event.Chord chord, double shift) {
    boolean up = chord.stemUp();
    List<Note> notes = new ArrayList<>(chord.notes());
    notes.sort((a, b) -> Integer.compare(a.place().halfSpaces(), b.place().halfSpaces()));
    int count = notes.size();
    Head[] heads = new Head[count];
    boolean besideBefore = false;
    double stemEdge = up ? Rule.HEAD : 0;
    for (int k = 0; k < count; k++) {
      int i = up ? k : count - 1 - k;
      Note note = notes.get(i);
      Sign sign = Heads.of(note.head(), chord.written().type());
      double width = sign.box().width();
      boolean beside = false;
      double room = ghostRoom(note);
      if (k > 0) {
        int before = up ? i - 1 : i + 1;
        int apart = Math.abs(halfSpaces(note) - halfSpaces(notes.get(before)));
        // Neighbours on the staff do not fit on the same side of the stem.
        beside = apart <= 1 && !besideBefore;
        room += ghostRoom(notes.get(before));
      }
      besideBefore = beside;
      double x;
      if (up) {
        x = beside ? stemEdge - Rule.STEM / 2 + room : stemEdge - width;
      } else {
        x = beside ? stemEdge + Rule.STEM / 2 - width - room : stemEdge;
      }
      heads[i] = new Head(note, sign, x + shift, Rule.y(halfSpaces(note)));
    }
    return measure(chord, List.of(heads), shift);
  }

  private static double ghostRoom(Note note) {
    return note.ghost() ? PAREN + PAREN_GAP : 0;
  }

  private static ChordShape measure(Event.Chord chord, List<Head> heads, double shift) {
    boolean up = chord.stemUp();
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    boolean accent = false;
    for (Head head : heads) {
      accent |= head.note().accent();
      double around = head.note().ghost() ? PAREN + PAREN_GAP : 0;
      if (head.note().rimshot()) {
        around = Math.max(around, 0.34);
      }
      if (head.note().changed()) {
        around = Math.max(around, CHANGED_ROOM);
      }
      double ledger = isOutside(head) ? Rule.LEDGER_REACH : 0;
      around = Math.max(around, ledger);
      left = Math.min(left, head.x() - around);
      right = Math.max(right, head.right() + around);
    }
    Head low = heads.get(0);
    Head high = heads.get(heads.size() - 1);
    Head far = up ? low : high;
    double stemX = shift + (up ? Rule.HEAD - Rule.STEM / 2 : Rule.STEM / 2);
    double start = far.y() - attachment(far.sign(), up);
    List<Dot> dots = chord.written().dots() > 0 ? dots(heads, right) : List.of();
    for (Dot dot : dots) {
      right = Math.max(right, dot.x() + 0.21);
    }
    if (chord.written().type().flags() > 0 && chord.beams().isEmpty()) {
      right = Math.max(right, stemX + FLAG_WIDTH);
    }
    if (accent) {
      left = Math.min(left, shift + Rule.HEAD / 2 - 0.72);
      right = Math.max(right, shift + Rule.HEAD / 2 + 0.72);
    }
    List<Double> graces = new ArrayList<>();
    int small = chord.graceNotes();
    if (small > 0) {
      double last = left - (small == 1 ? 0.55 : 0.4) - Rule.HEAD * Rule.SMALL;
      for (int i = 0; i < small; i++) {
        graces.add(last - GRACE_STEP * (small - 1 - i));
      }
      left = graces.get(0) - 0.25;
    }
    return new ChordShape(
        chord,
        heads,
        stemX,
        start,
        up ? high.y() : low.y(),
        far.y(),
        dots,
        List.copyOf(graces),
        left,
        right);
  }

  /** How high above a head's middle the stem is joined. */
  private static double attachment(Sign sign, boolean up) {
    String name = up ? "stemUpSE" : "stemDownNW";
    return sign.anchors().containsKey(name) ? sign.anchor(name).y() : 0;
  }

  private static boolean isOutside(Head head) {
    return head.y() <= -1 || head.y() >= 5;
  }

  private static int halfSpaces(Note note) {
    return note.place().halfSpaces();
  }

  private static List<Dot> dots(List<Head> heads, double right) {
    List<Dot> dots = new ArrayList<>();
    Set<Double> taken = new HashSet<>();
    for (int i = heads.size() - 1; i >= 0; i--) {
      double y = heads.get(i).y();
      // A dot stands in a space: beside a line it moves up, or down where that space is taken.
      double space = isLine(y) ? y - 0.5 : y;
      if (!taken.add(space)) {
        space = isLine(y) ? y + 0.5 : y + 1;
        if (!taken.add(space)) {
          continue;
        }
      }
      dots.add(new Dot(right + 0.45, space));
    }
    return dots;
  }

  private static boolean isLine(double y) {
    return Math.floorMod(Math.round(y * 2), 2L) == 0;
  }

  /**
   * The size of the parentheses around a ghost stroke: where another stands close above or below,
   * as quiet kick and quiet pedal do, each gets just its own room.
   */
  double parenthesis(Head head) {
    double nearest = Double.MAX_VALUE;
    for (Head other : heads()) {
      if (other != head && other.note().ghost()) {
        nearest = Math.min(nearest, Math.abs(other.y() - head.y()));
      }
    }
    return Math.max(0.4, Math.min(1, nearest * 0.98 / PAREN_HEIGHT));
  }
}
