package tabor.groove;

import org.jspecify.annotations.Nullable;

/**
 * Cases for those who ask only some statements of a chart; the others all get the same answer. Who
 * must not forget a new statement implements {@link Chart.Cases} itself.
 *
 * @param <R> what comes of an item
 */
public abstract class ChartCases<R extends @Nullable Object> implements Chart.Cases<R> {
  private final R other;

  /**
   * Cases of a few statements.
   *
   * @param other the answer for the rest
   */
  protected ChartCases(R other) {
    this.other = other;
  }

  @Override
  public R countIn(Chart.CountIn item) {
    return other;
  }

  @Override
  public R click(Chart.SetClick item) {
    return other;
  }

  @Override
  public R play(Chart.Play item) {
    return other;
  }

  @Override
  public R rest(Chart.Rest item) {
    return other;
  }

  @Override
  public R climb(Chart.Climb item) {
    return other;
  }

  @Override
  public R trade(Chart.Trade item) {
    return other;
  }

  @Override
  public R pause(Chart.Pause item) {
    return other;
  }

  @Override
  public R ramp(Chart.Ramp item) {
    return other;
  }

  @Override
  public R dynamic(Chart.SetDynamic item) {
    return other;
  }

  @Override
  public R hold(Chart.Hold item) {
    return other;
  }

  @Override
  public R cue(Chart.Cue item) {
    return other;
  }

  @Override
  public R mark(Chart.Mark item) {
    return other;
  }
}
