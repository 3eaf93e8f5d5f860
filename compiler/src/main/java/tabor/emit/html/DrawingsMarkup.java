package tabor.emit.html;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import tabor.cores.SpareCores;
import tabor.emit.engrave.Drawing;

/** All drawings of a page as markup, with the shapes that they share; made on all cores. */
final class DrawingsMarkup {
  private final String shapes;
  private final String beside;
  private final Map<Drawing, String> elements = new IdentityHashMap<>();

  private DrawingsMarkup(String shapes, String beside) {
    this.shapes = shapes;
    this.beside = beside;
  }

  /** The markup of drawings, in the order of the page. */
  static DrawingsMarkup of(List<Drawing> drawings) {
    return of(drawings, () -> "");
  }

  /**
   * The same, and something else made at the same time.
   *
   * @param other safe for another thread; what it gives is {@link #beside}
   */
  static DrawingsMarkup of(List<Drawing> drawings, Supplier<String> other) {
    SymbolTable symbols = new SymbolTable();
    List<Outlines> outlines = SpareCores.map(drawings, symbols::outlines);
    outlines.forEach(symbols::count);
    String shapes = symbols.markup();
    List<Supplier<String>> work = new ArrayList<>();
    work.add(other);
    outlines.forEach(one -> work.add(() -> DrawingMarkup.of(one, symbols)));
    List<String> made = SpareCores.map(work, Supplier::get);
    DrawingsMarkup markup = new DrawingsMarkup(shapes, made.get(0));
    for (int i = 0; i < drawings.size(); i++) {
      markup.elements.put(drawings.get(i), made.get(i + 1));
    }
    return markup;
  }

  /** The hidden element with the shapes; empty if there are none. */
  String shapes() {
    return shapes;
  }

  /** What was made at the same time. */
  String beside() {
    return beside;
  }

  /** Drawings for a wide page, and those that stand for them on a narrow one, if any. */
  String pair(List<Drawing> wide, List<Drawing> narrow) {
    StringBuilder out =
        new StringBuilder(
            narrow.isEmpty() ? "<div class=\"drawn\">" : "<div class=\"drawn wide\">");
    wide.forEach(drawing -> out.append(of(drawing)));
    if (!narrow.isEmpty()) {
      out.append("</div>\n<div class=\"drawn narrow\">");
      narrow.forEach(drawing -> out.append(of(drawing)));
    }
    return out.append("</div>\n").toString();
  }

  /** The element of one of the drawings. */
  String of(Drawing drawing) {
    return java.util.Objects.requireNonNull(elements.get(drawing));
  }
}
