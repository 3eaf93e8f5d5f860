package tabor.report;

/** Which Tabor this is. */
public final class Version {
  private Version() {}

  /** As in the project's pom; a test compares the two. */
  public static final String TEXT = "0.1.0";
}
