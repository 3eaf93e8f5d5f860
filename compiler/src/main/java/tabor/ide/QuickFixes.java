package tabor.ide;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.parse.LineWords;
import tabor.source.Span;

/**
 * Ways to fix a diagnostic: those that it brings along, and those that follow from its code and the
 * tree. Listing them compiles nothing; a fix is tried when it is chosen.
 */
public final class QuickFixes {
  private QuickFixes() {}

  /** The fixes of a diagnostic, the likeliest first, none twice. */
  public static List<QuickFix> of(Compiled compiled, Diagnostic diagnostic) {
    List<QuickFix> found = new ArrayList<>();
    boolean here = compiled.file().equals(compiled.fileOf(diagnostic.spot()));
    Cursor cursor = here ? Cursor.at(compiled, compiled.span(diagnostic.spot()).start()) : null;
    FixFilter filter = cursor == null ? null : new FixFilter(cursor, diagnostic);
    if (filter != null && filter.isUnsettled()) {
      return List.of();
    }
    for (Diagnostic.Fix fix : diagnostic.fixes()) {
      if (fix.edits().stream().allMatch(edit -> isHere(compiled, edit))) {
        List<TextEdit> edits = new ArrayList<>();
        for (Diagnostic.Edit edit : fix.edits()) {
          edits.add(new TextEdit(compiled.span(edit.spot()), edit.text()));
        }
        if (filter == null || filter.canHold(edits)) {
          boolean lossless = areLossless(compiled, diagnostic, edits);
          add(found, new QuickFix(capital(fix.title()), edits, lossless));
        }
      }
    }
    if (cursor != null) {
      for (QuickFix fix : new FixFinder(cursor, diagnostic).find()) {
        add(found, fix);
      }
    }
    return List.copyOf(found);
  }

  private static boolean isHere(Compiled compiled, Diagnostic.Edit edit) {
    return compiled.file().equals(compiled.fileOf(edit.spot()));
  }

  private static String capital(String title) {
    return title.isEmpty() ? title : Character.toUpperCase(title.charAt(0)) + title.substring(1);
  }

  private static void add(List<QuickFix> found, QuickFix fix) {
    boolean changes =
        fix.edits().stream().anyMatch(edit -> edit.span().length() > 0 || !edit.text().isEmpty());
    if (changes && found.stream().noneMatch(other -> other.edits().equals(fix.edits()))) {
      found.add(fix);
    }
  }

  /**
   * One change that fixes all diagnostics of a code that have a lossless fix; empty if fewer than
   * two have.
   */
  public static Optional<QuickFix> all(Compiled compiled, Code code) {
    return together(
        compiled, "Fix every " + code.word() + " in this file that loses nothing", code, 2);
  }

  /** One change that makes every lossless fix of a file; empty if there is none. */
  public static Optional<QuickFix> all(Compiled compiled) {
    return together(compiled, "Fix spelling, quotes and signs in this file", null, 1);
  }

  private static Optional<QuickFix> together(
      Compiled compiled, String title, @Nullable Code code, int atLeast) {
    List<TextEdit> edits = new ArrayList<>();
    int count = 0;
    for (Diagnostic diagnostic : compiled.diagnostics()) {
      if (code == null || diagnostic.code() == code) {
        QuickFix first = of(compiled, diagnostic).stream().findFirst().orElse(null);
        if (first != null && first.lossless() && !TextEdit.overlap(edits, first.edits())) {
          edits.addAll(first.edits());
          count++;
        }
      }
    }
    return count < atLeast ? Optional.empty() : Optional.of(new QuickFix(title, edits, true));
  }

  /**
   * Why a fix does not help, in words that follow “it would …”; empty if the diagnostic is gone
   * after the fix, nothing new is wrong, and strokes that other lines wrote are what they were.
   * What an error kept from being checked may turn out to deserve a warning.
   */
  public static Optional<String> obstacle(
      Compiled compiled, Diagnostic diagnostic, QuickFix fix, Library library) {
    Compiled after = trial(compiled, fix, library);
    Span place = fix.image(compiled.span(diagnostic.spot()));
    for (Diagnostic left : after.diagnostics()) {
      if (left.code() == diagnostic.code()
          && meet(after.span(left.spot()), place, left, diagnostic)) {
        return Optional.of("leave this problem in place");
      }
    }
    if (!OtherStrokes.areKept(compiled, after, diagnostic, fix)) {
      return Optional.of("change strokes of other lines");
    }
    return Optional.ofNullable(more(compiled, after, Severity.ERROR))
        .or(
            () ->
                diagnostic.severity() == Severity.ERROR
                    ? Optional.empty()
                    : Optional.ofNullable(more(compiled, after, Severity.WARNING)))
        .map(QuickFixes::bringsUp);
  }

