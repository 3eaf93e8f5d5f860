package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tabor.lists.Lists;
import tabor.notation.Beam;
import tabor.notation.Note;
import tabor.notation.Voice;

/** Draws the notes and rests of one voice: heads, stems, beams, flags, dots, small notes, ties. */
final class NotePainter {
  /** Size of the sign of a press roll, so that it stands between two lines of the staff. */
  private static final double BUZZ = 0.78;

  /** From the middle of one slash to the next. */
  private static final double SLASH_STEP = 0.74;

  /** Length of the stem of a small note. */
  private static final double GRACE_STEM = 2.35;

  private final Canvas canvas;
  private final PlacedSystem line;
  private final Voice voice;
  private final HeadPainter heads;
  private final Map<String, double[]> openTies = new HashMap<>();

  NotePainter(Canvas canvas, PlacedSystem line, Voice voice, boolean changes) {
    this.canvas = canvas;
    this.line = line;
    this.voice = voice;
    this.heads = new HeadPainter(canvas, changes);
  }

  void paint() {
    for (int bar = 0; bar < line.bars().size(); bar++) {
      paint(bar);
    }
    double end = line.places().end() - 0.3;
    for (double[] open : openTies.values()) {
      tie(open[0], end, open[1]);
    }
  }

  private void paint(int bar) {
    BarPlan plan = line.bars().get(bar);
    if (plan.slices().isEmpty()) {
      return;
    }
    int start = 0;
    List<ChordShape> group = new ArrayList<>();
    List<Double> xs = new ArrayList<>();
    for (int i = 0; i < plan.slices().size(); i++) {
      ChordShape chord = plan.slices().get(i).chord(voice);
      if (chord == null) {
        continue;
      }
      double x = line.places().columns()[bar][i];
      heads.paint(plan.bar(), chord, x);
      graces(chord, x);
      ties(chord, x);
      if (chord.chord().beams().isEmpty()) {
        stem(chord, x);
        continue;
      }
      start = group.isEmpty() ? i : start;
      group.add(chord);
      xs.add(x);
      Beam primary = chord.chord().beams().get(0);
      if (primary != Beam.BEGIN && primary != Beam.CONTINUE) {
        beam(obstacles(plan, bar, start, group, xs), group, xs);
        group.clear();
        xs.clear();
      }
    }
    if (!group.isEmpty()) {
      beam(obstacles(plan, bar, start, group, xs), group, xs);
    }
  }

  // ---- stems, flags, beams ----

  private void stem(ChordShape chord, double x) {
    if (!chord.chord().written().type().hasStem()) {
      rolls(chord, x, chord.near(), 0);
      return;
    }
    double length = Stems.length(chord);
    double end = chord.up() ? chord.near() - length : chord.near() + length;
    List<Mark> marks = new ArrayList<>();
    marks.add(stemTo(chord, x, end));
    if (chord.hasFlags()) {
      Sign flag = Heads.flag(chord.chord().written().type(), chord.up());
      Mark drawn = canvas.sign(flag, x + chord.stemX() - Rule.STEM / 2, end);
      marks.add(Mark.Group.of("flag", List.of(drawn)));
    }
    canvas.marks.add(Mark.Group.of("stem", marks));
    rolls(chord, x, end, 0);
  }

  private Mark stemTo(ChordShape chord, double x, double end) {
    double at = x + chord.stemX();
    return canvas.rule(at, chord.stemStart(), at, end, Rule.STEM);
  }

