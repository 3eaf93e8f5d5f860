package tabor.source;

/**
 * A run of whole lines of one file: its header, or one section. A passage does not know where in
 * the file it stands, so that what was worked out for it stays true while text before it is edited.
 * Two passages are the same only if they are the same object.
 */
public final class Passage {
  private final String text;

  /** A passage with this text, line ends included. */
  public Passage(String text) {
    this.text = text;
  }

  /** The text, line ends included. */
  public String text() {
    return text;
  }
}
