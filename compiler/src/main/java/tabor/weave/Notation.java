package tabor.weave;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** One block of notation, for documents of other kinds than ours. */
public final class Notation {
  private final @Nullable Figure figure;
  private final List<Problem> problems;

  private Notation(@Nullable Figure figure, List<Problem> problems) {
    this.figure = figure;
    this.problems = List.copyOf(problems);
  }

  /**
   * Reads a block.
   *
   * @param name what it is called in problems
   * @param text what stands in it; empty where the attributes name a lesson
   * @param attributes by their names in a Markdown block
   */
  public static Notation of(
      String name, String text, Map<String, String> attributes, Lessons lessons) {
    FigureMaker maker = new FigureMaker(Path.of(name), null, lessons);
    Figure figure = maker.block(new FencedBlock("", text, -1, 0, -1), attributes);
    return new Notation(figure, maker.problems());
  }

  /** What was noticed. */
  public List<Problem> problems() {
    return problems;
  }

  /** True if it cannot be shown. */
  public boolean hasErrors() {
    return figure == null;
  }

  /** What it shows; throws {@link IllegalStateException} if it cannot be shown. */
  public Figure figure() {
    if (figure == null) {
      throw new IllegalStateException("a block with errors shows nothing");
    }
    return figure;
  }

  /**
   * The same as HTML.
   *
   * @param ids what the ids in it begin with, unique in the page
   */
  public String html(String ids) {
    return new FigureMarkup(ids, false).of(figure());
  }
}
