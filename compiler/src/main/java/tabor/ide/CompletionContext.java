package tabor.ide;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.kit.Kit;
import tabor.parse.ExpectedWords;
import tabor.parse.ExpectedWords.Item;
import tabor.parse.LineWords;
import tabor.parse.Reader;
import tabor.rhythm.Meter;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.syntax.ChartStatement;
import tabor.syntax.Line;
import tabor.syntax.SectionKind;
import tabor.syntax.SheetLine;
import tabor.syntax.Statement;
import tabor.syntax.StatementRow;

/** The line that is being written, what the grammar lets follow, and the section above it. */
final class CompletionContext {
  /** A word for each kind of thing, with which a line can be read to its end. */
  private static final Map<String, String> SAMPLES =
      Map.of(
          "count", "1", "number", "1", "WHOLE", "1", "surface", "snare", "name", "a", "letter", "q",
          "text", "\"\"", "ORDINAL", "2nd", "RATIO", "4/4", "SUM", "2+2");

  private static final int MOST_WORDS = 8;

  private final Cursor cursor;
  private final Library library;
  private final String before;
  private @Nullable ExpectedWords expected;
  private final SectionKind kind;
  private final Map<String, Optional<Statement>> statements = new HashMap<>();
  private final Reader reader = new Reader();
  private @Nullable Groove above;
  private boolean aboveKnown;

  CompletionContext(Cursor cursor, Library library) {
    String text = cursor.compiled().text();
    int start = Math.max(cursor.start(), LineEnds.start(text, cursor.offset()));
    this.cursor = cursor;
    this.library = library;
    this.before = text.substring(start, cursor.offset());
    this.kind = Definitions.kind(cursor.section());
  }

  Cursor cursor() {
    return cursor;
  }

  Library library() {
    return library;
  }

  /** What the grammar lets follow. */
  ExpectedWords expected() {
    if (expected == null) {
      expected = ExpectedWords.at(before);
    }
    return expected;
  }

  /** True among the beats of a part or pattern: there it is not asked what may follow. */
  boolean isInBeats() {
    return LineWords.endsInBeats(before);
  }

  /** True if no beat of the bar is written yet. */
  boolean isBarStart() {
    String said = before.stripTrailing();
    return beatWord().isEmpty() && (said.endsWith(":") || said.endsWith("|"));
  }

  SectionKind kind() {
    return kind;
  }

  /** True if a line of the chart above this one plays something. */
  boolean playsAbove() {
    int here = cursor.offset() - before.length() - cursor.start();
    return cursor.section().lines().stream()
        .filter(line -> line.start() < here)
        .map(Line::statement)
        .anyMatch(
            said ->
                said instanceof ChartStatement.Play
                    || said instanceof ChartStatement.Trade
                    || said instanceof ChartStatement.Climb);
  }

  /** Where the word that is being written starts in the file. */
  int start() {
    return cursor.offset() - before.length() + expected().start();
  }

  /** Where the word ends in the file: behind the cursor too, if that stands in it. */
  int wordEnd() {
    String text = cursor.compiled().text();
    int at = cursor.offset();
    while (!expected().typed().isEmpty() && at < text.length() && isWordPart(text.charAt(at))) {
      at++;
    }
    return at;
  }

  private static boolean isWordPart(char c) {
    return Character.isLetterOrDigit(c) || "-.&".indexOf(c) >= 0;
  }

  /** The beat as far as it is written. */
  String beatWord() {
    int at = before.length();
    while (at > 0 && " \t|:".indexOf(before.charAt(at - 1)) < 0) {
      at--;
    }
    return before.substring(at);
  }

  /** The part or pattern that the line writes, with one stroke; empty if it is none. */
  Optional<Statement> lane() {
    int colon = before.indexOf(':');
    return read(before.substring(0, colon + 1) + " x");
  }

  /** True if a blank, a comma or nothing at all stands before the word that is being written. */
  boolean isAfterBlank() {
    int at = expected().start();
    return at == 0 || " \t,=:".indexOf(before.charAt(at - 1)) >= 0;
  }

  /** The row of the statement that an item is a part of; empty if the section does not take it. */
  Optional<StatementRow> row(Item item) {
    if (item.statement().isEmpty()) {
      return Optional.empty();
    }
    List<String> words = expected().words();
    StatementRow row = item.row(words.isEmpty() ? null : words.get(0));
    return Optional.of(row).filter(one -> one.isHeading() || one.sections().contains(kind));
  }

  /** The section as it is above the line; empty outside grooves and steps, and below errors. */
  Optional<Groove> above() {
    if (!aboveKnown) {
      above = SectionAbove.before(cursor, library).orElse(null);
      aboveKnown = true;
    }
    return Optional.ofNullable(above);
  }

  /** The kit in force. */
  Kit kit() {
    return above().map(groove -> groove.setting().kit()).orElseGet(cursor::kit);
  }

  /** The meter of bar 1. */
  Meter meter() {
    return above().map(Groove::meter).orElseGet(() -> cursor.compiled().lesson().setting().meter());
  }

  /** The bars that the line names as far as it is written; empty for all. */
  Set<Integer> bars(Item item, Groove groove) {
    return statement(item)
        .map(statement -> NamedBars.of(statement, groove))
        .orElseGet(() -> NamedBars.all(groove));
  }

  /**
   * The line as far as it is written, with an item in its place and read to the shortest end there
   * is; empty if that is no statement.
   */
  Optional<Statement> statement(Item item) {
    return statements.computeIfAbsent(
        item.statement() + item.kind() + item.word(), key -> read(item));
  }

  /** The line as far as it is written, with a word in the place of the one being written. */
  String lineWith(String word) {
    return before.substring(0, expected().start()) + word;
  }

  /** The place of the word that is being written, in its line. */
  Span span() {
    return new Span(expected().start(), before.length());
  }

  private Optional<Statement> read(Item first) {
    StringBuilder line = new StringBuilder(before.substring(0, expected().start()));
    Item next = first;
    for (int i = 0; i < MOST_WORDS && next != null; i++) {
      String word = next.word() == null ? SAMPLES.get(next.kind()) : next.word();
      if (word == null) {
        return Optional.empty();
      }
      line.append(word).append(' ');
      next = next(ExpectedWords.at(line.toString()).items(), next);
    }
    return read(line.toString());
  }

  /** What a line of this section says; empty if it is no statement. */
  Optional<Statement> read(String line) {
    Line heading = reader.read(new Passage(line)).heading();
    if (heading != null) {
      return Optional.of(heading.statement());
    }
    Passage passage = new Passage((kind == SectionKind.HEADER ? "" : kind.word() + " a\n") + line);
    return reader.read(passage).lines().stream()
        .map(Line::statement)
        .filter(statement -> !(statement instanceof Statement.Broken))
        .map(statement -> statement instanceof SheetLine varied ? varied.line() : statement)
        .findFirst();
  }

  /** What to go on with after an item of the same statement; null where the line may end. */
  private static @Nullable Item next(List<Item> items, Item last) {
    Item found = null;
    for (Item item : items) {
      if (item.kind().equals(Item.END)) {
        return null;
      }
      // A list that could go on for ever, of bars or of targets, is to come to its end.
      boolean again = item.kind().equals(last.kind()) && item.word() == null;
      boolean better = found == null || (found.word() != null && item.word() == null);
      if (better
          && !again
          && !",".equals(item.word())
          && item.statement().equals(last.statement())) {
        found = item;
      }
    }
    return found;
  }
}
