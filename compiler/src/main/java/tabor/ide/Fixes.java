package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.source.Span;

/**
 * Ways to mend a diagnostic: those that it brings along, and those that follow from its code and
 * the tree. Each is tried on the text before it is offered; what does not help is not shown.
 */
public final class Fixes {
  private Fixes() {}

  /** The fixes of a diagnostic that work, the likeliest first. */
  public static List<Mend> of(Compiled compiled, Diagnostic diagnostic, Library library) {
    return candidates(compiled, diagnostic, library).stream()
        .filter(mend -> works(compiled, diagnostic, mend, library))
        .toList();
  }

  /** What may fix a diagnostic, the likeliest first; whether it does is not tried. */
  public static List<Mend> candidates(Compiled compiled, Diagnostic diagnostic, Library library) {
    List<Mend> found = new ArrayList<>();
    for (Diagnostic.Fix fix : diagnostic.fixes()) {
      if (Mend.isHere(compiled, fix)) {
        found.add(Mend.of(compiled, fix));
      }
    }
    if (compiled.file().equals(compiled.fileOf(diagnostic.spot()))) {
      found.addAll(Remedies.of(compiled, diagnostic, library));
    }
    return found;
  }

  /**
   * One change that mends every diagnostic of a code that has a fix; empty if fewer than two do.
   */
  public static Optional<Mend> all(Compiled compiled, Code code, Library library) {
    Mend all = null;
    int count = 0;
    for (Diagnostic diagnostic : compiled.diagnostics()) {
      if (diagnostic.code() != code) {
        continue;
      }
      Optional<Mend> first = of(compiled, diagnostic, library).stream().findFirst();
      if (first.isPresent() && (all == null || !all.overlaps(first.get()))) {
        all =
            all == null ? new Mend(titleOfAll(code), first.get().changes()) : all.with(first.get());
        count++;
      }
    }
    return count > 1 ? Optional.ofNullable(all) : Optional.empty();
  }

  /** What {@link #all} is called. */
  public static String titleOfAll(Code code) {
    return "fix every " + code.word() + " in this file";
  }

  /** True if the code is gone from where it was, and nothing else is wrong that was not before. */
  public static boolean works(
      Compiled compiled, Diagnostic diagnostic, Mend mend, Library library) {
    Compiled after = library.trial(compiled.file(), mend.apply(compiled.text()));
    Span place = mend.image(compiled.span(diagnostic.spot()));
    for (Diagnostic left : after.diagnostics()) {
      if (left.code() == diagnostic.code()
          && meet(after.span(left.spot()), place, left, diagnostic)) {
        return false;
      }
    }
    return errors(after) <= errors(compiled);
  }

  private static boolean meet(Span left, Span place, Diagnostic after, Diagnostic before) {
    boolean overlap = left.start() < place.end() && place.start() < left.end();
    boolean same = left.start() == place.start() && after.message().equals(before.message());
    return overlap || same;
  }

  private static long errors(Compiled compiled) {
    return compiled.diagnostics().stream().filter(d -> d.severity() == Severity.ERROR).count();
  }
}
