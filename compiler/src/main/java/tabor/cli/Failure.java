package tabor.cli;

/** A command cannot go on; the message is for the person who typed it. */
final class Failure extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final int code;

  private Failure(int code, String message) {
    super(message, null, false, false);
    this.code = code;
  }

  /** The command line makes no sense. */
  static Failure usage(String message) {
    return new Failure(ExitCode.USAGE, message);
  }

  /** Something outside went wrong: a disk, a device. */
  static Failure outside(String message) {
    return new Failure(ExitCode.ERRORS, message);
  }

  /** The exit code that it calls for. */
  int code() {
    return code;
  }
}
