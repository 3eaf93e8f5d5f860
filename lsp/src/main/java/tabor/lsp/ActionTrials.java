package tabor.lsp;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.ide.QuickFix;
import tabor.ide.QuickFixes;
import tabor.ide.Refactorings;
import tabor.ide.TextEdit;

/** Tries code actions out on the text before anything is changed. */
final class ActionTrials {
  /** Beyond, so many fixes are tried all the same: each costs what a keystroke there does. */
  private static final int MOST_TRIED_IN_LONG = 3;

  private ActionTrials() {}

  /**
   * The choices of a long text: as many fixes as there is time for are tried, the likeliest first.
   * What does not help is left out; what was not tried is not called the likeliest.
   */
  static List<ActionChoice> some(FileContext file, Collection<ActionChoice> choices) {
    Set<ActionChoice> tried = new HashSet<>();
    Set<ActionChoice> useless = new HashSet<>();
    for (boolean preferred : new boolean[] {true, false}) {
      for (ActionChoice choice : choices) {
        if (choice.isFix()
            && choice.preferred() == preferred
            && tried.size() < MOST_TRIED_IN_LONG) {
          file.wanted().check();
          tried.add(choice);
          if (worked(file, choice).isEmpty()) {
            useless.add(choice);
          }
        }
      }
    }
    return choices.stream()
        .filter(choice -> !useless.contains(choice))
        .map(choice -> choice.isFix() && !tried.contains(choice) ? choice.notPreferred() : choice)
        .toList();
  }

  /** What a choice changes, if it does on this text what it says. */
  static Optional<List<TextEdit>> worked(FileContext file, ActionChoice choice) {
    return Optional.ofNullable(tried(file, choice).edits());
  }

  /**
   * What came of trying a choice.
   *
   * @param edits what it changes; null if it does not help
   * @param why else, after “it would”; null if the text does not need it
   */
  record Tried(@Nullable List<TextEdit> edits, @Nullable String why) {
    static final Tried NOTHING = new Tried(null, null);

    static Tried of(QuickFix fix, Optional<String> obstacle) {
      return obstacle
          .map(why -> new Tried(null, why))
          .orElseGet(() -> new Tried(fix.edits(), null));
    }
  }

  static Tried tried(FileContext file, ActionChoice choice) {
    Compiled compiled = file.compiled();
    if (choice.place() < 0) {
      return Code.of(choice.about())
          .map(code -> QuickFixes.all(compiled, code))
          .orElseGet(() -> QuickFixes.all(compiled))
          .map(fix -> Tried.of(fix, QuickFixes.obstacle(compiled, fix, file.library())))
          .orElse(Tried.NOTHING);
    }
    if (choice.about().isEmpty()) {
      return Refactorings.at(compiled, choice.place(), file.library()).stream()
          .filter(one -> one.title().equals(choice.title()))
          .findFirst()
          .map(
              one ->
                  one.edits(file.library())
                      .map(edits -> new Tried(edits, null))
                      .orElse(new Tried(null, "not give the same music here")))
          .orElse(Tried.NOTHING);
    }
    Tried failed = Tried.NOTHING;
    for (tabor.diagnostic.Diagnostic one : compiled.diagnostics()) {
      if (one.code().word().equals(choice.about())
          && compiled.span(one.spot()).start() == choice.place()) {
        for (QuickFix fix : QuickFixes.of(compiled, one)) {
          if (fix.title().equals(choice.title())) {
            Tried tried = Tried.of(fix, QuickFixes.obstacle(compiled, one, fix, file.library()));
            if (tried.edits() != null) {
              return tried;
            }
            failed = failed.why() == null ? tried : failed;
          }
        }
      }
    }
    return failed;
  }
}
