package tabor.weave;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.commonmark.node.Node;
import org.jspecify.annotations.Nullable;
import tabor.build.PagePlayers;
import tabor.emit.html.PagePlayerParts;
import tabor.groove.Lesson;
import tabor.groove.Section;

/** Puts the HTML of notation into a document's tree. */
final class HtmlNotation {
  private final boolean page;
  private final FigureMaker maker;
  private final FigureMarkup markup;
  private final Map<Node, Figure> waiting = new LinkedHashMap<>();
  private @Nullable PagePlayerParts players;

  /**
   * For one document.
   *
   * @param text its text, for reports; null where it is not known
   * @param page true for a page of ours, with our style sheet and players
   */
  HtmlNotation(Path document, @Nullable String text, Lessons lessons, boolean page) {
    this.page = page;
    this.markup = new FigureMarkup("Staff", page);
    this.maker = new FigureMaker(document, text, lessons);
  }

  /** What was noticed. */
  List<Problem> problems() {
    return maker.problems();
  }

  /** What the page needs for its players; null if it has none. */
  @Nullable PagePlayerParts players() {
    return players;
  }

  /**
   * Replaces all notation in the tree.
   *
   * @param text the document's text; empty where it is not known
   */
  void replace(Node document, String text) {
    for (MarkdownText.Place place : MarkdownText.places(document, text)) {
      FencedBlock block = place.block();
      int before = problems().size();
      if (place.isInline()) {
        Picture picture = maker.inline(block.text(), block.line(), block.column());
        put(
            place.node(),
            new TaborNode.OfLine(
                picture == null
                    ? markup.inlineProblem(since(before), MarkdownText.INLINE + block.text())
                    : markup.inline(picture)));
        continue;
      }
      WovenBefore.remove(place.node());
      Figure figure = maker.block(block);
      if (figure == null) {
        put(place.node(), new TaborNode.OfBlock(markup.problem(since(before), block.text())));
      } else if (figure.wish().as() == Wish.As.PLAYER && page) {
        waiting.put(place.node(), figure);
      } else {
        put(place.node(), new TaborNode.OfBlock(markup.of(figure)));
      }
    }
    if (!waiting.isEmpty()) {
      play();
    }
  }

  private List<Problem> since(int before) {
    return List.copyOf(problems().subList(before, problems().size()));
  }

  private static void put(Node old, Node fresh) {
    old.insertAfter(fresh);
    old.unlink();
  }

  /** All players of the page at once, so that one script plays them. */
  private void play() {
    List<Section> sections = new ArrayList<>();
    waiting.values().forEach(figure -> sections.addAll(figure.lesson().sections()));
    Lesson first = waiting.values().iterator().next().lesson();
    PagePlayerParts all =
        PagePlayers.of(
            new Lesson(first.file(), first.title(), first.by(), first.setting(), sections));
    int at = 0;
    for (Map.Entry<Node, Figure> place : waiting.entrySet()) {
      Figure figure = place.getValue();
      StringBuilder html = new StringBuilder("<div class=\"tabor-player\">\n");
      for (int i = 0; i < figure.lesson().sections().size(); i++) {
        html.append(all.articles().get(at++));
      }
      html.append(FigureMarkup.caption(figure)).append("</div>");
      put(place.getKey(), new TaborNode.OfBlock(html.toString()));
    }
    players = all;
  }
}