  /**
   * The same of a change of many places, which is to leave fewer problems, and none that was not
   * there.
   */
  public static Optional<String> obstacle(Compiled compiled, QuickFix fix, Library library) {
    Compiled after = trial(compiled, fix, library);
    Diagnostic more = more(compiled, after, Severity.ERROR);
    if (more != null) {
      return Optional.of(bringsUp(more));
    }
    return after.diagnostics().size() < compiled.diagnostics().size()
        ? Optional.empty()
        : Optional.of("leave as many problems as there are");
  }

  private static String bringsUp(Diagnostic more) {
    String place = more.place() == null ? "" : more.place().words() + ": ";
    return "bring up another problem (" + place + more.message() + ")";
  }

  private static Compiled trial(Compiled compiled, QuickFix fix, Library library) {
    return library.trial(compiled.file(), TextEdit.apply(fix.edits(), compiled.text()));
  }

  private static boolean meet(Span left, Span place, Diagnostic after, Diagnostic before) {
    boolean elsewhere =
        after.place() != null && before.place() != null && !after.place().equals(before.place());
    boolean overlap = !elsewhere && left.start() < place.end() && place.start() < left.end();
    boolean same = left.start() == place.start() && after.message().equals(before.message());
    return overlap || same;
  }

  /** One that was not there, of a code that there are more of; null if there are no more. */
  private static @Nullable Diagnostic more(Compiled before, Compiled after, Severity severity) {
    Map<Code, Integer> left = new EnumMap<>(Code.class);
    count(after, severity, left, 1);
    count(before, severity, left, -1);
    Diagnostic found = null;
    for (Diagnostic one : after.diagnostics()) {
      if (one.severity() == severity && left.getOrDefault(one.code(), 0) > 0) {
        boolean known =
            before.diagnostics().stream()
                .anyMatch(
                    old ->
                        old.message().equals(one.message())
                            && Objects.equals(old.place(), one.place()));
        if (!known) {
          return one;
        }
        found = found == null ? one : found;
      }
    }
    return found;
  }

  private static void count(
      Compiled compiled, Severity severity, Map<Code, Integer> into, int each) {
    for (Diagnostic diagnostic : compiled.diagnostics()) {
      if (diagnostic.severity() == severity) {
        into.merge(diagnostic.code(), each, Integer::sum);
      }
    }
  }

  /** True if the edits of a diagnostic's fix lose nothing that was written. */
  private static boolean areLossless(
      Compiled compiled, Diagnostic diagnostic, List<TextEdit> edits) {
    boolean spelling =
        diagnostic.severity() == Severity.ERROR
            && (diagnostic.code() == Code.SYNTAX || diagnostic.code() == Code.UNKNOWN_NAME);
    return spelling && edits.stream().allMatch(edit -> isLossless(compiled.text(), edit));
  }

  private static boolean isLossless(String text, TextEdit edit) {
    String old = edit.span().in(text);
    boolean sameLetters = letters(old).equals(letters(edit.text()));
    return sameLetters
        || (isWord(old) && isWord(edit.text()) && !isInBeats(text, edit.span().start()));
  }

  private static String letters(String text) {
    StringBuilder letters = new StringBuilder();
    text.codePoints().filter(Character::isLetterOrDigit).forEach(letters::appendCodePoint);
    return letters.toString();
  }

  private static boolean isWord(String text) {
    return !text.isBlank() && text.chars().noneMatch(Character::isWhitespace);
  }

  /** Among beats every letter is a stroke. */
  private static boolean isInBeats(String text, int offset) {
    return LineWords.endsInBeats(LineEnds.before(text, offset));
  }
}
