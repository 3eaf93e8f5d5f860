package tabor.groove;

/**
 * A table at the end of the handout in which the student writes down what was practised.
 *
 * @param rows how many days or weeks it has, 1 to 100
 * @param unit what a row is for
 */
public record PracticeLog(int rows, Unit unit) {
  /** What a row of the table is for. */
  public enum Unit {
    DAYS,
    WEEKS
  }

  /** Checks the range. */
  public PracticeLog {
    if (rows < 1 || rows > 100) {
      throw new IllegalArgumentException("log of " + rows);
    }
  }
}
