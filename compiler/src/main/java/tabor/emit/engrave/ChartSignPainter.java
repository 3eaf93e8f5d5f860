package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.ChartSigns;
import tabor.lists.Lists;

/** Draws what a chart says at a section's notes: a hold sign, cues, a rehearsal mark. */
record ChartSignPainter(Canvas canvas, PlacedSystem line, ChartSigns signs) {
  private static final double GAP = 0.5;

  /** From line to line of a cue, as a part of its size. */
  private static final double LEADING = 1.2;

  /** The hold sign over the last stroke of a bar, or over the bar where it repeats another. */
  void hold(int number) {
    if (!signs.holds()) {
      return;
    }
    for (int bar = 0; bar < line.bars().size(); bar++) {
      BarPlan plan = line.bars().get(bar);
      if (plan.bar().number() != number) {
        continue;
      }
      double[] starts = line.places().starts();
      double end = bar + 1 < starts.length ? starts[bar + 1] : line.places().end();
      double x = (starts[bar] + end) / 2;
      for (int i = 0; i < plan.slices().size(); i++) {
        Slice slice = plan.slices().get(i);
        if (slice.hands() != null || slice.feet() != null) {
          x = line.places().columns()[bar][i] + Rule.HEAD / 2;
        }
      }
      Sign fermata = Sign.of("fermataAbove");
      canvas.marks.add(
          Mark.Group.of("hold", List.of(canvas.onTop(fermata, x, x + Rule.HEAD / 2, GAP))));
    }
  }

  /**
   * The cues, each from the beginning of its bar.
   *
   * @param first the number of the section's first bar
   */
  void cues(int first) {
    for (ChartSigns.Cue cue : signs.cues()) {
      for (int bar = 0; bar < line.bars().size(); bar++) {
        int number = line.bars().get(bar).bar().number();
        if (number == (cue.bar() == 0 ? first : cue.bar())) {
          cue(cue.text(), line.places().starts()[bar]);
        }
      }
    }
  }

  private void cue(String text, double from) {
    double room = Math.max(Rule.WORDS_WIDTH, line.right());
    double size = Rule.TEMPO_SIZE;
    List<String> words = FilledText.fill(text, size, room, Face.ITALIC, canvas.font);
    double widest = Lists.largest(words, w -> canvas.font.width(w, size, Face.ITALIC));
    double x = Math.max(0, Math.min(from, room - widest));
    double y = -(canvas.above.reach(x, x + widest) + GAP) - (words.size() - 1) * size * LEADING;
    List<Mark> lines = new ArrayList<>();
    for (String line : words) {
      lines.add(canvas.words(line, x, y, size, Mark.Align.LEFT, Face.ITALIC));
      y += size * LEADING;
    }
    canvas.marks.add(Mark.Group.of("cue", lines));
  }

  /** The rehearsal mark over the beginning. */
  void mark() {
    String text = signs.mark();
    if (text == null) {
      return;
    }
    double size = Rule.HEADING_SIZE * 0.85;
    Mark at = RehearsalMark.at(text, 0, 0, size, canvas.font);
    double down = -(canvas.above.most() + GAP) - at.box().bottom();
    Mark mark = at.moved(0, down, 1);
    canvas.take(mark.box());
    canvas.marks.add(mark);
  }
}
