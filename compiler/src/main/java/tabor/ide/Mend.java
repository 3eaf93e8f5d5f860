package tabor.ide;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.source.Span;

/**
 * A change of one file that a person can choose.
 *
 * @param title what it does, in a few words
 * @param changes the replacements in order, none overlapping another
 */
public record Mend(String title, List<Change> changes) {
  /** Puts the changes in order. */
  public Mend {
    List<Change> ordered = new ArrayList<>(changes);
    ordered.sort(Comparator.comparingInt(change -> change.span().start()));
    changes = List.copyOf(ordered);
  }

  /**
   * A replacement.
   *
   * @param span offsets in the file
   * @param text what comes there
   */
  public record Change(Span span, String text) {}

  static Mend of(String title, Span span, String text) {
    return new Mend(title, List.of(new Change(span, text)));
  }

  static Mend of(Compiled compiled, Diagnostic.Fix fix) {
    List<Change> changes = new ArrayList<>();
    for (Diagnostic.Edit edit : fix.edits()) {
      changes.add(new Change(compiled.span(edit.spot()), edit.text()));
    }
    return new Mend(fix.title(), changes);
  }

  /** True if every change is in this file. */
  static boolean isHere(Compiled compiled, Diagnostic.Fix fix) {
    return fix.edits().stream()
        .map(Diagnostic.Edit::spot)
        .map(compiled::fileOf)
        .allMatch(compiled.file()::equals);
  }

  /** The text with the changes made. */
  public String apply(String text) {
    StringBuilder made = new StringBuilder();
    int at = 0;
    for (Change change : changes) {
      made.append(text, at, change.span().start()).append(change.text());
      at = change.span().end();
    }
    return made.append(text, at, text.length()).toString();
  }

  /**
   * Where a span of the old text lies in the new one; what is replaced lies with its replacement.
   */
  Span image(Span old) {
    return new Span(image(old.start(), false), image(old.end(), true));
  }

  private int image(int offset, boolean end) {
    int shift = 0;
    for (Change change : changes) {
      Span span = change.span();
      if (span.start() > offset || (span.start() == offset && span.length() > 0 && end)) {
        break;
      }
      if (span.end() > offset || (span.start() == offset && span.length() == 0)) {
        return span.start() + shift + (end ? change.text().length() : 0);
      }
      shift += change.text().length() - span.length();
    }
    return offset + shift;
  }

  /** True if a change of the one touches a change of the other. */
  boolean overlaps(Mend other) {
    for (Change mine : changes) {
      for (Change theirs : other.changes) {
        if (mine.span().start() <= theirs.span().end()
            && theirs.span().start() <= mine.span().end()) {
          return true;
        }
      }
    }
    return false;
  }

  /** Both as one; they must not overlap. */
  Mend with(Mend other) {
    List<Change> all = new ArrayList<>(changes);
    all.addAll(other.changes);
    return new Mend(title, all);
  }
}