  private void beam(List<Beams.Obstacle> obstacles, List<ChordShape> group, List<Double> columns) {
    double[] xs = new double[group.size()];
    for (int i = 0; i < xs.length; i++) {
      xs[i] = columns.get(i) + group.get(i).stemX();
    }
    Beams beams = Beams.of(group, xs, obstacles);
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < xs.length; i++) {
      marks.add(stemTo(group.get(i), columns.get(i), beams.at(xs[i])));
    }
    for (Contour band : beams.bands()) {
      Box box = band.bounds();
      // The skyline takes a slanted beam in pieces, so that signs follow its slope.
      for (double x = box.left(); x < box.right(); x += 0.5) {
        double right = Math.min(x + 0.5, box.right());
        double y =
            beams.at(
                beams.up() ? (beams.slope() < 0 ? right : x) : (beams.slope() > 0 ? right : x));
        canvas.take(new Box(x, y - Rule.BEAM / 2, right, y + Rule.BEAM / 2));
      }
      marks.add(Mark.Group.of("beam", List.of(new Mark.Ink(band))));
    }
    canvas.marks.add(Mark.Group.of("beamed", marks));
    for (int i = 0; i < xs.length; i++) {
      ChordShape chord = group.get(i);
      double depth = (chord.chord().beams().size() - 1) * Rule.BEAM_STEP + Rule.BEAM / 2;
      rolls(chord, columns.get(i), beams.at(xs[i]), depth);
    }
  }

  /**
   * Rests under the beam, and heads of the other voice, that the beam must leave room for.
   *
   * @param start the column of the group's first chord
   */
  private List<Beams.Obstacle> obstacles(
      BarPlan plan, int bar, int start, List<ChordShape> group, List<Double> columns) {
    List<Beams.Obstacle> found = new ArrayList<>();
    boolean up = group.get(0).up();
    int levels = Lists.most(group, c -> c.chord().beams().size());
    double depth = (levels - 1) * Rule.BEAM_STEP + Rule.BEAM / 2;
    double first = columns.get(0);
    double last = columns.get(columns.size() - 1);
    Voice other = voice == Voice.HANDS ? Voice.FEET : Voice.HANDS;
    for (int i = start; i < plan.slices().size(); i++) {
      double x = line.places().columns()[bar][i];
      if (x > last) {
        break;
      }
      Slice slice = plan.slices().get(i);
      for (RestShape rest : slice.rests()) {
        Box box = rest.box();
        double y = up ? box.top() - 0.3 - depth : box.bottom() + 0.3 + depth;
        found.add(new Beams.Obstacle(x + Rule.HEAD / 2, y));
      }
      ChordShape own = slice.chord(voice);
      if (own != null && x > first) {
        for (double grace : own.graces()) {
          double y = graceTip(own) + (up ? -0.35 - depth : 0.35 + depth);
          found.add(new Beams.Obstacle(x + grace, y));
        }
      }
      ChordShape across = slice.chord(other);
      if (across != null) {
        double y = up ? across.far() - 0.8 - depth : across.far() + 0.8 + depth;
        found.add(new Beams.Obstacle(x + Rule.HEAD / 2, y));
      }
    }
    return found;
  }

  /** Tremolo strokes or the buzz sign, on the stem between heads and beam. */
  private void rolls(ChordShape chord, double x, double end, double depth) {
    int slashes = Lists.most(chord.chord().notes(), Note::slashes);
    boolean buzz = Lists.any(chord.chord().notes(), Note::buzz);
    if (slashes == 0 && !buzz) {
      return;
    }
    double half = buzz ? BUZZ * Sign.of("buzzRoll").box().height() / 2 : slashes * SLASH_STEP / 2;
    double out = chord.up() ? -1 : 1;
    boolean stem = chord.chord().written().type().hasStem();
    double y;
    if (!stem || chord.hasFlags() || buzz) {
      y = chord.near() + out * (0.62 + half);
    } else {
      double inner = end - out * depth;
      y = (chord.near() + out * 0.5 + inner) / 2;
    }
    if (buzz && y > 0 && y < 4) {
      // Between two lines, clear of both and of the head.
      y = chord.up() ? Math.floor(y + 0.01) + 0.5 : Math.ceil(y - 0.01) - 0.5;
      y += Math.abs(y - chord.near()) < 0.95 ? out : 0;
    }
    double at = stem ? x + chord.stemX() : x + chord.heads().get(0).middle();
    List<Mark> marks = new ArrayList<>();
    if (buzz) {
      marks.add(canvas.sign(Sign.of("buzzRoll"), at, y, BUZZ));
    } else {
      for (int i = 0; i < slashes; i++) {
        double place = y + (i - (slashes - 1) / 2.0) * SLASH_STEP;
        marks.add(canvas.sign(Sign.of("tremolo1"), at, place));
      }
    }
    canvas.marks.add(Mark.Group.of("roll", marks));
  }

  // ---- small notes ----

  /** Where the stems of a chord's small notes end. */
  private static double graceTip(ChordShape chord) {
    double tip = chord.up() ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
    for (ChordShape.Head head : chord.heads()) {
      if (head.note().graceNotes() > 0) {
        tip = chord.up() ? Math.min(tip, head.y()) : Math.max(tip, head.y());
      }
    }
    return tip + (chord.up() ? -GRACE_STEM : GRACE_STEM);
  }

  private void graces(ChordShape chord, double x) {
    int count = chord.graces().size();
    if (count == 0) {
      return;
    }
    List<Mark> marks = new ArrayList<>();
    double out = chord.up() ? -1 : 1;
    double tip = chord.up() ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
    double base = chord.up() ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    for (ChordShape.Head head : chord.heads()) {
      int small = head.note().graceNotes();
      for (int i = count - small; i < count; i++) {
        Sign sign = Heads.of(head.note().head(), tabor.notation.Written.Type.EIGHTH);
        double at = x + chord.graces().get(i);
        marks.add(canvas.sign(sign, at, head.y(), Rule.SMALL));
      }
      if (small > 0) {
        tip = chord.up() ? Math.min(tip, head.y()) : Math.max(tip, head.y());
        base = chord.up() ? Math.max(base, head.y()) : Math.min(base, head.y());
      }
    }
    double end = tip + out * GRACE_STEM;
    double half = Rule.STEM * 0.4;
    double side = chord.up() ? Rule.HEAD * Rule.SMALL - half : half;
    for (int i = 0; i < count; i++) {
      double stem = x + chord.graces().get(i) + side;
      double from = base + out * 0.12;
      marks.add(canvas.rule(stem, from, stem, end, half * 2));
    }
    double firstStem = x + chord.graces().get(0) + side;
    double lastStem = x + chord.graces().get(count - 1) + side;
    if (count == 1) {
      Sign flag = Heads.flag(tabor.notation.Written.Type.EIGHTH, chord.up());
      marks.add(canvas.sign(flag, firstStem - half, end, 0.5));
    } else {
      for (int i = 0; i < 2; i++) {
        double y = end - out * (0.15 + i * 0.46);
        marks.add(canvas.ink(Contour.band(firstStem - half, y, lastStem + half, y, 0.3)));
      }
    }
    Sign slash = Sign.of("graceNoteSlashStemUp");
    double scale = Rule.SMALL;
    double flip = chord.up() ? -scale : scale;
    marks.add(canvas.ink(slash.outline().placed(firstStem, end, scale, flip)));
    canvas.marks.add(Mark.Group.of("small", marks));
  }

  // ---- ties ----

  private void ties(ChordShape chord, double x) {
    for (ChordShape.Head head : chord.heads()) {
      Note note = head.note();
      String key = note.surface().name();
      double[] open = openTies.remove(key);
      if (note.tieIn()) {
        double end = x + head.x() - 0.12;
        double start = open == null ? Math.max(end - 2, line.places().starts()[0] + 0.1) : open[0];
        tie(start, end, head.y());
      }
      if (note.tieOut()) {
        openTies.put(key, new double[] {x + head.right() + 0.12, head.y()});
      }
    }
  }

  private void tie(double left, double right, double y) {
    if (right - left < 0.3) {
      return;
    }
    double side = voice == Voice.HANDS ? 1 : -1;
    double base = y + side * 0.42;
    double deep = Math.min(1.0, 0.35 + (right - left) * 0.08);
    double a = left + (right - left) * 0.28;
    double b = right - (right - left) * 0.28;
    Contour.Builder builder = new Contour.Builder();
    builder.move(left, base);
    builder.curve(a, base + side * (deep + 0.27), b, base + side * (deep + 0.27), right, base);
    builder.curve(b, base + side * deep, a, base + side * deep, left, base);
    builder.close();
    canvas.marks.add(Mark.Group.of("tie", List.of(canvas.ink(builder.build()))));
  }
}
