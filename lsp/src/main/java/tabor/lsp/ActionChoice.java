package tabor.lsp;

import java.util.LinkedHashSet;
import java.util.Set;
import org.eclipse.lsp4j.Diagnostic;

/**
 * A code action that can be chosen.
 *
 * @param kind the protocol's
 * @param place of its diagnostic or of the cursor; -1 for the whole file
 * @param about the diagnostic's code; empty for none
 * @param title what it does
 * @param preferred true for the likeliest fix of its diagnostic
 * @param fixed the diagnostics that it is a fix of
 */
record ActionChoice(
    String kind, int place, String about, String title, boolean preferred, Set<Told> fixed) {
  ActionChoice(String kind, int place, String about, String title) {
    this(kind, place, about, title, false, Set.of());
  }

  /** True for a fix of what stands at one place. */
  boolean isFix() {
    return place >= 0 && !about.isEmpty();
  }

  ActionChoice notPreferred() {
    return new ActionChoice(kind, place, about, title, false, fixed);
  }

  ActionChoice and(Told told, boolean first) {
    Set<Told> all = new LinkedHashSet<>(fixed);
    all.add(told);
    return new ActionChoice(kind, place, about, title, preferred || first, all);
  }

  /** A diagnostic as the client knows it: several of one code may begin at one place. */
  record Told(String code, int start, String head) {
    boolean is(FileContext file, Diagnostic theirs) {
      return theirs.getCode() != null
          && code.equals(theirs.getCode().getLeft())
          && theirs.getMessage() != null
          && theirs.getMessage().isLeft()
          && theirs.getMessage().getLeft().startsWith(head)
          && file.offset(theirs.getRange().getStart()) == start;
    }
  }
}
