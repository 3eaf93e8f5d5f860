package tabor.ide;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.Statement;

/** Leaves out fixes of which the tree alone tells that something else would be wrong after them. */
record FixFilter(Cursor cursor, Diagnostic diagnostic) {
  /** The letters of a part that is called by a surface. */
  private static final String SURFACE_LETTERS = "rlbx";

  private static final Pattern FROM = Pattern.compile("\\s+from\\s+(\\S+)\\s*");

  /**
   * True if the section may be another one than it seems: a line that could not be read may have
   * been meant to open the next one. Then no advice on its bars is worth anything.
   */
  boolean isUnsettled() {
    return switch (diagnostic.code()) {
      case BAR_COUNT -> isBrokenAbove();
      case ALREADY_THERE -> isBroken(Integer.MAX_VALUE);
      case BAR_LENGTH -> isPickup() && isBrokenAbove();
      default -> false;
    };
  }

  private boolean isPickup() {
    Diagnostic.Place place = diagnostic.place();
    return place != null && Integer.valueOf(0).equals(place.bar());
  }

  private boolean isBrokenAbove() {
    Line here = cursor.line();
    return here != null && isBroken(here.start());
  }

  private boolean isBroken(int end) {
    return cursor.section().lines().stream()
        .filter(line -> line.start() < end)
        .anyMatch(line -> line.statement() instanceof Statement.Broken broken && !broken.lane());
  }

  /** True if the edits of a fix that the diagnostic brings along can hold. */
  boolean canHold(List<TextEdit> edits) {
    return switch (diagnostic.code()) {
      case BAR_LENGTH -> !areBarLines(edits) || takes(edits.size());
      case UNKNOWN_NAME -> edits.stream().allMatch(this::fitsLetters);
      case SYNTAX -> edits.stream().allMatch(this::closesInPlace);
      default -> true;
    };
  }

  private static boolean areBarLines(List<TextEdit> edits) {
    return edits.stream().allMatch(edit -> edit.text().equals(" |"));
  }

  /** True if the part has as many bars as the others next to it, once bar lines are set. */
  private boolean takes(int more) {
    Line here = cursor.line();
    return here == null
        || !(here.statement() instanceof PartStatement.Lane lane)
        || SystemParts.around(cursor).takes(lane.bars().size() + more);
  }

  /** A surface in place of a word before a colon: its part has other letters than a limb's. */
  private boolean fitsLetters(TextEdit edit) {
    Line here = cursor.line();
    if (here == null
        || !(here.statement() instanceof PartStatement.Lane lane)
        || !cursor.inFile(lane.subject().span()).equals(edit.span())
        || cursor.kit().surface(edit.text()) == null) {
      return true;
    }
    return SyntaxTokens.of(here).stream()
        .filter(token -> token.hit() != null)
        .allMatch(token -> SURFACE_LETTERS.indexOf(token.hit().letter()) >= 0);
  }

  /** A text is closed before {@code from} where a section's name follows, else at its end. */
  private boolean closesInPlace(TextEdit edit) {
    if (!edit.text().equals("\"") || edit.span().length() > 0) {
      return true;
    }
    String text = cursor.compiled().text();
    int at = edit.span().start();
    String before = text.substring(LineEnds.start(text, at), at);
    Matcher after = FROM.matcher(text.substring(at, LineEnds.end(text, at)));
    if (after.matches()) {
      return isSection(after.group(1));
    }
    Matcher within = FROM.matcher(before);
    boolean named = false;
    while (within.find()) {
      named = within.end() == before.length() && isSection(within.group(1));
    }
    return !named;
  }

  private boolean isSection(String name) {
    Compiled compiled = cursor.compiled();
    return compiled.syntax().stream()
        .anyMatch(
            section ->
                Definitions.of(compiled, section).filter(d -> d.name().equals(name)).isPresent());
  }
}
