package tabor.weave;

import org.jspecify.annotations.Nullable;

/** Why nothing can be made of a block. */
final class Trouble extends Exception {
  private static final long serialVersionUID = 1L;

  private final @Nullable String help;

  /**
   * Trouble with a way out.
   *
   * @param message one sentence without a full stop
   * @param help what to do about it; null where the message says it all
   */
  Trouble(String message, @Nullable String help) {
    super(message, null, false, false);
    this.help = help;
  }

  /** Trouble whose message says what to do. */
  Trouble(String message) {
    this(message, null);
  }

  /** The message; never null. */
  String words() {
    String message = getMessage();
    return message == null ? "" : message;
  }

  @Nullable String help() {
    return help;
  }
}
