package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;

/** Draws the rests and the one-bar repeat signs of a system. */
record RestPainter(Canvas canvas, PlacedSystem line) {
  void paint() {
    for (int bar = 0; bar < line.bars().size(); bar++) {
      BarPlan plan = line.bars().get(bar);
      for (int i = 0; i < plan.slices().size(); i++) {
        for (RestShape rest : plan.slices().get(i).rests()) {
          paint(rest, line.places().columns()[bar][i]);
        }
      }
      double middle = (line.start(bar) + line.places().endOf(bar)) / 2;
      for (RestShape rest : plan.wholeRests()) {
        paint(rest, middle - Rule.HEAD / 2);
      }
      if (plan.bar().repeat()) {
        Sign sign = Sign.of("repeat1Bar");
        Mark mark = canvas.sign(sign, middle - sign.box().width() / 2, 2);
        canvas.marks.add(Mark.Group.of("repeat-bar", List.of(mark)));
      }
    }
  }

  private void paint(RestShape rest, double x) {
    List<Mark> marks = new ArrayList<>();
    Box box = rest.sign().boxAt(x + rest.x(), rest.y(), 1);
    marks.add(canvas.sign(rest.sign(), x + rest.x(), rest.y()));
    boolean hangs = rest.sign().name().equals("restWhole") || rest.sign().name().equals("restHalf");
    if (hangs && (rest.y() < 0 || rest.y() > 4)) {
      marks.add(
          canvas.rule(
              box.left() - Rule.LEDGER_REACH,
              rest.y(),
              box.right() + Rule.LEDGER_REACH,
              rest.y(),
              Rule.LEDGER_LINE));
    }
    if (rest.rest().written().dots() > 0 && !rest.rest().wholeBar()) {
      Sign dot = Sign.of("augmentationDot");
      double y = Math.floor(rest.y()) - 0.5;
      marks.add(canvas.sign(dot, box.right() + 0.3, y));
    }
    canvas.marks.add(Mark.Group.of("rest", marks));
  }
}
