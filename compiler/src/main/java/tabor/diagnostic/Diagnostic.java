package tabor.diagnostic;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.lists.Lists;
import tabor.source.Spot;

/**
 * One thing that is wrong, or worth a look.
 *
 * @param code its kind
 * @param severity how bad it is: that of its code, unless this one is worse or milder
 * @param spot where in the source; for a clash the later of the two places
 * @param place where in the music; null outside music
 * @param message one sentence in a teacher's words, without a full stop
 * @param labels further places that matter, such as the other side of a clash
 * @param help what would fix it, in a sentence; null where there is nothing to say
 * @param fixes edits that fix it, the likeliest first
 */
public record Diagnostic(
    Code code,
    Severity severity,
    Spot spot,
    @Nullable Place place,
    String message,
    List<Label> labels,
    @Nullable String help,
    List<Fix> fixes) {

  /** Copies the lists. */
  public Diagnostic {
    labels = List.copyOf(labels);
    fixes = List.copyOf(fixes);
  }

  /** A diagnostic with nothing but its message. */
  public static Diagnostic of(Code code, Spot spot, String message) {
    return new Diagnostic(code, code.severity(), spot, null, message, List.of(), null, List.of());
  }

  /** The same, worse or milder than its code usually is. */
  public Diagnostic at(Severity other) {
    return new Diagnostic(code, other, spot, place, message, labels, help, fixes);
  }

  /** The same at a place in the music. */
  public Diagnostic in(@Nullable Place music) {
    return new Diagnostic(code, severity, spot, music, message, labels, help, fixes);
  }

  /** The same with a way out. */
  public Diagnostic help(@Nullable String words) {
    return new Diagnostic(code, severity, spot, place, message, labels, words, fixes);
  }

  /** The same with one more place. */
  public Diagnostic label(Spot other, String words) {
    return new Diagnostic(
        code, severity, spot, place, message, plus(labels, new Label(other, words)), help, fixes);
  }

  /** The same with one more fix; a fix that is there already is not added twice. */
  public Diagnostic fix(Fix fix) {
    if (Lists.any(fixes, other -> other.edits().equals(fix.edits()))) {
      return this;
    }
    return new Diagnostic(code, severity, spot, place, message, labels, help, plus(fixes, fix));
  }

  /** The same with one more fix, of one replacement. */
  public Diagnostic fix(String title, Spot where, String text) {
    return fix(new Fix(title, List.of(new Edit(where, text))));
  }

  private static <T> List<T> plus(List<T> list, T more) {
    List<T> all = new java.util.ArrayList<>(list);
    all.add(more);
    return all;
  }

  /**
   * A place in the music.
   *
   * @param section the section's name
   * @param bar 1-based, 0 for the pickup; null where no bar is meant
   * @param count as it is counted aloud, such as {@code 2&}; null where none is meant
   */
  public record Place(String section, @Nullable Integer bar, @Nullable String count) {
    /** {@code feet, bar 2, count 2&}. */
    public String words() {
      return section
          + (bar == null ? "" : ", bar " + bar)
          + (count == null ? "" : ", count " + count);
    }
  }

  /** A further place and what it has to do with the matter. */
  public record Label(Spot spot, String text) {}

  /**
   * A way to fix it.
   *
   * @param title what it does, in a few words
   * @param edits the replacements, none overlapping another
   */
  public record Fix(String title, List<Edit> edits) {
    /** Copies the list. */
    public Fix {
      edits = List.copyOf(edits);
    }
  }

  /** The text at {@code spot} becomes {@code text}. */
  public record Edit(Spot spot, String text) {}
}
