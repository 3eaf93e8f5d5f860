package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Groove;
import tabor.notation.Score;
import tabor.notation.Voice;

/**
 * Lays a score out on staves: bars are measured, broken into systems, spaced to fill the width, and
 * drawn from the notes outwards, each sign taking the nearest free room.
 */
public final class Engraver {
  /** A system whose natural width is less than its share of the line is not stretched more. */
  private static final double MOST_STRETCH = 2.4;

  private static final double MOST_STRETCH_ALONE = 1.3;

  private final Score score;
  private final Look look;
  private final TextMetrics font;
  private final Groove groove;

  private Engraver(Score score, Look look, TextMetrics font) {
    this.score = score;
    this.look = look;
    this.font = font;
    this.groove = score.groove();
  }

  /** Engraves a section; throws {@link IllegalArgumentException} for a score without bars. */
  public static Engraving engrave(Score score, Look look, TextMetrics font) {
    if (score.bars().isEmpty()) {
      throw new IllegalArgumentException("a score without bars");
    }
    return new Engraver(score, look, font).run();
  }

  private Engraving run() {
    boolean counts = look.counts() && groove.setting().showCounts();
    boolean sticking = look.sticking() && groove.setting().showSticking();
    List<BarPlan> plans =
        score.bars().stream().map(bar -> BarPlan.of(bar, counts, sticking, font)).toList();
    double firstPrefix = StaffPainter.prefix(groove.meter(), true);
    double laterPrefix = StaffPainter.prefix(groove.meter(), false);
    List<Integer> starts =
        Breaks.of(
            plans,
            look.width() - firstPrefix - StaffPainter.FINAL,
            look.width() - laterPrefix - StaffPainter.FINAL);
    List<Engraving.StaffSystem> systems = new ArrayList<>();
    String words = Spoken.of(score);
    for (int i = 0; i < starts.size(); i++) {
      int end = i + 1 < starts.size() ? starts.get(i + 1) : plans.size();
      systems.add(system(plans.subList(starts.get(i), end), i == 0, i + 1 == starts.size()));
    }
    return new Engraving(score, systems, groove.caption(), words);
  }

  private Engraving.StaffSystem system(List<BarPlan> plans, boolean first, boolean last) {
    double prefix = StaffPainter.prefix(groove.meter(), first);
    double tail = last ? StaffPainter.FINAL : 0;
    double room = look.width() - prefix - tail;
    Spacing spacing = new Spacing(plans, false);
    double most = first && last ? MOST_STRETCH_ALONE : MOST_STRETCH;
    double force = spacing.forceFor(room, most);
    double scale = 1;
    if (force == 0) {
      // Narrower before smaller: first let the signs come closer, then shrink the system.
      spacing = new Spacing(plans, true);
      force = spacing.forceFor(room, most);
      double width = prefix + spacing.width(force) + tail;
      scale = Math.min(1, look.width() / width);
    }
    Spacing.Places placed = spacing.place(prefix, force);
    Spacing.Places places =
        new Spacing.Places(placed.starts(), placed.columns(), placed.end() + tail);
    return draw(PlacedSystem.of(plans, places), first, last, scale);
  }

  private Engraving.StaffSystem draw(PlacedSystem line, boolean first, boolean last, double scale) {
    Canvas canvas = new Canvas(font, Math.max(look.width() / scale, line.places().end()) + 2);
    new StaffPainter(canvas).paint(line, groove.meter(), first, last);
    new RestPainter(canvas, line).paint();
    for (Voice voice : Voice.values()) {
      new NotePainter(canvas, line, voice, look.changes()).paint();
    }
    for (Voice voice : Voice.values()) {
      new SignPainter(canvas, line, voice).paint();
    }
    RowPainter rows = new RowPainter(canvas, line);
    rows.counts();
    rows.stickings();
    new DynamicsPainter(canvas, line).paint(groove);
    if (first) {
      if (look.tempo()) {
        TempoPainter.paint(canvas, groove);
      }
      if (look.heading()) {
        TempoPainter.heading(canvas, groove.caption(), look.width() / scale);
      }
    } else {
      rows.barNumber(line.bars().get(0).bar().number());
    }
    return finish(canvas, line, scale);
  }

  private Engraving.StaffSystem finish(Canvas canvas, PlacedSystem line, double scale) {
    double top = canvas.above.most() + 0.2;
    double height = (top + canvas.below.most() + 0.2) * scale;
    double width = line.places().end() * scale;
    List<Engraving.Moment> moments = new ArrayList<>();
    for (int bar = 0; bar < line.bars().size(); bar++) {
      BarPlan plan = line.bars().get(bar);
      for (int i = 0; i < plan.slices().size(); i++) {
        double x = (line.places().columns()[bar][i] + Rule.HEAD / 2) * scale;
        moments.add(new Engraving.Moment(plan.bar().number(), plan.slices().get(i).at(), x));
      }
    }
    List<Mark> marks = Moving.by(canvas.marks, 0, top * scale, scale);
    Drawing drawing = new Drawing(width, height, groove.caption(), "", marks);
    return new Engraving.StaffSystem(drawing, moments, top * scale);
  }
}
