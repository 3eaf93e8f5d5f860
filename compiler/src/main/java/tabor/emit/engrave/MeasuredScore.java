package tabor.emit.engrave;

import java.util.List;
import tabor.notation.Score;

/**
 * A score whose signs have been measured, ready to be broken into systems of any width. Measuring
 * costs about as much as drawing, so whoever wants a score in several widths measures it once.
 */
public final class MeasuredScore {
  private final SectionPlan plan;

  private MeasuredScore(SectionPlan plan) {
    this.plan = plan;
  }

  /**
   * Measures a score; throws {@link IllegalArgumentException} for one without bars.
   *
   * @param look how it is drawn
   */
  public static MeasuredScore of(Score score, Look look, TextMetrics font) {
    return new MeasuredScore(SectionPlan.of(score, look, font));
  }

  /**
   * The same in systems of another width.
   *
   * @param width in staff spaces, {@link Look#LEAST} or more
   */
  public MeasuredScore in(double width) {
    return new MeasuredScore(plan.in(plan.look().withWidth(width)));
  }

  /** The same with other wishes for its lines. */
  public MeasuredScore withLines(LineWishes lines) {
    return new MeasuredScore(plan.in(plan.look().withLines(lines)));
  }

  /** The same for a page that says in words elsewhere what it shows. */
  public MeasuredScore silent() {
    return new MeasuredScore(plan.silent());
  }

  /** True if it stands in one system without being crowded. */
  public boolean isNarrow() {
    return plan.isNarrow();
  }

  /** Draws it. */
  public Engraving engrave() {
    return Engraver.engrave(List.of(this)).get(0);
  }

  SectionPlan plan() {
    return plan;
  }
}
