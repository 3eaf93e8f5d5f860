package tabor.ide;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.parse.ExpectedWords;
import tabor.parse.ExpectedWords.Item;
import tabor.resolve.PlaceQuery;
import tabor.resolve.SectionView;
import tabor.syntax.At;
import tabor.syntax.Edit;
import tabor.syntax.Statement;

/**
 * Which words of a place leave the line a way to go on that finds strokes: a count that is struck
 * in all the bars that are named, a bar in which all the counts are, an {@code every} that meets
 * something.
 */
record PlaceFilter(CompletionContext context, Groove groove, SectionView view) {
  /** {@code in last bar}, {@code at every 2nd bar}: no place takes more words than these. */
  private static final int MOST_WORDS = 3;

  /** True for words of the clauses that choose among strokes which are there. */
  static boolean concerns(Item item) {
    return item.in("at") && !item.in("take");
  }

  /** True if the line can be read on from a word to an end at which it finds strokes. */
  boolean leadsOn(String word) {
    return goesOn(context.lineWith(word), MOST_WORDS);
  }

  private boolean goesOn(String line, int words) {
    List<Item> items = ExpectedWords.at(line + " ").items();
    if (items.stream().anyMatch(item -> item.kind().equals(Item.END))) {
      return context.read(line).map(this::finds).orElse(true);
    }
    return words == 0 || items.stream().anyMatch(item -> any(line, item, words - 1));
  }

  private boolean any(String line, Item item, int words) {
    List<String> next =
        switch (item.kind()) {
          case Item.WORD -> Optional.ofNullable(item.word()).stream().toList();
          case "AMPERSAND" -> List.of("&");
          case "count" -> counts(line);
          case "saidWord" -> BarCounts.everySaid(groove);
          default -> List.of();
        };
    // Numbers and slots are not gone through: they are looked at once they are written.
    return next.isEmpty()
        ? !item.kind().equals("count") && !item.kind().equals("saidWord")
        : next.stream().anyMatch(word -> goesOn(line + " " + word, words));
  }

  private List<String> counts(String line) {
    Predicate<Stroke> meant = context.read(line + " 1").map(this::target).orElse(stroke -> true);
    return BarCounts.struck(groove, meant).keySet().stream().map(Object::toString).toList();
  }

  private Predicate<Stroke> target(Statement statement) {
    return EditTargets.of(statement, context.kit());
  }

  private boolean finds(Statement statement) {
    At at = SyntaxNodes.first(statement, At.class).orElse(At.EVERYWHERE);
    return !(statement instanceof Edit)
        || at.isEverywhere()
        || new PlaceQuery(view, target(statement)).find(at, context.span()).misses().isEmpty();
  }
}
