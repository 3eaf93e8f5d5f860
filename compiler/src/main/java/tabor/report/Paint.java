package tabor.report;

import tabor.diagnostic.Severity;

/** Colours of a terminal, or none. */
enum Paint {
  PLAIN,
  COLOUR;

  private String paint(String code, String text) {
    return this == PLAIN ? text : "\u001b[" + code + "m" + text + "\u001b[0m";
  }

  /** What matters less. */
  String faint(String text) {
    return paint("2", text);
  }

  /** What the eye should find first. */
  String strong(String text) {
    return paint("1", text);
  }

  /** The mark of a diagnostic's own spot. */
  String main(String text) {
    return paint("1;31", text);
  }

  /** The mark of a further spot. */
  String second(String text) {
    return paint("1;34", text);
  }

  /** A severity in its colour. */
  String severity(Severity severity, String text) {
    return switch (severity) {
      case ERROR -> paint("1;31", text);
      case WARNING -> paint("1;33", text);
      case HINT -> paint("1;36", text);
    };
  }
}
