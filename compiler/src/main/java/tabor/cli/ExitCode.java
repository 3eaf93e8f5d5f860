package tabor.cli;

/** How a command ended. */
final class ExitCode {
  private ExitCode() {}

  /** All well; warnings and hints do not matter. */
  static final int FINE = 0;

  /** A file has errors, or something could not be read, written or played. */
  static final int ERRORS = 1;

  /** The command line makes no sense. */
  static final int USAGE = 2;
}
