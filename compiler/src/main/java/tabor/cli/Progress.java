package tabor.cli;

import tabor.source.VisibleText;

/**
 * A line that says what is being worked on, for a person at a terminal who has waited a moment;
 * nobody else sees anything.
 */
final class Progress {
  private static final long PATIENCE_NANOS = 400_000_000L;
  private static final int MOST_COLUMNS = 78;

  private final Io io;
  private final long start = System.nanoTime();
  private int shown;

  Progress(Io io) {
    this.io = io;
  }

  /** Says what is being done, and how much of it is behind us. */
  void at(String what, int done, int of) {
    if (!io.errTerminal() || System.nanoTime() - start < PATIENCE_NANOS) {
      return;
    }
    String line = (of > 1 ? (done + 1) + " of " + of + ": " : "") + VisibleText.line(what);
    String cut = line.length() > MOST_COLUMNS ? line.substring(0, MOST_COLUMNS) : line;
    io.err().print("\r" + cut + " ".repeat(Math.max(0, shown - cut.length())));
    io.err().flush();
    shown = cut.length();
  }

  /** Takes the line away. */
  void done() {
    if (shown > 0) {
      io.err().print("\r" + " ".repeat(shown) + "\r");
      io.err().flush();
      shown = 0;
    }
  }
}
