package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tabor.groove.Stroke;
import tabor.lists.Lists;
import tabor.notation.Bar;
import tabor.notation.Note;
import tabor.notation.Written;

/**
 * Draws the heads of a voice with what stands at them: parentheses, dots, ledger lines.
 *
 * @param changes heads that a step changed are marked
 */
record HeadPainter(Canvas canvas, boolean changes) {
  /** The heads of a chord whose column stands at {@code x}. */
  void paint(Bar bar, ChordShape chord, double x) {
    ledgers(chord, x);
    for (ChordShape.Head head : chord.heads()) {
      canvas.marks.add(head(bar, chord, head, x));
    }
    if (chord.dots().isEmpty()) {
      return;
    }
    List<Mark> dots = new ArrayList<>();
    Sign dot = Sign.of("augmentationDot");
    for (ChordShape.Dot at : chord.dots()) {
      dots.add(canvas.sign(dot, x + at.x() - dot.box().width() / 2, at.y()));
    }
    canvas.marks.add(Mark.Group.of("dots", dots));
  }

  private Mark head(Bar bar, ChordShape chord, ChordShape.Head head, double x) {
    Note note = head.note();
    List<Mark> marks = new ArrayList<>();
    double left = x + head.x();
    double right = x + head.right();
    double y = head.y();
    Box box = head.sign().boxAt(left, y, 1);
    if (note.ghost()) {
      double reach = ChordShape.PAREN + ChordShape.PAREN_GAP;
      box = new Box(left - reach, y - 0.74, right + reach, y + 0.74);
    }
    boolean changed = changes && note.changed();
    if (changed) {
      // A tint behind the head; the bar outside the notes shows where a copier swallows it.
      Box patch = box.grown(ChordShape.CHANGED_ROOM - 0.06);
      marks.add(new Mark.Ink(Contour.rounded(canvas.take(patch), 0.45, 0), 0.2));
    }
    marks.add(canvas.sign(head.sign(), left, y));
    if (chord.chord().written().type() == Written.Type.BREVE) {
      marks.add(canvas.rule(left - 0.2, y - 0.65, left - 0.2, y + 0.65, 0.16));
      marks.add(canvas.rule(right + 0.2, y - 0.65, right + 0.2, y + 0.65, 0.16));
    }
    if (note.ghost()) {
      Sign open = Sign.of("noteheadParenthesisLeft");
      Sign close = Sign.of("noteheadParenthesisRight");
      double scale = chord.parenthesis(head);
      double gap = ChordShape.PAREN_GAP + ChordShape.PAREN * scale;
      marks.add(canvas.sign(open, left - gap, y, scale));
      marks.add(canvas.sign(close, right + ChordShape.PAREN_GAP, y, scale));
    }
    if (note.rimshot()) {
      Sign slash = Sign.of("rimShotSlash");
      Mark drawn = canvas.sign(slash, x + head.middle() - Rule.HEAD / 2, y);
      marks.add(Mark.Group.of("rimshot", List.of(drawn)));
    }
    return new Mark.Group(classes(note, changed), facts(bar, chord, note), marks);
  }

  private static List<String> classes(Note note, boolean changed) {
    List<String> classes = new ArrayList<>();
    classes.add(note.tieIn() ? "held" : "stroke");
    for (Stroke stroke : note.strokes()) {
      classes.add("limb-" + stroke.limb().id());
    }
    classes.add("surface-" + note.surface().name().replace('.', '-'));
    classes.add("level-" + note.strokes().get(0).level().word());
    if (changed) {
      classes.add("changed");
    }
    return classes;
  }

  private static Map<String, String> facts(Bar bar, ChordShape chord, Note note) {
    Map<String, String> facts = new LinkedHashMap<>();
    facts.put("bar", Integer.toString(bar.number()));
    facts.put("at", chord.chord().start().toString());
    StringBuilder limbs = new StringBuilder();
    for (Stroke stroke : note.strokes()) {
      limbs.append(limbs.isEmpty() ? "" : " ").append(stroke.limb().id());
    }
    facts.put("limbs", limbs.toString());
    facts.put("surface", note.surface().name());
    return facts;
  }

  private void ledgers(ChordShape chord, double x) {
    double high = Double.POSITIVE_INFINITY;
    double low = Double.NEGATIVE_INFINITY;
    for (ChordShape.Head head : chord.heads()) {
      high = Math.min(high, head.y());
      low = Math.max(low, head.y());
    }
    if (high > -1 && low < 5) {
      return;
    }
    List<Mark> lines = new ArrayList<>();
    for (double y = -1; y >= high; y--) {
      ledger(chord, x, y, lines);
    }
    for (double y = 5; y <= low; y++) {
      ledger(chord, x, y, lines);
    }
    canvas.marks.add(Mark.Group.of("ledgers", lines));
  }

  /** A ledger line; one that would fill the inside of an open x stops at its edges. */
  private void ledger(ChordShape chord, double x, double y, List<Mark> lines) {
    double left = Double.POSITIVE_INFINITY;
    double right = Double.NEGATIVE_INFINITY;
    for (ChordShape.Head head : chord.heads()) {
      if (y < 0 ? head.y() <= y : head.y() >= y) {
        left = Math.min(left, x + head.x());
        right = Math.max(right, x + head.right());
      }
    }
    double from = left - Rule.LEDGER_REACH;
    double to = right + Rule.LEDGER_REACH;
    boolean open =
        Lists.any(
            chord.heads(),
            head ->
                head.y() == y
                    && (head.sign().name().equals("noteheadXHalf")
                        || head.sign().name().equals("noteheadXWhole")));
    if (open) {
      lines.add(canvas.rule(from, y, left + 0.3, y, Rule.LEDGER_LINE));
      lines.add(canvas.rule(right - 0.3, y, to, y, Rule.LEDGER_LINE));
    } else {
      lines.add(canvas.rule(from, y, to, y, Rule.LEDGER_LINE));
    }
  }
}
